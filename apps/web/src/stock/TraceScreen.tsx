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
import { ToldForm } from './ToldForm.tsx';

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
  const [open, setOpen] = useState<string>();
  const told = data.people.filter((person) => person.told !== undefined).length;
  return (
    <>
      {data.said.length > 0 && (
        <div style={{ marginTop: '1rem' }}>
          <Note tone={data.stopped ? 'stop' : 'quiet'}>
            {data.said.map((each) => (
              <p key={`${each.on} ${each.text}`}>
                {shortDay(each.on)}: {each.text} <span className="small">({each.by})</span>
              </p>
            ))}
          </Note>
        </div>
      )}
      {data.people.length === 0 ? (
        <Empty says="Nobody here has this batch in their notes." />
      ) : (
        <>
          <h2>
            {counted(data.people.length, 'person', 'people')}, {told} told
          </h2>
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
                <tr key={person.patient}>
                  <th scope="row">
                    <Link to="/people/$patient" params={{ patient: person.patient }}>
                      {person.name}
                    </Link>
                    <div className="quiet small">
                      {dotted(`born ${person.born}`, unbroken(person.number), person.telephone)}
                    </div>
                  </th>
                  <td>
                    {shortDay(person.on)}, {person.where}
                    <div className="quiet small">{person.what}</div>
                  </td>
                  <td>{person.standing}</td>
                  <td>
                    {person.told === undefined ? (
                      <strong>not told yet</strong>
                    ) : (
                      <>
                        {shortDay(person.told.on)}, {person.told.how}
                        <div className="quiet small">{dotted(person.told.by, person.told.note)}</div>
                      </>
                    )}
                    <div className="screenOnly">
                      <Button onClick={() => setOpen(open === person.patient ? undefined : person.patient)}>
                        {person.told === undefined ? 'They are told' : 'Told again'}
                        <span className="unseen"> {person.name}</span>
                      </Button>
                    </div>
                    {open === person.patient && (
                      <ToldForm patient={person.patient} batch={data.batch} close={() => setOpen(undefined)} />
                    )}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      )}
    </>
  );
}
