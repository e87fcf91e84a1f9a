import { Link } from '@tanstack/react-router';
import type { SupportLineView } from '@twelvemonth/exchange';

const open: ReadonlySet<SupportLineView['state']> = new Set(['to arrange', 'to be moved', 'to be cancelled']);

/** What goes with the place, one a line; what still waits for somebody leads to where it is done. */
export function SupportWords({ patient, supports }: { patient: string; supports: readonly SupportLineView[] }) {
  return supports.map(({ what, state, says, booking }) => (
    <div key={`${what} ${booking ?? state}`}>
      {open.has(state) ? (
        <Link to="/people/$patient/bookings" params={{ patient }}>
          <span aria-hidden="true">▲ </span>
          {says}
        </Link>
      ) : (
        says
      )}
    </div>
  ));
}
