/** A bone medicine waiting for its successor, as a page shows it. */
import { type Clock, clockOf, plainDate } from '@twelvemonth/clinical';
import type { ClockView } from '@twelvemonth/exchange';
import type { Person } from '../register/people.ts';

/** The clock of a person today; undefined where none runs, or no protocol says how long it may. */
export const clockOfPerson = ({ record, unit, today, readiness }: Person): Clock | undefined =>
  unit?.protocol === undefined ? undefined : clockOf(record, unit.protocol, today, readiness()?.window?.first);

export const clockViewOf = (clock: Clock | undefined): ClockView | undefined =>
  clock === undefined
    ? undefined
    : {
        tier: clock.tier,
        medicine: clock.medicine,
        says: clock.says,
        due: plainDate(clock.due),
        ask: [...clock.ask],
        ...(clock.prescriberToday === undefined ? {} : { prescriberToday: clock.prescriberToday }),
      };

const urgent: readonly Clock['tier'][] = ['first in line', 'alarm', 'highest alarm'];
export const isUrgent = (clock: Clock | undefined): boolean => clock !== undefined && urgent.includes(clock.tier);
