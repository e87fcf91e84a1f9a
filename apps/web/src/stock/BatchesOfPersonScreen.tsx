import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { Awaited } from '../paper/Awaited.tsx';
import { Empty } from '../paper/Empty.tsx';
import { Page } from '../paper/Page.tsx';
import { batchesOfPerson } from '../server/queries.ts';
import { shortDay } from '../words/dates.ts';

/** Which batches one person had. */
export function BatchesOfPersonScreen() {
  const { patient } = useParams({ from: '/people/$patient/batches' });
  const asked = useQuery(batchesOfPerson(patient));
  return (
    <Awaited query={asked} what="the batches">
      {(data) => (
        <Page
          title={`Batches given to ${data.name}`}
          tab="Batches given to a person"
          sub={data.number}
          acts={
            <Link to="/people/$patient" params={{ patient }}>
              back to the notes
            </Link>
          }
        >
          {data.batches.length === 0 ? (
            <Empty says="No batch stands in these notes." />
          ) : (
            <table className="stacks">
              <thead>
                <tr>
                  <th scope="col">batch</th>
                  <th scope="col">on</th>
                  <th scope="col">what</th>
                  <th scope="col">may its packs be used now?</th>
                </tr>
              </thead>
              <tbody>
                {data.batches.map((row) => (
                  <tr key={`${row.batch} ${row.on}`}>
                    <th scope="row">
                      <Link to="/stock/trace" search={{ batch: row.batch }}>
                        {row.batch}
                      </Link>
                    </th>
                    <td>{shortDay(row.on)}</td>
                    <td>
                      {row.what}, {row.where}
                    </td>
                    <td>{row.stopped === undefined ? 'nothing is said against it' : <strong>{row.stopped}</strong>}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          )}
          {data.withoutBatch.length > 0 && (
            <section aria-labelledby="without-batch">
              <h2 id="without-batch">No batch in the notes</h2>
              <p>Of these doses nobody wrote down the batch: a trace of a batch cannot find them.</p>
              <ul>
                {data.withoutBatch.map((dose) => (
                  <li key={`${dose.on} ${dose.what}`}>
                    {shortDay(dose.on)}: {dose.what}, {dose.where}
                  </li>
                ))}
              </ul>
            </section>
          )}
        </Page>
      )}
    </Awaited>
  );
}
