import { type Day, type Load, type Plan, clockAt, loadsOf } from '@twelvemonth/planning';
import css from './Board.module.css';

export const staffWords: Readonly<Record<Load['of'], string>> = {
  nurses: 'Nurses',
  preparers: 'Preparing',
  checkers: 'Second check',
  watchPlaces: 'Watch places',
};

/** The part of the day that is drawn: from a tick, so many. */
export type Shown = { readonly from: number; readonly ticks: number };

type Stretch = { readonly from: number; readonly until: number; readonly needed: number; readonly there: number };

function stretchesOf({ needed, there }: Load, shown: Shown): Stretch[] {
  const found: Stretch[] = [];
  for (let tick = shown.from; tick < shown.from + shown.ticks; tick += 1) {
    const here = { needed: needed[tick] ?? 0, there: there[tick] ?? 0 };
    const before = found.at(-1);
    if (before?.needed === here.needed && before.there === here.there)
      found[found.length - 1] = { ...before, until: tick + 1 };
    else found.push({ from: tick, until: tick + 1, ...here });
  }
  return found;
}

/** How many of each are needed through the day: a filled step for each; hatched, with a sign, where there are fewer. */
export function StaffRows({ day, plan, shown }: { day: Day; plan: Plan; shown: Shown }) {
  return loadsOf(day, plan)
    .filter(({ needed, there }) => needed.some((count) => count > 0) || there.some((count) => count > 0))
    .map((load) => {
      const most = Math.max(1, ...load.needed, ...load.there);
      return (
        <div key={load.of} className={css['staff']}>
          {stretchesOf(load, shown).map(({ from, until, needed, there }) => {
            const isOver = needed > there;
            const place = {
              insetInlineStart: `${((from - shown.from) / shown.ticks) * 100}%`,
              inlineSize: `${((until - from) / shown.ticks) * 100}%`,
            };
            return (
              <span key={from}>
                <span className={css['there']} style={{ ...place, blockSize: `${(there / most) * 100}%` }} />
                {needed > 0 && (
                  <span
                    className={`${css['needed']} ${isOver ? css['over'] : ''}`}
                    style={{ ...place, blockSize: `${(needed / most) * 100}%` }}
                    title={`${clockAt(day, from)} to ${clockAt(day, until)}: ${needed} needed, ${there} there`}
                  >
                    {isOver && <b className={css['bang']}>!</b>}
                  </span>
                )}
              </span>
            );
          })}
        </div>
      );
    });
}
