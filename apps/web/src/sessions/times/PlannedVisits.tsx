import { hoursLine, plannedVisit } from '@twelvemonth/charts';
import { type Day, type Plan, chairNumbers, clockAt, leavesAt, seenIn, whyThisTime } from '@twelvemonth/planning';
import { useState } from 'react';
import { Strip } from '../../drawing/Strip.tsx';
import { Button } from '../../paper/Button.tsx';
import css from './Times.module.css';

const stripWidth = 620;
/** Minutes shown after the last has left. */
const margin = 30;
/** Earlier times said; the nearest are those somebody asks about. */
const nearest = 3;

type Props = {
  readonly day: Day;
  readonly plan: Plan;
  /** By name: the time each has been told. */
  readonly told: ReadonlyMap<string, string>;
  readonly onMove: (visit: number, ticks: number) => void;
};

/** People in order of coming, each with the planned visit on the hours of the day and the two buttons that move it. */
export function PlannedVisits({ day, plan, told, onMove }: Props) {
  const chairs = chairNumbers(day, plan);
  const minute = (tick: number): number => day.startsAtMinute + tick * day.minutesPerTick;
  const inOrder = seenIn(day, plan).toSorted((a, b) => a.times.arrives - b.times.arrives || a.index - b.index);
  const hours = [
    minute(0),
    minute(Math.max(...inOrder.map(({ visit, times }) => leavesAt(visit, times)))) + margin,
  ] as const;
  return (
    <>
      <div className={css['hours']} aria-hidden="true">
        <Strip svg={hoursLine(hours[0], hours[1], stripWidth)} />
      </div>
      <ol className={css['visits']}>
        {inOrder.map(({ visit, index, times }) => {
          const before = told.get(visit.name);
          const comes = clockAt(day, times.arrives);
          const drawing = plannedVisit(
            {
              who: visit.name,
              from: hours[0],
              until: hours[1],
              arrives: minute(times.arrives),
              leaves: minute(leavesAt(visit, times)),
              chair: chairs[index],
              steps: visit.steps.map(({ name, ticks, nurse }, step) => ({
                step: name,
                from: minute(times.starts[step] ?? 0),
                to: minute((times.starts[step] ?? 0) + ticks),
                nurse,
              })),
            },
            stripWidth,
          );
          return (
            <li key={visit.name} className={css['visit']}>
              <div>
                <strong>
                  {comes} to {clockAt(day, leavesAt(visit, times))}
                </strong>{' '}
                {visit.name}
                <div className={css['detail']}>
                  {chairs[index] === undefined ? 'no chair' : `chair ${chairs[index]}`}
                  {before !== undefined && before !== comes ? `, told ${before}` : ''}
                </div>
              </div>
              <Strip svg={drawing.svg} />
              <div className={`${css['moves']} screenOnly`}>
                <Button
                  aria-label={`${visit.name} ${day.minutesPerTick} minutes earlier`}
                  onClick={() => onMove(index, -1)}
                >
                  earlier
                </Button>
                <Button
                  aria-label={`${visit.name} ${day.minutesPerTick} minutes later`}
                  onClick={() => onMove(index, 1)}
                >
                  later
                </Button>
                <WhyThisTime day={day} plan={plan} visit={index} name={visit.name} />
              </div>
            </li>
          );
        })}
      </ol>
    </>
  );
}

/** Worked out when it is asked: what is in the way of an earlier time. */
function WhyThisTime({ day, plan, visit, name }: { day: Day; plan: Plan; visit: number; name: string }) {
  const [isOpen, setOpen] = useState(false);
  const why = isOpen ? whyThisTime(day, plan, visit) : undefined;
  return (
    <>
      <Button aria-expanded={isOpen} aria-label={`Why this time? ${name}`} onClick={() => setOpen(!isOpen)}>
        why this time?
      </Button>
      {why !== undefined && why !== null && (
        <div className={css['why']} aria-live="polite">
          <p>{why.says}</p>
          <ul>
            {why.earlier.slice(0, nearest).map(({ arrives, wouldHaveToGive }) => (
              <li key={arrives}>
                {clockAt(day, arrives)}:{' '}
                {wouldHaveToGive.length === 0 ? 'nothing is in the way' : `would need ${wouldHaveToGive.join('; ')}`}
              </li>
            ))}
          </ul>
        </div>
      )}
    </>
  );
}
