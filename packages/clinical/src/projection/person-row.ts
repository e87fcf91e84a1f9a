/** A person as lists and searches know them. */
import { civilFromDay, monthNames, monthsInFull } from '../calendar/day.ts';
import { parsePartialDate } from '../calendar/partial-date.ts';
import { asWritten } from '../record/newest-written.ts';
import type { SubjectRecord } from '../record/patient-record.ts';
import { unitOfPatient } from '../standing/standing.ts';
import { digitsOf, searchable } from './fold-text.ts';
import type { Row } from './row.ts';

export function personRow(record: SubjectRecord, formerFamilies: readonly string[]): Row | undefined {
  const identities = asWritten(record, 'identity');
  const identity = identities[identities.length - 1]?.body;
  if (identity === undefined) return undefined;
  const former = [
    ...new Set([...(identity.formerNames ?? []), ...formerFamilies.filter((family) => family !== identity.family)]),
  ];
  const { family, given, number, born } = identity;
  const search = [
    `${given} ${family}`,
    `${family} ${given}`,
    // Both halves of a double name are looked for alone and together.
    family.replace(/-/g, ' '),
    family.replace(/[-\s]/g, ''),
    ...former,
    number,
    digitsOf(number),
    ...birthForms(born),
  ];
  return {
    table: 'person',
    key: '',
    columns: {
      family,
      given,
      former: former.join(', '),
      number,
      number_digits: digitsOf(number),
      born,
      sex: identity.sex ?? null,
      unit: unitOfPatient(record),
      search: searchable(search.join(' | ')),
    },
  };
}

const two = (n: number): string => String(n).padStart(2, '0');

/** The ways in which a birth date is typed: 1941-06-02, 02/06/1941, 2.6.1941, 2 jun 1941, 02061941. */
function birthForms(born: string): readonly string[] {
  const parsed = parsePartialDate(born);
  if (parsed === undefined) return [];
  if (parsed.precision !== 'day') return [born];
  const { year, month, dayOfMonth } = civilFromDay(parsed.day);
  const [d, m] = [dayOfMonth, month];
  return [
    born,
    `${two(d)}/${two(m)}/${year}`,
    `${d}/${m}/${year}`,
    `${two(d)}.${two(m)}.${year}`,
    `${d}.${m}.${year}`,
    `${two(d)}-${two(m)}-${year}`,
    `${d} ${monthNames[m - 1]?.toLowerCase() ?? ''} ${year}`,
    `${d} ${monthsInFull[m - 1]?.toLowerCase() ?? ''} ${year}`,
    `${two(d)}${two(m)}${year}`,
  ];
}
