import type { PersonRow } from '@twelvemonth/exchange';
import { startTransition, useState } from 'react';
import { Button } from '../paper/Button.tsx';
import { usePrinting } from '../paper/use-printing.ts';
import list from '../paper/PeopleTable.module.css';
import css from './People.module.css';
import { PeopleTableRow } from './PeopleTableRow.tsx';

/** Rows drawn at once: a register of a thousand never holds the screen up. On paper all of them. */
const rowsOfPage = 50;

export function PeopleTable({ rows }: { rows: readonly PersonRow[] }) {
  // Another list begins at its first page.
  const [turned, setTurned] = useState({ rows, page: 0 });
  const page = turned.rows === rows ? turned.page : 0;
  const printing = usePrinting();
  const pages = Math.max(1, Math.ceil(rows.length / rowsOfPage));
  const at = Math.min(page, pages - 1);
  const shown = printing ? rows : rows.slice(at * rowsOfPage, (at + 1) * rowsOfPage);
  const turn = (to: number): void => {
    startTransition(() => setTurned({ rows, page: to }));
    document.getElementById('people')?.scrollIntoView();
  };
  return (
    <div id="people">
      <table className={`${list['table']} ${css['table']}`}>
        <thead>
          <tr>
            <th scope="col">who</th>
            <th scope="col">where they are</th>
            <th scope="col">today</th>
            <th scope="col">window</th>
            <th scope="col">place</th>
          </tr>
        </thead>
        <tbody>
          {shown.map((row) => (
            <PeopleTableRow key={row.patient} row={row} />
          ))}
        </tbody>
      </table>
      {pages > 1 && !printing && (
        <div className={css['pages']}>
          <Button size="slim" disabled={at === 0} onClick={() => turn(at - 1)}>
            Before
          </Button>
          <span>
            {at * rowsOfPage + 1} to {Math.min(rows.length, (at + 1) * rowsOfPage)} of {rows.length}
          </span>
          <Button size="slim" disabled={at >= pages - 1} onClick={() => turn(at + 1)}>
            Next {Math.min(rowsOfPage, rows.length - (at + 1) * rowsOfPage)}
          </Button>
        </div>
      )}
    </div>
  );
}
