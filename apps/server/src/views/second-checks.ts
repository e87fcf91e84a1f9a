/** The second checks of a session, the soonest after its preparation first: for whoever looks whether they were readings. */
import { type Day, checkerOf, untilChecked, visitOn } from '@twelvemonth/clinical';
import type { SessionDayView } from '@twelvemonth/exchange';
import type { Person } from '../register/people.ts';
import { fullName } from './person-words.ts';

export const secondChecksOf = (
  listed: readonly Person[],
  on: Day,
  nameOf: (staff: string) => string,
): SessionDayView['secondChecks'] =>
  listed
    .flatMap((person) => {
      const visit = visitOn(person.record, on);
      if (visit?.preparation === undefined || visit.check === undefined) return [];
      const milliseconds = untilChecked(visit.preparation, visit.check);
      return [
        {
          patient: person.patient,
          name: fullName(person),
          preparedBy: nameOf(visit.preparation.author.staff),
          checkedBy: nameOf(checkerOf(visit.check)),
          at: visit.check.at ?? visit.check.recordedAt,
          agrees: visit.check.body.agrees,
          ...(milliseconds === undefined ? {} : { afterSeconds: milliseconds / 1000 }),
        },
      ];
    })
    .toSorted((a, b) => (a.afterSeconds ?? Infinity) - (b.afterSeconds ?? Infinity) || a.name.localeCompare(b.name));
