/** A unit as its settings and its protocol stand. */
import { isPlainDate, plainDate } from '@twelvemonth/clinical';
import type { UnitView } from '@twelvemonth/exchange';
import type { UnitNow } from '../register/units.ts';

export const unitViewOf = ({ unit, protocol }: UnitNow): UnitView => ({
  unit: unit.id,
  name: unit.name,
  zone: unit.zone,
  chairs: unit.chairs,
  opensAt: unit.opensAt,
  closesAt: unit.closesAt,
  sessionWeekdays: [...unit.calendar.sessionWeekdays],
  bloodWeekdays: [...unit.calendar.bloodWeekdays],
  closedDays: unit.calendar.closedDays.map(plainDate),
  minutesBetweenArrivals: unit.minutesBetweenArrivals,
  telephone: unit.telephone,
  ...(unit.emergencyNumber === undefined ? {} : { emergencyNumber: unit.emergencyNumber }),
  demo: unit.demo,
  ...(unit.planning === undefined ? {} : { planning: unit.planning }),
  ...(unit.stock === undefined ? {} : { stock: unit.stock }),
  ...(unit.reminders === undefined ? {} : { reminders: unit.reminders }),
  ...(unit.adviceLine === undefined
    ? {}
    : { adviceLine: { ...unit.adviceLine, weekdays: [...unit.adviceLine.weekdays] } }),
  ...(unit.letters === undefined ? {} : { letters: unit.letters }),
  ...(protocol === undefined
    ? {}
    : {
        protocolVersion: protocol.version,
        ...(protocol.added.length === 0 ? {} : { protocolUnsigned: protocol.added.length }),
        ...(isPlainDate(protocol.sheet.reviewBy) ? { protocolReviewBy: protocol.sheet.reviewBy } : {}),
      }),
});
