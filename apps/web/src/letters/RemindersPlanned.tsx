import { Link } from '@tanstack/react-router';
import type { RemindersPlanRow } from '@twelvemonth/exchange';
import { type ReactNode, useState } from 'react';
import { TextField } from '../fields/TextField.tsx';
import { useMay } from '../frame/may.ts';
import { useTicks } from '../paper/use-ticks.ts';
import { dayInWords, shortDay } from '../words/dates.ts';
import { counted, unbroken } from '../words/texts.ts';
import { Came } from './Came.tsx';
import css from './Letters.module.css';
import { PressTicked } from './PressTicked.tsx';
import { type One, useMany } from './use-many.ts';

/** Reminders still to come, where the unit lets approved ones go by themselves: seen and approved once, or taken back. */
export function RemindersPlanned({ plans, today }: { plans: readonly RemindersPlanRow[]; today: string }) {
  const open = plans.filter(({ approved }) => approved === undefined);
  const approved = plans.filter((row) => row.approved !== undefined);
  const [reason, setReason] = useState('');
  return (
    <>
      <PlanTable
        id="planned-reminders"
        title="Reminders planned"
        says="See whom, how and when. Those you approve go by themselves on their day, in the unit’s hours; they follow the place when it moves, and stop with a death or a no to all contact."
        rows={open}
        press={(rows) => `Let the reminders of ${counted(rows, 'person', 'people')} go by themselves`}
        one={(row) => ({
          who: row.name,
          act: async () => ({
            name: 'record',
            patient: row.patient,
            line: {
              kind: 'reminders-plan',
              body: {
                is: 'approved',
                place: row.place,
                channel: row.channel,
                to: row.to,
                daysBefore: row.days.map(({ daysBefore }) => daysBefore),
              },
              effectiveAt: today,
            },
          }),
        })}
      />
      <PlanTable
        id="approved-reminders"
        title="Reminders that go by themselves"
        rows={approved}
        above={<TextField label="Why they are stopped" value={reason} onChange={setReason} />}
        press={(rows) => `Stop those of ${counted(rows, 'person', 'people')}`}
        one={(row) => ({
          who: row.name,
          act: async () => ({
            name: 'record',
            patient: row.patient,
            line: { kind: 'reminders-plan', body: { is: 'stopped', reason }, effectiveAt: today },
          }),
        })}
      />
    </>
  );
}

type Props = {
  readonly id: string;
  readonly title: string;
  readonly says?: string;
  readonly rows: readonly RemindersPlanRow[];
  readonly above?: ReactNode;
  readonly press: (rows: number) => string;
  readonly one: (row: RemindersPlanRow) => One;
};

function PlanTable({ id, title, says, rows, above, press, one }: Props) {
  const may = useMay();
  const ticks = useTicks<string>();
  const many = useMany();
  if (rows.length === 0 && many.progress === undefined) return null;
  // What waits for a person can still be stopped, but not approved.
  const possible = rows.filter(({ because, approved }) => because === undefined || approved !== undefined);
  const chosen = possible.filter(({ patient }) => ticks.has(patient));
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>
        {title} ({rows.length})
      </h2>
      {says !== undefined && <p className="quiet screenOnly">{says}</p>}
      {may('record') && (
        <>
          {chosen.length > 0 && <div className="screenOnly">{above}</div>}
          <PressTicked
            many={many}
            chosen={chosen.length}
            words={press(chosen.length)}
            start={() => void many.run(chosen.map(one)).then(() => ticks.exactly([]))}
            tickAll={{
              words: 'Tick all',
              possible: possible.length > 0,
              press: () => ticks.exactly(possible.map(({ patient }) => patient)),
            }}
          />
        </>
      )}
      <Came of={many.progress} busy={many.busy} />
      <ul className={css['plain']}>
        {rows.map((row) => (
          <li key={row.place}>
            {possible.includes(row) && (
              <label className={`${css['tick']} screenOnly`}>
                <input type="checkbox" checked={ticks.has(row.patient)} onChange={() => ticks.turn(row.patient)} />
                <span className="unseen">
                  {title}: {row.name}
                </span>
              </label>
            )}{' '}
            <Link to="/people/$patient" params={{ patient: row.patient }}>
              {row.name}
            </Link>{' '}
            <span className={css['detail']}>{unbroken(row.number)}</span>, place on {dayInWords(row.on)}, {row.arriveAt}
            :{' '}
            {row.days.map(({ daysBefore, on }) => `${shortDay(on)} (${counted(daysBefore, 'day')} before)`).join(', ')}
            {row.channel !== undefined && `, by ${row.channel} to ${row.to ?? ''}`}
            <div className={css['detail']}>{row.text}</div>
            {row.approved !== undefined && (
              <div className={css['detail']}>
                approved by {row.approved.by} on {shortDay(row.approved.on)}
              </div>
            )}
            {row.because !== undefined && (
              <div>
                <strong>{row.approved === undefined ? 'Not by itself' : 'Waits for a person'}:</strong> {row.because}
              </div>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
