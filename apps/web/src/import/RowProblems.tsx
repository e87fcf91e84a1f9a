import type { DryRunAnswer } from '@twelvemonth/exchange';
import { useState } from 'react';
import { Button } from '../paper/Button.tsx';
import { usePrinting } from '../paper/use-printing.ts';
import css from './Import.module.css';

const firstShown = 60;

/** Everything that could not be read as it stands, by row and column, with what to do. */
export function RowProblems({ problems }: { problems: DryRunAnswer['problems'] }) {
  const [whole, setWhole] = useState(false);
  const printing = usePrinting();
  const blocking = problems.filter(({ blocks }) => blocks).length;
  if (problems.length === 0) return <p>No row has trouble.</p>;
  const sorted = problems.toSorted((a, b) => Number(b.blocks) - Number(a.blocks) || a.row - b.row);
  const shown = whole || printing ? sorted : sorted.slice(0, firstShown);
  return (
    <section aria-labelledby="problems">
      <h2 id="problems">
        Trouble in rows ({problems.length}, {blocking} of them make a row wait)
      </h2>
      <table className="stacks">
        <thead>
          <tr>
            <th scope="col">row</th>
            <th scope="col">column</th>
            <th scope="col">cell</th>
            <th scope="col">what is wrong</th>
            <th scope="col">what to do</th>
          </tr>
        </thead>
        <tbody>
          {shown.map((each) => (
            <tr key={`${each.row} ${each.column} ${each.problem} ${each.says}`}>
              <td>{each.row}</td>
              <td>{each.column}</td>
              <td>{each.cell}</td>
              <td>
                {each.blocks && <span className={css['blocks']}>waits: </span>}
                {each.says}
              </td>
              <td>{each.remedy}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {shown.length < problems.length && (
        <p>
          <Button size="slim" onClick={() => setWhole(true)}>
            Show all {problems.length}
          </Button>
        </p>
      )}
    </section>
  );
}
