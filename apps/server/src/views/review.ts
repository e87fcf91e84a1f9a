/** A review of the course, gathered for the screen. */
import { factsOf, plainDate, reviewSheetOf } from '@twelvemonth/clinical';
import type { ReviewView } from '@twelvemonth/exchange';
import { Refused } from '../problem.ts';
import type { Person } from '../register/people.ts';
import { bornInWords, fullName } from './person-words.ts';

export function reviewViewOf(person: Person): ReviewView | Refused {
  const { record, unit, today, identity, standing } = person;
  const protocol = unit?.protocol;
  if (protocol === undefined)
    return new Refused(409, 'no-protocol', 'No protocol is in force at this unit: a review cannot be gathered.');
  const sheet = reviewSheetOf(record, protocol, today);
  const { basis, needed } = sheet;
  return {
    patient: person.patient,
    seq: record.lastSeq,
    name: fullName(person),
    born: bornInWords(identity?.born),
    number: identity?.number ?? '',
    unit: unit?.unit.name ?? '',
    standing: standing.says,
    today: plainDate(today),
    protocolVersion: protocol.version,
    ...(needed === undefined ? {} : { needed: { says: needed.says, since: plainDate(needed.since) } }),
    events: sheet.events.map(({ says, entry }) => ({ says, entry })),
    sections: sheet.sections.map(({ title, lines, none, source }) => ({
      title,
      lines: lines.map(({ says, entries }) => ({ says, entries: [...entries] })),
      none,
      ...(source === undefined ? {} : { source }),
    })),
    carryingOn: sheet.carryingOn.map((one) => ({ ...one, entries: [...one.entries] })),
    failure: {
      is: sheet.failure.is,
      says: sheet.failure.says,
      criteria: sheet.failure.criteria.map((one) => ({ ...one, entries: [...one.entries] })),
    },
    gaps: sheet.gaps.map(({ says, kind }) => ({ says, record: kind === 'result' ? 'sample' : kind })),
    basis: {
      today: plainDate(basis.today),
      given: basis.given,
      lifetime: basis.lifetime,
      consecutive: basis.consecutive,
      maxConsecutive: basis.maxConsecutive,
      needsSpecialist: basis.needsSpecialist,
      ...(basis.lastDose === undefined ? {} : { lastDose: plainDate(basis.lastDose) }),
      ...(basis.anniversary === undefined ? {} : { anniversary: plainDate(basis.anniversary) }),
      ...(basis.recallLeadDays === undefined ? {} : { recallLeadDays: basis.recallLeadDays }),
      ...(basis.breakUntil === undefined ? {} : { breakUntil: plainDate(basis.breakUntil) }),
      breakLatest: plainDate(basis.breakLatest),
      ...(basis.booked === undefined ? {} : { booked: plainDate(basis.booked) }),
      steroids: [...basis.steroids],
    },
    reviewed: factsOf(record, 'course-review').some(({ on }) => on <= today),
    cautions: [...protocol.sheet.cautions],
  };
}
