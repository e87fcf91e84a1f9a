import { useQuery } from '@tanstack/react-query';
import { Link, useNavigate, useSearch } from '@tanstack/react-router';
import type { TraceView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { TextField } from '../fields/TextField.tsx';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Empty } from '../paper/Empty.tsx';
import { Note } from '../paper/Note.tsx';
import { Page } from '../paper/Page.tsx';
import { trace } from '../server/queries.ts';
import { shortDay } from '../words/dates.ts';
import { counted, dotted, unbroken } from '../words/texts.ts';
import { TracedPerson } from './TracedPerson.tsx';

/** Everybody who had a pack of a batch, whether they have been told, and by whom. It prints. */
export function TraceScreen() {
  const { batch } = useSearch({ from: '/stock/trace' });
  const asked = useQuery({ ...trace(batch ?? ''), enabled: batch !== undefined });
  return (
    <Page
      title={batch === undefined ? 'Batch trace' : `Who had batch ${batch}`}
      acts={
        <>
          <Link to="/stock">back to the stock</Link>
          {batch !== undefined && <Button onClick={() => window.print()}>Print the list</Button>}
        </>
      }
    >
      <WhichBatch key={batch} batch={batch ?? ''} />
      {batch !== undefined && (
        <Awaited query={asked} what="the trace">
          {(data) => <Found data={data} />}
        </Awaited>
      )}
    </Page>
  );
}

function WhichBatch({ batch }: { batch: string }) {
  const navigate = useNavigate({ from: '/stock/trace' });
  const [typed, setTyped] = useState(batch);
  return (
    <form
      className="screenOnly"
      onSubmit={(event) => {
        event.preventDefault();
        if (typed.trim() !== '') void navigate({ search: { batch: typed.trim() } });
      }}
    >
      <TextField label="Batch" help="As printed on the pack." short value={typed} onChange={setTyped} />
      <Button type="submit">Trace it</Button>
    </form>
  );
}

function Found({ data }: { data: TraceView }) {
  return (
    <>
      {data.said.length > 0 && (
        <div style={{ marginTop: '1rem' }}>
          <Note tone={data.stopped ? 'stop' : 'quiet'}>
            {data.said.map((each, index) => (
              <p key={index}>
                {shortDay(each.on)}: {each.text} <span className="small">({each.by})</span>
              </p>
            ))}
          </Note>
        </div>
      )}
      {data.waitForCheck > 0 && (
        <div style={{ marginTop: '1rem' }}>
          <Note>
            {counted(data.waitForCheck, 'prepared pack')} in the service {data.waitForCheck === 1 ? 'waits' : 'wait'}{' '}
            for the second check: of which batch is told after it. If its batch is stopped, Today says so.
          </Note>
        </div>
      )}
      {data.alike.length > 0 && <Alike batches={data.alike} />}
      {data.people.length === 0 ? (
        <Empty says="Nobody here has this batch in their notes." />
      ) : (
        <>
          <h2>{toldWords(data)}</h2>
          <table className="stacks">
            <thead>
              <tr>
                <th scope="col">who</th>
                <th scope="col">had it</th>
                <th scope="col">where they are now</th>
                <th scope="col">told</th>
              </tr>
            </thead>
            <tbody>
              {data.people.map((person) => (
                <TracedPerson key={person.patient} batch={data.batch} person={person} />
              ))}
            </tbody>
          </table>
        </>
      )}
      <WithoutBatch doses={data.withoutBatch} />
    </>
  );
}

/** One batch in two spellings is found in halves. */
const Alike = ({ batches }: { batches: readonly string[] }) => (
  <div style={{ marginTop: '1rem' }}>
    <Note tone="caution">
      Also written in the notes, and not in this list:{' '}
      {batches.map((batch) => (
        <Link key={batch} to="/stock/trace" search={{ batch }} className="finger">
          {batch}
        </Link>
      ))}
      . If it is the same batch, look at that list too.
    </Note>
  </div>
);

const isTold = ({ told }: TraceView['people'][number]): boolean => told !== undefined && !told.before;

function toldWords({ people, stopped }: TraceView): string {
  const told = people.filter(isTold).length;
  const died = people.filter((person) => !isTold(person) && person.died !== undefined).length;
  const still = people.length - told - died;
  return [
    counted(people.length, 'person', 'people'),
    `${told} told`,
    ...(died > 0 ? [`${died} died untold`] : []),
    ...(stopped && still > 0 ? [`${still} still to tell`] : []),
  ].join(', ');
}

/** They may have had it: nobody wrote down which batch it was. */
function WithoutBatch({ doses }: { doses: TraceView['withoutBatch'] }) {
  if (doses.length === 0) return null;
  return (
    <section aria-labelledby="without-batch">
      <h2 id="without-batch">{counted(doses.length, 'dose')} without a batch in the notes</h2>
      <p>
        Given between the day this batch first came and the day until which it may be used, of the same medicine. They
        may be of this batch: ask where they were given.
      </p>
      <ul>
        {doses.map((dose) => (
          <li key={`${dose.patient} ${dose.on}`}>
            <Link to="/people/$patient" params={{ patient: dose.patient }} className="finger">
              {dose.name}
            </Link>{' '}
            {dotted(unbroken(dose.number), `${shortDay(dose.on)}, ${dose.where}`, dose.what)}
          </li>
        ))}
      </ul>
    </section>
  );
}
