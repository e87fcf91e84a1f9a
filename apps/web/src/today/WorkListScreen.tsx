import { useQuery } from '@tanstack/react-query';
import { useSearch } from '@tanstack/react-router';
import type { WorkListView } from '@twelvemonth/exchange';
import { useUnit } from '../frame/unit.ts';
import { NoUnitYet } from '../frame/NoUnitYet.tsx';
import { ToLink } from '../frame/ToLink.tsx';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Empty } from '../paper/Empty.tsx';
import { Page } from '../paper/Page.tsx';
import { workList } from '../server/queries.ts';
import { dayInWords } from '../words/dates.ts';
import { sentence } from '../words/texts.ts';

/** One pile of the day's work, opened: each with its owner and its day. */
export function WorkListScreen() {
  const { unit } = useUnit();
  const { what = '' } = useSearch({ from: '/work' });
  const asked = useQuery({ ...workList(unit?.unit, what), enabled: unit !== undefined });
  return (
    <Page
      title={sentence(what)}
      sub="The earliest day stands first."
      acts={<Button onClick={() => window.print()}>Print</Button>}
    >
      {unit === undefined ? (
        <NoUnitYet />
      ) : (
        <Awaited query={asked} what="the list">
          {(data) => (data.rows.length === 0 ? <Empty says="Nothing waits here." /> : <Rows data={data} />)}
        </Awaited>
      )}
    </Page>
  );
}

function Rows({ data: { rows, today } }: { data: WorkListView }) {
  return (
    <table className="stacks">
      <thead>
        <tr>
          <th scope="col">by</th>
          <th scope="col">who</th>
          <th scope="col">what</th>
          <th scope="col">whose it is</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={`${row.to} ${row.says}`}>
            <td className="nowrap">
              {dayInWords(row.due)}
              {row.due < today && <span className="quiet small"> late</span>}
            </td>
            <th scope="row">
              <ToLink to={row.to}>{row.name}</ToLink>
            </th>
            <td>{sentence(row.says)}</td>
            <td>{row.owner}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
