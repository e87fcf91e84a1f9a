import { hoursLine, plannedVisit } from '@twelvemonth/charts';
import { type Day, type Drawn, clockAt, leavesAt, seenIn } from '@twelvemonth/planning';
import { Strip } from '../../drawing/Strip.tsx';
import { Button } from '../../paper/Button.tsx';
import css from './Times.module.css';
import { WhyThisTime } from './WhyThisTime.tsx';

const stripWidth = 620;
/** Minutes shown after the last has left. */
const margin = 30;

type Props = {
  readonly day: Day;
  readonly drawn: Drawn;
  /** By name: the time each has been told. */
  readonly told: ReadonlyMap<string, string>;
  readonly onMove: (visit: number, ticks: number) => void;
};

/** People in order of coming, each with the planned visit on the hours of the day and the two buttons that move it. */
export function PlannedVisits({ day, drawn, told, onMove }: Props) {
  const { plan, chairs, locks } = drawn;
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
                  {locks[index] === undefined ? '' : `, ${locks[index]} locked`}
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
