import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { Button } from '../paper/Button.tsx';
import { leaveNothing } from '../offline/keep-day.ts';
import { leaveServer } from '../server/leaving.ts';
import { me, signedOut } from '../server/queries.ts';
import { actAs, useActingRole } from './acting-role.ts';
import { useMay } from './may.ts';
import css from './Frame.module.css';

/** The person at the desk, large: everything signed here is signed by them. */
export function Desk({ change }: { change: () => void }) {
  const person = useQuery(me).data;
  const { role, roles } = useActingRole();
  const may = useMay();
  if (person === undefined || person === null) return null;
  const leave = (): void => {
    // Not when the server has heard of it: on a network that is silent that would be never.
    void leaveServer();
    signedOut();
    void leaveNothing();
  };
  return (
    <section className={css['desk']} aria-label="At the desk">
      <strong>{person.name}</strong>
      <div>
        {roles.length > 1 ? (
          <select aria-label="You act as" value={role ?? ''} onChange={(event) => actAs(event.target.value)}>
            <option value="">{roles.join(', ')}</option>
            {roles.map((each) => (
              <option key={each} value={each}>
                as {each}
              </option>
            ))}
          </select>
        ) : (
          roles[0]
        )}
        <Button tone="plain" onClick={change}>
          sign as someone else
        </Button>
        {may('setMySignature') && (
          <>
            <Link to="/signature">PIN and badge</Link>
          </>
        )}
        <Button tone="plain" onClick={leave}>
          leave
        </Button>
      </div>
    </section>
  );
}
