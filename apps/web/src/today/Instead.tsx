import { Link } from '@tanstack/react-router';
import type { TodayView } from '@twelvemonth/exchange';
import { Note } from '../paper/Note.tsx';

/** Somebody is late, or a place is free: who could come, those with the least choice first. */
export function Instead({ data }: { data: TodayView }) {
  const late = data.visits.filter((visit) => visit.late !== undefined);
  if (data.session === undefined || (late.length === 0 && data.couldCome.length === 0)) return null;
  return (
    <div style={{ marginTop: '1rem' }}>
      <Note tone={late.length > 0 ? 'caution' : 'quiet'}>
        {late.map(({ patient, name, late: minutes }) => (
          <p key={patient}>
            <strong>{name}</strong> is {minutes} minutes late.{' '}
            <Link to="/people/$patient" params={{ patient }} search={{ record: 'call' }} className="finger">
              Ring them, and write down what was said
            </Link>
          </p>
        ))}
        <p>
          {late.length === 0
            ? 'A place is free today. Could come:'
            : data.couldCome.length === 0
              ? 'Nobody is ready who could come instead.'
              : 'Could come instead:'}
        </p>
        <ul style={{ listStyle: 'none', padding: 0 }}>
          {data.couldCome.map(({ patient, name, standing }) => (
            <li key={patient}>
              <Link to="/people/$patient" params={{ patient }}>
                {name}
              </Link>{' '}
              {standing}
            </li>
          ))}
          <li>
            <Link to="/sessions/$session" params={{ session: data.session }}>
              everybody who could
            </Link>
          </li>
        </ul>
      </Note>
    </div>
  );
}
