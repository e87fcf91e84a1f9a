import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import type { LetterRow } from '@twelvemonth/exchange';
import { type ReactNode, useState } from 'react';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { useTicks } from '../paper/use-ticks.ts';
import { TableHead } from '../paper/TableHead.tsx';
import { writtenLetter } from '../server/queries.ts';
import { dayInWords } from '../words/dates.ts';
import { unbroken } from '../words/texts.ts';
import { Came } from './Came.tsx';
import { letterName } from './letter-words.ts';
import css from './Letters.module.css';
import { PressTicked } from './PressTicked.tsx';
import { Sheet } from './Sheet.tsx';
import { type One, useMany } from './use-many.ts';
import { useUnitWords } from '../words/american.ts';

type Line = Pick<LetterRow, 'patient' | 'name' | 'number' | 'to' | 'about'> & {
  readonly key: string;
  readonly when: string;
  readonly note: string;
  /** Why it cannot go on now; empty: it can. */
  readonly notNow: string;
};
type Props<Row extends Line> = {
  readonly id: string;
  readonly title: string;
  readonly says?: ReactNode;
  readonly rows: readonly Row[];
  /** Ticked only once it was opened here. */
  readonly mustRead?: boolean;
  /** What one press does with the ticked ones; left out: nothing is ticked. */
  readonly press?: (rows: number) => string;
  readonly one?: (row: Row) => One;
};

export function LetterTable<Row extends Line>({ id, title, says, rows, mustRead = false, press, one }: Props<Row>) {
  const ticks = useTicks<string>();
  const [read, setRead] = useState<ReadonlySet<string>>(new Set());
  const [open, setOpen] = useState<string>();
  const many = useMany();
  if (rows.length === 0 && many.progress === undefined) return null;
  const chosen = rows.filter(({ key, notNow }) => ticks.has(key) && notNow === '');
  const possible = rows.filter(({ key, notNow }) => notNow === '' && (!mustRead || read.has(key)));
  const show = (key: string): void => {
    setOpen(open === key ? undefined : key);
    setRead(new Set([...read, key]));
  };
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>
        {title} ({rows.length})
      </h2>
      {says !== undefined && <p className="quiet screenOnly">{says}</p>}
      {press !== undefined && one !== undefined && (
        <PressTicked
          many={many}
          chosen={chosen.length}
          words={press(chosen.length)}
          start={() => void many.run(chosen.map(one)).then(() => ticks.exactly([]))}
          tickAll={{
            words: mustRead ? 'Tick all that were read' : 'Tick all',
            possible: possible.length > 0,
            press: () => ticks.exactly(possible.map(({ key }) => key)),
          }}
        />
      )}
      <Came of={many.progress} busy={many.busy} />
      {rows.length > 0 && (
        <table className={`stacks ${css['table']}`}>
          <TableHead
            columns={[press === undefined ? { unseen: 'tick' } : 'tick', 'who', 'letter', 'state', { unseen: 'acts' }]}
          />
          <tbody>
            {rows.map((row) => (
              <Row
                key={row.key}
                row={row}
                ticked={ticks.has(row.key)}
                tick={press !== undefined && possible.includes(row) ? () => ticks.turn(row.key) : undefined}
                open={open === row.key}
                show={mustRead ? () => show(row.key) : undefined}
              />
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

type RowProps = {
  readonly row: Line;
  readonly ticked: boolean;
  readonly tick: (() => void) | undefined;
  readonly open: boolean;
  readonly show: (() => void) | undefined;
};

function Row({ row, ticked, tick, open, show }: RowProps) {
  const { patient, name, number, to, about, when, note, notNow } = row;
  const words = useUnitWords();
  const called = words(letterName(row));
  return (
    <>
      <tr>
        <td>
          {tick !== undefined && (
            <label className={css['tick']}>
              <input type="checkbox" checked={ticked} onChange={tick} />
              <span className="unseen">
                {called}, {name}
              </span>
            </label>
          )}
        </td>
        <th scope="row">
          <Link to="/people/$patient/letters" params={{ patient }} search={{ to, about }}>
            {name}
          </Link>
          <div className={css['detail']}>{unbroken(number)}</div>
        </th>
        <td>{called}</td>
        <td>
          {dayInWords(when)}
          <div className={css['detail']}>{words(note)}</div>
          {notNow !== '' && (
            <div>
              <strong>Not now:</strong> {words(notNow)}
            </div>
          )}
        </td>
        <td style={{ textAlign: 'end' }}>
          {show !== undefined && (
            <Button size="slim" className="screenOnly nowrap" aria-expanded={open} onClick={show}>
              Read<span className="unseen"> the letter about {name}</span>
            </Button>
          )}
        </td>
      </tr>
      {open && (
        <tr>
          <td colSpan={5}>
            <ToRead row={row} />
          </td>
        </tr>
      )}
    </>
  );
}

function ToRead({ row: { patient, to, about, key } }: { row: Line }) {
  const asked = useQuery(writtenLetter({ patient, to, about, draft: key }));
  return (
    <Awaited query={asked} what="the letter">
      {({ sheet, notPrintable }) => (
        <>
          {notPrintable.length > 0 && <Note tone="caution">Not printable: {notPrintable.join('; ')}.</Note>}
          <Sheet letter={sheet} />
        </>
      )}
    </Awaited>
  );
}
