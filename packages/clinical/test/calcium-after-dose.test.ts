/**
 * Calcium after denosumab where the kidneys were low or not known on the day: a sample within two weeks after the dose (denosumab
 * 60 mg product text; US 10 to 14 days; the clinical fact sheet, section 8, read).
 */
import { describe, expect, test } from 'vitest';
import {
  type Fact,
  calciumAfterDose,
  day,
  plainDate,
  standingOf,
  starterSheet,
  starterUs,
  teaching,
} from '@twelvemonth/clinical';
import { withNumbers } from './judging.ts';
import { type Line, at, bloods, born, personOf, weighed } from './person.ts';

// Woman of 85, 50 kg: (140 - 85) x 50 x 1.04 / umol/L: 95 gives 30.1, 96 gives 29.8 mL/min.
const before = (umolPerL: string, on = '2026-10-01'): readonly Line[] => [
  born('1941-06-02'),
  weighed(on, '50'),
  ...bloods(on, { creatinine: `${umolPerL} umol/L`, 'adjusted calcium': '2.34 mmol/L' }),
];
const given = (
  setting: Fact<'dose'>['body']['setting'] = 'this service',
  medicine: Fact<'dose'>['body']['medicine'] = 'denosumab 60 mg',
): Line => at('2026-10-12', 'dose', { medicine, setting });
const calcium = (on: string, signedOn: string | null = on) =>
  bloods(on, { 'adjusted calcium': '2.20 mmol/L' }, signedOn);
const due = (lines: readonly Line[], on = '2026-10-20') => {
  const found = calciumAfterDose(personOf(lines), teaching, day(on));
  return found === undefined ? undefined : plainDate(found.by);
};

describe('calcium after denosumab and romosozumab', () => {
  test('below the number of the regimen: within 14 days after the dose', () => {
    expect(due([...before('96'), given()])).toBe('2026-10-26');
  });
  test('at the number or above, and known: none is asked for', () => {
    expect(due([...before('95'), given()])).toBeUndefined();
  });
  test.each<[string, readonly Line[]]>([
    ['never measured', [born('1941-06-02')]],
    ['out of date on the day of the dose', before('70', '2026-08-01')],
    ['no weight', [born('1941-06-02'), ...bloods('2026-10-01', { creatinine: '70 umol/L' })]],
    [
      'not signed',
      [born('1941-06-02'), weighed('2026-10-01', '50'), ...bloods('2026-10-01', { creatinine: '70 umol/L' }, null)],
    ],
  ])('not known (%s): the same', (_, lines) => expect(due([...lines, given()])).toBe('2026-10-26'));
  test('a prescriber who let it be given has not looked at the calcium', () => {
    const [, , creatinine] = before('96');
    const lines = [
      ...before('96').slice(0, 2),
      { ...creatinine, id: 'k' } as Line,
      at('2026-10-01', 'results-signed', { results: ['k'] }),
      at('2026-10-02', 'prescriber-decision', { question: 'low clearance accepted', about: 'k', reason: 'agreed' }),
      given(),
    ];
    expect(due(lines)).toBe('2026-10-26');
  });
  test('a signed sample from after the dose ends it; one of before, of the day, or not signed does not', () => {
    const lines = [...before('96'), given()];
    expect(due([...lines, ...calcium('2026-10-13')])).toBeUndefined();
    expect(due([...lines, ...calcium('2026-10-12')])).toBe('2026-10-26');
    expect(due([...lines, ...calcium('2026-10-13', null)])).toBe('2026-10-26');
    expect(due([...lines, ...calcium('2026-10-21')])).toBe('2026-10-26');
  });
  test('past its day it is still asked for, and says so', () => {
    const lines = [...before('96'), given()];
    const says = (on: string) => calciumAfterDose(personOf(lines), teaching, day(on))?.says;
    expect(says('2026-10-26')).toBe('calcium after denosumab 60 mg of 12 Oct 2026: sample by 26 Oct 2026');
    expect(says('2026-10-27')).toBe('calcium after denosumab 60 mg of 12 Oct 2026: its sample was due by 26 Oct 2026');
  });
  test('romosozumab too, by the days of its own regimen', () => {
    expect(due([...before('96'), given('this service', 'romosozumab 210 mg')])).toBe('2026-10-26');
    expect(due([...before('95'), given('this service', 'romosozumab 210 mg')])).toBeUndefined();
  });
  test('the 120 mg too; not a dose given elsewhere, nor a medicine that is refused below its floor', () => {
    expect(due([...before('96'), given('this service', 'denosumab 120 mg')])).toBe('2026-10-26');
    expect(due([...before('96'), given('elsewhere')])).toBeUndefined();
    expect(due([...before('96'), given('this service', 'zoledronic acid 5 mg')])).toBeUndefined();
  });
  test('nobody has to look any more after a death', () => {
    expect(due([...before('96'), given(), at('2026-10-18', 'died', { source: 'family doctor' })])).toBeUndefined();
  });
});

