import { type Day, type Sentence, clockAt, leavesAt, loadsOf, seenIn } from '@twelvemonth/planning';
import { useMemo, useRef } from 'react';
import css from './Board.module.css';
import { BoardTable } from './BoardTable.tsx';
import type { DrawingAct, DrawingState } from './drawing-state.ts';
import { StaffRows, staffWords } from './StaffRows.tsx';
import { VisitBar } from './VisitBar.tsx';

const rowPixels = 66;
const minutesPerHour = 60;
const fiveMinutes = 5;
const pixelsPerFiveMinutes = 9;

type Props = {
  readonly state: DrawingState;
  readonly said: readonly Sentence[];
  readonly act: (act: DrawingAct) => void;
};

/** Ticks drawn: until an hour after the last has left, so that there is room to move somebody later. */
function shownTicks(day: Day, state: DrawingState): number {
  const { plan } = state.held?.from ?? state.now;
  const last = Math.max(...seenIn(day, plan).map(({ visit, times }) => leavesAt(visit, times)), 0);
  return Math.min(day.ticks, last + Math.ceil(minutesPerHour / day.minutesPerTick));
}

/** Chairs as rows, the hours across, each visit as a card with its steps; below, whether hands and places are enough. */
export function ChairBoard({ state, said, act }: Props) {
  const { day, now } = state;
  const track = useRef<HTMLDivElement>(null);
  const shown = shownTicks(day, state);
  const chairs = Math.max(0, ...day.chairs, ...now.chairs.map((chair) => chair ?? 0));
  const withoutChair = now.plan.flatMap((times, visit) =>
    times !== null && now.chairs[visit] === undefined ? [visit] : [],
  );
  const rows = [
    ...Array.from({ length: chairs }, (_, index) => `Chair ${index + 1}`),
    ...withoutChair.map(() => 'No chair'),
  ];
  const scale = {
    rowPixels,
    pixelsPerTick: () => (track.current?.getBoundingClientRect().width ?? shown) / shown,
  };
  // The order in which the Tab key goes from visit to visit must not change under the hand that moves one.
  const inOrder = useMemo(() => {
    const arrival = (visit: number): number => state.proposed.plan[visit]?.arrives ?? 0;
    return [...day.visits.keys()].toSorted((a, b) => arrival(a) - arrival(b) || a - b);
  }, [day, state.proposed]);
  const broken = new Set(said.flatMap(({ visits }) => visits));
  const firstHour = Math.ceil(day.startsAtMinute / minutesPerHour) * minutesPerHour;
  const hours: number[] = [];
  for (let minute = firstHour; (minute - day.startsAtMinute) / day.minutesPerTick < shown; minute += minutesPerHour)
    hours.push((minute - day.startsAtMinute) / day.minutesPerTick);
  const at = (tick: number) => ({ insetInlineStart: `${(tick / shown) * 100}%` });
  const wide = ((shown * day.minutesPerTick) / fiveMinutes) * pixelsPerFiveMinutes;
  const staff = loadsOf(day, now.plan).filter(
    ({ needed, there }) => needed.some((count) => count > 0) || there.some((count) => count > 0),
  );
  return (
    <>
      <p id="board-how" className="quiet screenOnly">
        Drag a visit, or reach it with Tab: left and right move it by {day.minutesPerTick} minutes, up and down to
        another chair, Enter lets go, Escape takes back.
      </p>
      <section className={css['scroll']} aria-label="Chair board">
        <div className={css['board']} style={{ minInlineSize: wide }}>
          <div className={css['names']} aria-hidden="true">
            <div className={css['corner']} />
            {rows.map((name, row) => (
              // oxlint-disable-next-line react/no-array-index-key -- a row of the board is its number
              <div key={row} className={css['name']} style={{ blockSize: rowPixels }}>
                {name}
              </div>
            ))}
            {staff.map(({ of, there }) => (
              <div key={of} className={css['staffName']}>
                {staffWords[of]} <small>{Math.max(...there)}</small>
              </div>
            ))}
          </div>
          <div>
            <div className={css['hours']} aria-hidden="true">
              {hours.map((tick) => (
                <span key={tick} style={at(tick)}>
                  {clockAt(day, tick)}
                </span>
              ))}
            </div>
            <div className={css['track']} ref={track} style={{ blockSize: rows.length * rowPixels }}>
              {rows.map((name, row) => (
                // oxlint-disable-next-line react/no-array-index-key -- a row of the board is its number
                <i
                  key={`row ${row}`}
                  className={css['row']}
                  style={{ insetBlockStart: row * rowPixels, blockSize: rowPixels }}
                />
              ))}
              {hours.map((tick) => (
                <i key={tick} className={css['hour']} style={at(tick)} />
              ))}
              {day.closes < shown && (
                <i className={css['closes']} style={at(day.closes)}>
                  <small>closes {clockAt(day, day.closes)}</small>
                </i>
              )}
              {inOrder.map((visit) => (
                <VisitBar
                  key={visit}
                  day={day}
                  drawn={now}
                  visit={visit}
                  row={now.chairs[visit] === undefined ? chairs + withoutChair.indexOf(visit) : now.chairs[visit] - 1}
                  scale={scale}
                  shown={shown}
                  isHeld={state.held?.visit === visit}
                  isChosen={state.chosen === visit}
                  isBroken={broken.has(visit)}
                  act={act}
                />
              ))}
            </div>
            <div aria-hidden="true">
              <StaffRows day={day} plan={now.plan} shown={shown} />
            </div>
          </div>
        </div>
      </section>
      <p className={`${css['legend']} quiet`}>
        In a card: filled, a nurse is needed; open, the infusion; dashed, the watch. Over and under a card: the same
        before sitting down and after rising; a thin line is waiting. Below: filled, how many are needed; hatched with
        !, more than there are.
      </p>
      <BoardTable day={day} drawn={now} broken={broken} />
    </>
  );
}
