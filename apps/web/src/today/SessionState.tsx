import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import type { TodayView } from '@twelvemonth/exchange';
import { useMay } from '../frame/may.ts';
import { Note } from '../paper/Note.tsx';
import { buttonLook } from '../paper/button-look.ts';
import { me } from '../server/queries.ts';
import { longDay } from '../words/dates.ts';
import { counted } from '../words/texts.ts';

type State = NonNullable<TodayView['sessionState']>;

const stateWords: Readonly<Record<State, string>> = {
  'not opened': 'The session is not open yet.',
  open: 'The session is open.',
  'closed, handover waits': 'The session is closed; the handover waits.',
  closed: 'The session is closed and handed over.',
};

/** Nobody closes while people are still to come. */
function actOf(state: State, { counts }: TodayView, may: ReturnType<typeof useMay>): string {
  if (state === 'not opened') return may('open session') ? 'Open the session' : 'Look at it';
  if (state === 'open') return counts.gone < counts.listed ? 'Staff, packs, closing' : 'Close the session';
  return state === 'closed' ? 'Look at it' : 'Read the handover';
}

/** Whether the session of today is open, what holds it, and the one act that comes next for it. */
export function SessionState({ data }: { data: TodayView }) {
  const { session, sessionState: state, held } = data;
  const may = useMay();
  if (session === undefined || state === undefined) return null;
  return (
    <div className="screenOnly">
      <p style={{ display: 'flex', flexWrap: 'wrap', gap: '1rem', alignItems: 'center' }}>
        <strong>{stateWords[state]}</strong>
        <Link to="/sessions/$session/day" params={{ session }} className={buttonLook('quiet')}>
          {actOf(state, data, may)}
        </Link>
      </p>
      {held.length > 0 && (
        <Note tone="stop" speaks="politely">
          <strong>No medicine is started now:</strong> {held.join(' ')} What runs goes on.
        </Note>
      )}
    </div>
  );
}

const oldestShown = 3;

/** Earlier sessions that nobody closed or took on, and the other session of today: neither vanishes from the day's page. */
export function OtherSessions({ data: { leftOver, alsoToday } }: { data: TodayView }) {
  const self = useQuery(me).data?.staff;
  if (leftOver.length === 0 && alsoToday.length === 0) return null;
  return (
    <div className="screenOnly" style={{ marginBottom: '1rem' }}>
      <Note tone="caution">
        {alsoToday.map(({ session, opensAt, closesAt, listed }) => (
          <p key={session}>
            <Link to="/sessions/$session" params={{ session }} className="finger">
              Another session today, {opensAt} to {closesAt}: {counted(listed, 'person', 'people')}
            </Link>
          </p>
        ))}
        {leftOver.slice(0, oldestShown).map(({ session, on, state, to }) => (
          <p key={session}>
            <Link to="/sessions/$session/day" params={{ session }} className="finger">
              {state === 'open'
                ? `The session of ${longDay(on)} was never closed`
                : `The handover of ${longDay(on)} waits for ${to?.staff === self ? 'you' : (to?.name ?? 'somebody')}`}
            </Link>
          </p>
        ))}
        {leftOver.length > oldestShown && (
          <p>{counted(leftOver.length - oldestShown, 'later session is', 'later sessions are')} left like these.</p>
        )}
      </Note>
    </div>
  );
}
