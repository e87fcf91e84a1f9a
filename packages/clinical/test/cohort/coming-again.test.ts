/** What became of those who began here, from their notes. Who counts and when: decided for this product (common practice, no source). */
import { expect, test } from 'vitest';
import { type PlainDate, begunHere, day, stayed, stepAfter, teaching, yearBegun } from '@twelvemonth/clinical';
import { type Line, at, personOf } from './../person.ts';

const today = day('2027-06-01');
const dose = (on: string, setting: 'this service' | 'elsewhere' = 'this service'): Line =>
  at(on, 'dose', { medicine: 'zoledronic acid 5 mg', setting });
const referred = at('2025-01-02', 'referral', { from: 'x', reason: 'y', unit: 'u', tier: 'routine' });
const ordered = at('2025-01-03', 'prescription', {
  regimen: 'zoledronic-acid-yearly',
  validFrom: '2025-01-03' as PlainDate,
  validUntil: '2027-12-31' as PlainDate,
});
const person = (...lines: readonly Line[]) =>
  personOf([referred, at('2025-01-02', 'triage', { outcome: 'accepted' }), ordered, ...lines]);
const step = (...lines: readonly Line[]) => {
  const found = stepAfter(person(dose('2025-03-04'), ...lines), 1, today);
  return found === undefined ? undefined : [found.end, found.days];
};
const stay = (...lines: readonly Line[]) => {
  const found = stayed(person(dose('2025-03-04'), ...lines), teaching, today);
  return found === undefined ? undefined : [found.end, found.days];
};
const no = (on: string) => at(on, 'refusal', { to: 'this dose', words: 'three days in bed' });

test('only who had the first dose here begins here, in the year of that dose', () => {
  expect(begunHere(person(dose('2024-03-04', 'elsewhere'), dose('2025-03-04')), today)).toBeUndefined();
  const doses = begunHere(person(dose('2025-03-04')), today);
  expect(doses === undefined ? '' : yearBegun(doses)).toBe('2025');
});
test.each([
  ['came, however late', [dose('2026-09-04')], ['came', 549]],
  [
    'said no and came all the same',
    [no('2026-02-01'), at('2026-03-01', 'reopened', { reason: 'rang us' }), dose('2026-04-04')],
    ['came', 396],
  ],
  ['said no', [no('2025-09-04')], ['fell out', 184]],
  [
    'cannot be reached',
    [at('2026-05-04', 'cannot-be-reached', { tried: 'three calls', lookAgainOn: '2026-09-01' as PlainDate })],
    ['fell out', 426],
  ],
  ['closed', [at('2026-05-04', 'closed', { reason: 'moved' })], ['ended by decision', 426]],
  ['died', [at('2025-05-04', 'died', { source: 'ward' })], ['died', 61]],
  [
    'handed over: seen until then',
    [at('2025-05-04', 'transfer-out', { to: 'x', chaseOn: '2025-06-01' as PlainDate })],
    ['still under way', 61],
  ],
  ['nothing yet: seen until today', [], ['still under way', 819]],
] as const)('the step to the second dose: %s', (_, lines, expected) => expect(step(...lines)).toEqual(expected));
test('who never had the second dose is not on the way to the third', () => {
  expect(stepAfter(person(dose('2025-03-04')), 2, today)).toBeUndefined();
});

// A year and the sheet's 42 days after the dose: day 407 is in time, day 408 is late.
test.each([
  ['came in time', [dose('2026-04-15'), dose('2027-04-20')], ['still under way', 819]],
  ['came a day late', [dose('2026-04-17')], ['off treatment', 408]],
  ['never came', [], ['off treatment', 408]],
  ['said no before it was late', [no('2025-09-04')], ['off treatment', 184]],
  ['died before it was late', [at('2025-05-04', 'died', { source: 'ward' })], ['died', 61]],
  [
    'died after it was late: was off it by then',
    [at('2026-12-04', 'died', { source: 'ward' })],
    ['off treatment', 408],
  ],
  ['ended by decision: the looking ends', [at('2025-05-04', 'closed', { reason: 'moved' })], ['still under way', 61]],
] as const)('staying on treatment: %s', (_, lines, expected) => expect(stay(...lines)).toEqual(expected));
