/** Prescribers' exceptions that last on a day, as a list shows them: what, who, until when, why. */
import { type Day, exceptionsOn, lastDayOf, shortDate } from '@twelvemonth/clinical';
import type { Person } from '../register/people.ts';

export const exceptionsInWords = ({ record, unit }: Person, on: Day, nameOf: (staff: string) => string): string[] =>
  exceptionsOn(record, on, unit?.protocol).map(
    (fact) =>
      `prescriber's exception for ${fact.body.requirement}: ${nameOf(fact.author.staff)}, until ${shortDate(lastDayOf(fact, unit?.protocol))}: ${fact.body.reason}`,
  );
