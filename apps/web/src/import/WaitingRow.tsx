import type { WaitingRow as Row } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { useUnit } from '../frame/unit.ts';
import { Button } from '../paper/Button.tsx';
import { Trouble } from '../paper/Trouble.tsx';
import { Why } from '../paper/Why.tsx';
import { usePosting } from '../server/use-posting.ts';
import { momentInWords } from '../words/dates.ts';
import { dotted } from '../words/texts.ts';
import css from './Import.module.css';
import { SameAs } from './SameAs.tsx';
import { type WhoItIs, asksWho, whoOptions } from './who-it-is.ts';

/** A row's first cells tell whom it is about. */
const cellsThatTell = 4;

/** One row: its troubles, its cells to put right, and the two ways out. */
export function WaitingRow({ row }: { row: Row }) {
  const { unit } = useUnit();
  const [cells, setCells] = useState(row.cells);
  const [who, setWho] = useState<WhoItIs>();
  const [sameAs, setSameAs] = useState<string>();
  const [reason, setReason] = useState('');
  const settle = usePosting('settleRow');
  const which = { register: row.register, fingerprint: row.fingerprint, row: row.row };
  const wrong = new Set(row.problems.map(({ column }) => column));
  const field = (column: string) => (
    <TextField
      key={column}
      label={column}
      value={cells[column] ?? ''}
      onChange={(value) => setCells((before) => ({ ...before, [column]: value }))}
    />
  );
  return (
    <section className={css['row']} aria-label={`Row ${row.row} of ${row.file}`}>
      <p>
        <strong>
          Row {row.row} of {row.file}
        </strong>{' '}
        <span className="quiet">waits since {momentInWords(row.since, unit?.zone)}</span>
        <br />
        {dotted(...Object.values(row.cells).slice(0, cellsThatTell))}
      </p>
      <ul>
        {row.problems.map((problem) => (
          <li key={`${problem.column} ${problem.problem}`}>
            {problem.column !== '' && <strong>{problem.column}: </strong>}
            {problem.says} <span className="quiet">{problem.remedy}</span>
          </li>
        ))}
      </ul>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void settle.send({
            outcome: 'try again',
            ...which,
            cells,
            ...(who === 'another person' ? { notTheSame: true } : {}),
            ...(who === 'someone here' && sameAs !== undefined ? { sameAs } : {}),
          });
        }}
      >
        <div className={css['cells']}>
          {Object.keys(row.cells)
            .filter((column) => wrong.has(column))
            .map(field)}
        </div>
        <Why about={`of row ${row.row}`} word="all cells">
          <div className={css['cells']}>
            {Object.keys(row.cells)
              .filter((column) => !wrong.has(column))
              .map(field)}
          </div>
        </Why>
        {asksWho(row) && <ChoiceField label="This row is about" value={who} onChange={setWho} options={whoOptions} />}
        {who === 'someone here' && <SameAs sameAs={sameAs} choose={setSameAs} />}
        {settle.error !== undefined && <Trouble error={settle.error} />}
        <div className={css['acts']}>
          <Button type="submit" tone="act" busy={settle.busy}>
            Try it again
          </Button>
        </div>
      </form>
      <Why about={`row ${row.row}`} word="leave it out">
        <form
          onSubmit={(event) => {
            event.preventDefault();
            void settle.send({ outcome: 'left out', ...which, reason });
          }}
        >
          <TextField label="Why it is left out" value={reason} onChange={setReason} />
          <Button type="submit" size="slim" busy={settle.busy} disabled={reason.trim() === ''}>
            Leave the row out
          </Button>
        </form>
      </Why>
    </section>
  );
}
