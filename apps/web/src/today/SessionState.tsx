import { Link } from '@tanstack/react-router';
import type { TodayView } from '@twelvemonth/exchange';
import { buttonLook } from '../paper/button-look.ts';

const words: Readonly<Record<NonNullable<TodayView['sessionState']>, { readonly says: string; readonly act: string }>> =
  {
    'not opened': { says: 'The session is not open yet.', act: 'Open the session' },
    open: { says: 'The session is open.', act: 'Close the session' },
    'closed, handover waits': { says: 'The session is closed; the handover waits.', act: 'Read the handover' },
    closed: { says: 'The session is closed and handed over.', act: 'Look at it' },
  };

/** Whether the session of today is open, and the one act that comes next for it. */
export function SessionState({ session, state }: { session: string; state: NonNullable<TodayView['sessionState']> }) {
  const { says, act } = words[state];
  return (
    <p
      className="screenOnly"
      style={{ display: 'flex', flexWrap: 'wrap', gap: '1rem', alignItems: 'center', marginBottom: '1rem' }}
    >
      <strong>{says}</strong>
      <Link to="/sessions/$session/day" params={{ session }} className={buttonLook('quiet')}>
        {act}
      </Link>
    </p>
  );
}
