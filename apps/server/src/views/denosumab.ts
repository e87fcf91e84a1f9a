/** Denosumab waiting for its successor, as a page shows it. */
import { type DenosumabClock, denosumabClock, plainDate } from '@twelvemonth/clinical';
import type { DenosumabView } from '@twelvemonth/exchange';
import type { Person } from '../register/people.ts';

/** The clock of a person today; undefined where none runs, or no protocol says how long it may. */
export function denosumabOf({ record, unit, today, readiness }: Person): DenosumabClock | undefined {
  return unit?.protocol === undefined
    ? undefined
    : denosumabClock(record, unit.protocol, today, readiness()?.window?.first);
}

export const denosumabViewOf = (clock: DenosumabClock | undefined): DenosumabView | undefined =>
  clock === undefined
    ? undefined
    : {
        tier: clock.tier,
        says: clock.says,
        due: plainDate(clock.due),
        ask: [...clock.ask],
        ...(clock.prescriberToday === undefined ? {} : { prescriberToday: clock.prescriberToday }),
      };

const urgent: readonly DenosumabClock['tier'][] = ['first in line', 'alarm', 'highest alarm'];
export const isUrgent = (clock: DenosumabClock | undefined): boolean =>
  clock !== undefined && urgent.includes(clock.tier);
