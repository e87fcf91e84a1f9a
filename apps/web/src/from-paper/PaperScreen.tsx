import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import type { ListedPatient, SessionView } from '@twelvemonth/exchange';
import { Awaited } from '../paper/Awaited.tsx';
import { Empty } from '../paper/Empty.tsx';
import { Page } from '../paper/Page.tsx';
import { session } from '../server/queries.ts';
import { longDay } from '../words/dates.ts';
import { sentence } from '../words/texts.ts';
import { CameUnlisted } from './CameUnlisted.tsx';

/** Whose sheet is typed in: everybody of the session in order, with how far their notes are. */
export function PaperScreen() {
  const { session: id } = useParams({ from: '/sessions/$session/paper' });
  const asked = useQuery(session(id));
  return (
    <Awaited query={asked} what="the list">
      {(data) => <List data={data} />}
    </Awaited>
  );
}

const howFar = ({ steps }: ListedPatient): string => {
  const done = steps.filter(({ state }) => state === 'done');
  const next = steps.find(({ state }) => state === 'waiting' || state === 'running');
  if (next === undefined) return 'all steps are in the notes';
  return done.length === 0 ? 'nothing is in the notes yet' : `in the notes up to ${done.at(-1)?.step ?? ''}`;
};

function List({ data }: { data: SessionView }) {
  const listed = data.list.flatMap(({ arriveAt, who }) => (who === undefined ? [] : [{ arriveAt, who }]));
  return (
    <Page
      title="Type the day sheet in"
      sub={`${longDay(data.on)} · ${data.unitName} · whoever gave a dose types it in, signed in with their own name`}
      acts={
        <Link to="/sessions/$session/sheet" params={{ session: data.session }}>
          the day sheet
        </Link>
      }
    >
      {listed.length === 0 && <Empty says="Nobody is on this list." />}
      <table>
        <thead>
          <tr>
            <th scope="col">time</th>
            <th scope="col">who</th>
            <th scope="col">notes</th>
          </tr>
        </thead>
        <tbody>
          {listed.map(({ arriveAt, who }) => (
            <tr key={who.patient}>
              <td>{arriveAt}</td>
              <td>
                <Link to="/sessions/$session/paper/$patient" params={{ session: data.session, patient: who.patient }}>
                  {who.name}
                </Link>
                <div className="quiet small">{who.number}</div>
              </td>
              <td>{sentence(howFar(who))}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <CameUnlisted data={data} />
    </Page>
  );
}
