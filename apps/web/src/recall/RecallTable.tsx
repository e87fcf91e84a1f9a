import type { RecallRow as Row } from '@twelvemonth/exchange';
import { useState } from 'react';
import { Button } from '../paper/Button.tsx';
import { usePrinting } from '../paper/use-printing.ts';
import { TableHead } from '../paper/TableHead.tsx';
import { RecallRow } from './RecallRow.tsx';
import list from '../paper/PeopleTable.module.css';
import css from './Recall.module.css';

const firstShown = 40;

export function RecallTable({ id, title, rows }: { id: string; title: string; rows: readonly Row[] }) {
  const [whole, setWhole] = useState(false);
  const printing = usePrinting();
  if (rows.length === 0) return null;
  const shown = whole || printing ? rows : rows.slice(0, firstShown);
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>
        {title} ({rows.length})
      </h2>
      <table className={`stacks ${list['table']} ${css['table']}`}>
        <TableHead columns={['who', 'due, dates it could be', 'next step, last call', { unseen: 'acts' }]} />
        <tbody>
          {shown.map((row) => (
            <RecallRow key={row.patient} row={row} />
          ))}
        </tbody>
      </table>
      {shown.length < rows.length && (
        <p style={{ marginTop: '0.6rem' }}>
          <Button size="slim" onClick={() => setWhole(true)}>
            Show all {rows.length}
          </Button>
        </p>
      )}
    </section>
  );
}
