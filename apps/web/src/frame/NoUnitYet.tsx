import { Link } from '@tanstack/react-router';
import { Empty } from '../paper/Empty.tsx';

/** An empty service: the first step is a unit. */
export const NoUnitYet = () => (
  <Empty says="This service has no unit yet.">
    <p>
      The first step: an administrator or the service lead adds one under <Link to="/settings">Settings</Link>, with its
      chairs, hours and session days. Then a protocol is adopted, then people are registered or brought in.
    </p>
  </Empty>
);
