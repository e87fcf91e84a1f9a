import { Link } from '@tanstack/react-router';
import type { SessionDayView } from '@twelvemonth/exchange';
import { Note } from '../paper/Note.tsx';
import { counted } from '../words/texts.ts';

type Missing = SessionDayView['missing'][number];

/** What stands in the way of closing, one line a reason: who is still expected first, because nothing is wrong with that. */
export function StillOpen({ data: { missing, lettersToSend } }: { data: SessionDayView }) {
  const expected = missing.filter(({ comesAt }) => comesAt !== undefined);
  const of = (what: Missing['what']): Missing[] =>
    missing.filter((one) => one.what === what && one.comesAt === undefined);
  const isMorning = expected.length > 0;
  if (missing.length === 0)
    return (
      <>
        <Note tone="done">Everybody on the list has an outcome, and every letter is signed.</Note>
        <ToSend letters={lettersToSend} />
      </>
    );
  return (
    <>
      <Note tone={isMorning ? 'quiet' : 'caution'}>
        <p>
          <strong>Before it can close:</strong>
        </p>
        <ul>
          <People says="Still expected" who={expected} to="visit" />
          <People says="Has not come, and nothing says why" who={of('not come')} to="call" />
          <People says="The visit is not over" who={of('not over')} to="visit" />
          <People says="The letter is not signed" who={of('letter')} to="letter" />
        </ul>
      </Note>
      <ToSend letters={lettersToSend} />
    </>
  );
}

/** They go out when the post does: that holds nobody at the unit, and is not forgotten. */
const ToSend = ({ letters }: { letters: number }) =>
  letters === 0 ? null : (
    <p>
      <Link to="/letters" className="finger">
        {counted(letters, 'signed letter has', 'signed letters have')} not been sent yet
      </Link>
    </p>
  );

function People({ says, who, to }: { says: string; who: readonly Missing[]; to: 'visit' | 'call' | 'letter' }) {
  const [first] = who;
  if (first === undefined) return null;
  return (
    <li>
      {says}:{' '}
      {who.map((one, index) => (
        <span key={one.patient}>
          {index > 0 && ', '}
          <ToPerson patient={one.patient} to={to}>
            {one.name}
          </ToPerson>
          {one.comesAt !== undefined && ` (${one.comesAt})`}
        </span>
      ))}
      {first.comesAt === undefined && <div className="quiet">{first.remedy}</div>}
    </li>
  );
}

function ToPerson({ patient, to, children }: { patient: string; to: 'visit' | 'call' | 'letter'; children: string }) {
  if (to === 'letter')
    return (
      <Link to="/people/$patient/letter" params={{ patient }} className="finger">
        {children}
      </Link>
    );
  return to === 'call' ? (
    <Link to="/people/$patient" params={{ patient }} search={{ record: 'call' }} className="finger">
      {children}
    </Link>
  ) : (
    <Link to="/people/$patient/visit" params={{ patient }} className="finger">
      {children}
    </Link>
  );
}