test('it stands where the person stands, with its day', () => {
  const lines = [
    at('2026-09-01', 'referral', { from: 'a ward', reason: 'T -3.4', tier: 'routine', unit: 'thornbeck' }),
    at('2026-09-02', 'triage', { outcome: 'accepted' }),
    at('2026-09-02', 'prescription', {
      regimen: 'denosumab-60-six-monthly',
      validFrom: '2026-09-01' as never,
      validUntil: '2027-08-31' as never,
    }),
    ...before('96'),
    given(),
  ];
  const standing = standingOf(personOf(lines), teaching, day('2026-10-20'));
  expect(standing.says).toContain('calcium after denosumab 60 mg of 12 Oct 2026: sample by 26 Oct 2026');
  expect(standing.on).toBe(day('2026-10-26'));
});

// US product text of denosumab, boxed warning: below 30 mL/min and on dialysis weekly in the first month (clinical fact sheet, section 8, read).
describe('weekly in the first month, where the protocol says so', () => {
  const weekly = withNumbers({ calciumAfterDoseWeeks: '4' });
  const says = (on: string, ...more: readonly Line[]) =>
    calciumAfterDose(personOf([...before('96'), given(), ...more]), weekly, day(on))?.says;
  test('the US starter says four weeks; the others none', () => {
    expect(starterUs.numbers.calciumAfterDoseWeeks).toMatchObject({ value: '4', status: 'read' });
    expect(starterSheet.numbers.calciumAfterDoseWeeks).toMatchObject({ value: null, suggestion: '0' });
  });
  test('on the day of the dose and in its first week: by the seventh day', () => {
    const first = 'calcium after denosumab 60 mg of 12 Oct 2026, week 1 of 4: sample';
    expect(says('2026-10-12')).toBe(`${first} from 13 Oct 2026 to 19 Oct 2026`);
    expect(says('2026-10-19')).toBe(`${first} by 19 Oct 2026`);
  });
  test('a sample of the week turns to the next', () => {
    expect(says('2026-10-15', ...calcium('2026-10-14'))).toBe(
      'calcium after denosumab 60 mg of 12 Oct 2026, week 2 of 4: sample from 20 Oct 2026 to 26 Oct 2026',
    );
  });
  test('a week that passed without one is said beside the week of today: blood cannot be drawn in the past', () => {
    expect(says('2026-10-28')).toBe(
      'calcium after denosumab 60 mg of 12 Oct 2026, week 3 of 4: sample by 2 Nov 2026; none in week 1 and 2',
    );
    expect(says('2026-10-28', ...calcium('2026-10-19'))).toContain('sample by 2 Nov 2026; none in week 2');
    expect(says('2026-10-28', ...calcium('2026-10-19'), ...calcium('2026-10-28'))).toContain(
      'week 4 of 4: sample from 3 Nov 2026 to 9 Nov 2026; none in week 2',
    );
    expect(says('2026-10-28', ...calcium('2026-10-13', null), ...calcium('2026-10-20'))).toContain('none in week 1');
  });
  test('the last stays until it is had', () => {
    expect(says('2026-11-20')).toContain('week 4 of 4: its sample was due by 9 Nov 2026; none in week 1, 2 and 3');
    expect(says('2026-11-09', ...calcium('2026-11-03'))).toBeUndefined();
    expect(says('2026-11-20', ...calcium('2026-11-19'))).toBeUndefined();
  });
  test('where the kidneys were known to be enough nothing is asked for', () => {
    expect(calciumAfterDose(personOf([...before('95'), given()]), weekly, day('2026-10-20'))).toBeUndefined();
  });
});
