import { Link } from '@tanstack/react-router';
import type { EarlierSession } from '@twelvemonth/planning';
import { useState } from 'react';
import { Button } from '../paper/Button.tsx';
import { buttonLook } from '../paper/button-look.ts';
import { useTicks } from '../paper/use-ticks.ts';
import { dayInWords } from '../words/dates.ts';
import { counted } from '../words/texts.ts';
import list from '../paper/PeopleTable.module.css';
import css from './Fill.module.css';
import type { Line } from './lines.ts';
import type { Accepting } from './use-accepting.ts';
import { useUnitWords } from '../words/american.ts';

type Props = {
  readonly id: string;
  readonly title: string;
  readonly says: string;
  readonly lines: readonly Line[];
  readonly accepting: Accepting;
  readonly mayBook: boolean;
  readonly earlier: ReadonlyMap<number, readonly EarlierSession[]>;
  readonly askWhy: (person: number) => void;
};

/** Proposed changes with a tick each: accepted one by one or the ticked ones, or left. */
export function ProposalTable({ id, title, says, lines, accepting, mayBook, earlier, askWhy }: Props) {
  const words = useUnitWords();
  const ticks = useTicks<number>();
  const open = lines.filter(({ person }) => accepting.came.get(person)?.is !== 'booked');
  const chosen = open.filter(({ person }) => ticks.has(person));
  if (lines.length === 0) return null;
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>
        {title} ({lines.length})
      </h2>
      <p className="quiet">{says}</p>
      {mayBook && (
        <div className={`${css['acts']} screenOnly`}>
          <Button
            tone="act"
            busy={accepting.busy}
            busyWords={`${accepting.done} of ${accepting.of} booked …`}
            disabled={chosen.length === 0}
            onClick={() => void accepting.accept(chosen).then(() => ticks.exactly([]))}
          >
            Accept {chosen.length === 0 ? 'the ticked ones' : counted(chosen.length, 'line')}
          </Button>
          {accepting.busy ? (
            <Button onClick={accepting.stop}>Stop</Button>
          ) : (
            <Button
              disabled={open.length === 0}
              onClick={() => ticks.exactly(chosen.length === open.length ? [] : open.map((one) => one.person))}
            >
              {chosen.length > 0 && chosen.length === open.length ? 'Tick none' : 'Tick all'}
            </Button>
          )}
        </div>
      )}
      <table className={`stacks ${list['table']} ${css['table']}`}>
        <thead>
          <tr>
            <th scope="col">{mayBook ? 'tick' : <span className="unseen">tick</span>}</th>
            <th scope="col">who</th>
            <th scope="col">proposed</th>
            <th scope="col">{words('bloods')}</th>
            <th scope="col">
              <span className="unseen">acts</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <LineRow
              key={line.person}
              line={line}
              came={accepting.came.get(line.person)}
              ticked={ticks.has(line.person)}
              tick={mayBook ? () => ticks.turn(line.person) : undefined}
              accept={mayBook && !accepting.busy ? () => void accepting.accept([line]) : undefined}
              earlier={earlier.get(line.person)}
              askWhy={() => askWhy(line.person)}
            />
          ))}
        </tbody>
      </table>
    </section>
  );
}

const mostNamed = 3;

/** "Mabel Otterhampton or Wanda Hawkam"; many are not all named. */
function oneOf(names: readonly string[]): string {
  if (names.length === 0 || names.length > mostNamed) return 'somebody';
  return names.length === 1 ? names.join('') : `${names.slice(0, -1).join(', ')} or ${names.at(-1) ?? ''}`;
}

type RowProps = {
  readonly line: Line;
  readonly came: ReturnType<Accepting['came']['get']>;
  readonly ticked: boolean;
  readonly tick: (() => void) | undefined;
  readonly accept: (() => void) | undefined;
  readonly earlier: readonly EarlierSession[] | undefined;
  readonly askWhy: () => void;
};

function LineRow({ line, came, ticked, tick, accept, earlier, askWhy }: RowProps) {
  const words = useUnitWords();
  const { patient, name, tier, kind, from, to, place, after, bloods, gain } = line;
  const [isOpen, setOpen] = useState(false);
  const isBooked = came?.is === 'booked';
  const where =
    place === undefined ? `the list is full until ${oneOf(after)} is moved from it` : `arrives ${place.arriveAt}`;
  return (
    <>
      <tr>
        <td>
          {tick !== undefined && !isBooked && (
            <label className={css['tick']}>
              <input type="checkbox" checked={ticked} onChange={tick} />
              <span className="unseen">
                {name}, {dayInWords(to.on)}
              </span>
            </label>
          )}
        </td>
        <th scope="row">
          <Link to="/people/$patient" params={{ patient }}>
            {name}
          </Link>
          <div className={list['detail']}>{tier === 'other' ? kind : `${kind}, ${tier}`}</div>
        </th>
        <td data-head="proposed">
          <strong>{dayInWords(to.on)}</strong>
          <div className={list['detail']}>{isBooked ? `arrives ${came.at}` : where}</div>
          {from !== undefined && (
            <div className={list['detail']}>
              told {dayInWords(from.on)}; {gain}
            </div>
          )}
        </td>
        <td data-head={words('bloods')}>{bloods}</td>
        <td className={css['rowActs']}>
          {isBooked ? (
            <strong>{from === undefined ? 'booked' : 'moved'}</strong>
          ) : (
            accept !== undefined && (
              <Button size="slim" className="screenOnly" onClick={accept}>
                Accept<span className="unseen"> {name}</span>
              </Button>
            )
          )}
          <Button
            tone="plain"
            size="slim"
            aria-expanded={isOpen}
            className="screenOnly"
            onClick={() => {
              if (!isOpen && earlier === undefined) askWhy();
              setOpen(!isOpen);
            }}
          >
            why?<span className="unseen"> {name}</span>
          </Button>
        </td>
      </tr>
      {came?.is === 'refused' && (
        <tr>
          <td colSpan={5} className={css['refused']}>
            <div role="alert">
              <strong>Not booked: {name}.</strong> {came.says}
              {came.missed.length > 0 && ` Written since: ${came.missed.join('; ')}.`}{' '}
              <Link
                to="/people/$patient/book"
                params={{ patient }}
                search={{ session: to.session }}
                className={buttonLook('quiet', 'slim')}
              >
                Book by hand
              </Link>
            </div>
          </td>
        </tr>
      )}
      {isOpen && (
        <tr>
          <td colSpan={5} className={css['why']}>
            <WhyLine line={line} earlier={earlier} />
          </td>
        </tr>
      )}
    </>
  );
}

/** Earlier sessions told; the nearest are those somebody asks about. */
const nearest = 4;

function WhyLine({ line, earlier }: { line: Pick<Line, 'why'>; earlier: readonly EarlierSession[] | undefined }) {
  const words = useUnitWords();
  return (
    <div aria-live="polite">
      <p>{words(line.why)}</p>
      <WhyNotEarlier earlier={earlier} />
    </div>
  );
}

export function WhyNotEarlier({ earlier }: { earlier: readonly EarlierSession[] | undefined }) {
  if (earlier === undefined) return <p className="quiet">working it out …</p>;
  if (earlier.length === 0) return <p>No session is earlier.</p>;
  return (
    <>
      <p>Why not earlier:</p>
      <ul>
        {earlier.slice(-nearest).map(({ session, says }) => (
          <li key={session}>{says}</li>
        ))}
        {earlier.length > nearest && <li>and {counted(earlier.length - nearest, 'session')} before these</li>}
      </ul>
    </>
  );
}
