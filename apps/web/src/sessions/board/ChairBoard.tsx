import { type Day, type Sentence, clockAt, leavesAt, loadsOf, seenIn } from '@twelvemonth/planning';
import { useMemo, useRef } from 'react';
import css from './Board.module.css';
import { BoardTable } from './BoardTable.tsx';
import type { DrawingAct, DrawingState } from './drawing-state.ts';
import { liesOnAnother } from './seat.ts';
import { type Shown, StaffRows, staffWords } from './StaffRows.tsx';
import { VisitBar } from './VisitBar.tsx';

const rowPixels = 66;
const minutesPerHour = 60;
const fiveMinutes = 5;
const pixelsPerFiveMinutes = 9;

type Props = {
  readonly state: DrawingState;
  readonly said: readonly Sentence[];
  readonly act: (act: DrawingAct) => void;
  /** During the day: the first tick that can still be planned, drawn as a line. */
  readonly moment?: number;
};

/** From the first hour in which somebody is there, until an hour after the last has left: room to move somebody later. */
function shownOf(day: Day, state: DrawingState): Shown {
  const perHour = Math.ceil(minutesPerHour / day.minutesPerTick);
  const seen = seenIn(day, (state.held?.from ?? state.now).plan);
  const last = Math.max(...seen.map(({ visit, times }) => leavesAt(visit, times)), 0);
  const first = Math.min(...seen.map(({ times }) => times.arrives), day.ticks);
  const from = Math.max(0, Math.floor(first / perHour) * perHour);
  return { from, ticks: Math.min(day.ticks, last + perHour) - from };
}

/** Chairs as rows, the hours across, each visit as a card with its steps; below, whether hands and places are enough. */
export function ChairBoard({ state, said, act, moment }: Props) {
  const { day, now } = state;
  const track = useRef<HTMLDivElement>(null);
  const shown = shownOf(day, state);
  const until = shown.from + shown.ticks;
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
    pixelsPerTick: () => (track.current?.getBoundingClientRect().width ?? shown.ticks) / shown.ticks,
  };
  // The order in which the Tab key goes from visit to visit must not change under the hand that moves one.
  const inOrder = useMemo(() => {
    const arrival = (visit: number): number => state.proposed.plan[visit]?.arrives ?? 0;
    return [...day.visits.keys()].toSorted((a, b) => arrival(a) - arrival(b) || a - b);
  }, [day, state.proposed]);
  const broken = new Set(said.flatMap(({ visits }) => visits));
  const firstHour = Math.ceil(day.startsAtMinute / minutesPerHour) * minutesPerHour;
  const hours: number[] = [];
  for (let minute = firstHour; (minute - day.startsAtMinute) / day.minutesPerTick < until; minute += minutesPerHour) {
    const tick = (minute - day.startsAtMinute) / day.minutesPerTick;
    if (tick >= shown.from) hours.push(tick);
  }
  const at = (tick: number) => ({ insetInlineStart: `${((tick - shown.from) / shown.ticks) * 100}%` });
  const wide = ((shown.ticks * day.minutesPerTick) / fiveMinutes) * pixelsPerFiveMinutes;
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
              {day.closes < until && (
                <i className={css['closes']} style={at(day.closes)}>
                  <small>closes {clockAt(day, day.closes)}</small>
                </i>
              )}
              {moment !== undefined && moment > shown.from && (
                <i className={css['moment']} style={at(moment)}>
                  <small>from {clockAt(day, moment)}</small>
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
                  isOver={liesOnAnother(day, now, visit)}
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
