import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { Button } from '../paper/Button.tsx';
import { Trouble } from '../paper/Trouble.tsx';
import { flips } from '../server/queries.ts';
import { dayInWords } from '../words/dates.ts';
import { counted } from '../words/texts.ts';

/** Whose verdict would differ if this version were in force. Asked for, because it reckons everyone again. */
export function Flips({ unit, version }: { unit: string; version: string }) {
  const [wanted, setWanted] = useState(false);
  const asked = useQuery({ ...flips(unit, version), enabled: wanted });
  return (
    <section aria-labelledby="flips">
      <h3 id="flips">Who flips</h3>
      {!wanted && (
        <Button size="slim" onClick={() => setWanted(true)}>
          Compare everyone
        </Button>
      )}
      {wanted && asked.isPending && <output>comparing everyone …</output>}
      {asked.error !== null && <Trouble error={asked.error} />}
      {asked.data !== undefined && (
        <>
          <p>
            {counted(asked.data.compared, 'person', 'people')} compared;{' '}
            {asked.data.flips.length === 0
              ? 'nobody’s verdict would change.'
              : `${counted(asked.data.flips.length, 'verdict')} would change:`}
          </p>
          {asked.data.flips.length > 0 && (
            <table className="stacks">
              <thead>
                <tr>
                  <th scope="col">who</th>
                  <th scope="col">on</th>
                  <th scope="col">now</th>
                  <th scope="col">under this version</th>
                </tr>
              </thead>
              <tbody>
                {asked.data.flips.map((flip) => (
                  <tr key={flip.patient}>
                    <th scope="row">
                      <Link to="/people/$patient" params={{ patient: flip.patient }}>
                        {flip.name}
                      </Link>
                    </th>
                    <td>{dayInWords(flip.on)}</td>
                    <td>{flip.from}</td>
                    <td>{flip.to}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          )}
        </>
      )}
    </section>
  );
}
