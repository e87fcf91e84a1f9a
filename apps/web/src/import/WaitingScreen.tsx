import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Empty } from '../paper/Empty.tsx';
import { Page } from '../paper/Page.tsx';
import { waitingRows } from '../server/queries.ts';
import { WaitingRow } from './WaitingRow.tsx';

const firstShown = 15;

/** Rows that could not be taken in: kept whole until someone puts them right or leaves them out. */
export function WaitingScreen() {
  const asked = useQuery(waitingRows());
  const [whole, setWhole] = useState(false);
  return (
    <Page
      title="Rows that wait"
      sub="Each is kept whole, as it stood in the file, until someone puts it right or leaves it out with a reason."
      acts={<Link to="/import">Import</Link>}
    >
      <Awaited query={asked} what="the rows">
        {({ rows }) =>
          rows.length === 0 ? (
            <Empty says="No row waits." />
          ) : (
            <>
              {rows.slice(0, whole ? undefined : firstShown).map((row) => (
                <WaitingRow key={`${row.fingerprint} ${row.row}`} row={row} />
              ))}
              {!whole && rows.length > firstShown && (
                <Button onClick={() => setWhole(true)}>Show all {rows.length}</Button>
              )}
            </>
          )
        }
      </Awaited>
    </Page>
  );
}
