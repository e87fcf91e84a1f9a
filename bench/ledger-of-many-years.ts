/** An invented person's notes of 120 entries: eight years of bloods, weights, loading, doses, calls. */
import type { Entry, KindName } from '../packages/clinical/src/index.ts';

type Line = readonly [on: string, kind: KindName, body: unknown, id?: string];

function yearOf(year: number): Line[] {
  const id = (name: string): string => `${name}-${year}`;
  const result = (on: string, analyte: string, value: string, unit: string): Line => [
    on,
    'result',
    { analyte, quantity: { comparator: '', value, unit } },
    id(`${analyte.replaceAll(' ', '-')}-${on}`),
  ];
  const signed = (on: string, analytes: readonly string[]): Line => [
    on,
    'results-signed',
    { results: analytes.map((analyte) => id(`${analyte.replaceAll(' ', '-')}-${on}`)) },
  ];
  const day = (monthAndDay: string): string => `${year}-${monthAndDay}`;
  return [
    [day('02-10'), 'call', { route: 'telephone', about: 'recall', reached: true, note: 'bloods arranged' }],
    [day('02-20'), 'weight', { quantity: { comparator: '', value: '56.2', unit: 'kg' }, method: 'measured' }],
    result(day('02-20'), 'creatinine', String(74 + (year % 6)), 'umol/L'),
    result(day('02-20'), 'adjusted calcium', '2.31', 'mmol/L'),
    result(day('02-20'), 'vitamin D', '71', 'nmol/L'),
    signed(day('02-20'), ['creatinine', 'adjusted calcium', 'vitamin D']),
    [day('02-25'), 'dental', { answer: 'nothing pending' }],
    [day('03-14'), 'dose', { medicine: 'zoledronic acid 5 mg', setting: 'this service' }],
    [day('03-17'), 'call', { route: 'telephone', about: 'aftercare', reached: true, note: 'well' }],
    [day('06-02'), 'illness', { what: 'chest infection', sort: 'illness' }],
    [day('06-12'), 'well-since', {}],
    [day('10-09'), 'weight', { quantity: { comparator: '', value: '55.8', unit: 'kg' }, method: 'measured' }],
    result(day('10-09'), 'creatinine', String(76 + (year % 5)), 'umol/L'),
    result(day('10-09'), 'adjusted calcium', '2.29', 'mmol/L'),
    signed(day('10-09'), ['creatinine', 'adjusted calcium']),
  ];
}

export function ledgerOfManyYears(): Entry[] {
  const lines: Line[] = [
    [
      '2018-01-03',
      'identity',
      { family: 'Arkwright-Poe', given: 'Wilhelmina', born: '1941-06-02', sex: 'female', number: '999 204 7713' },
    ],
    ['2018-01-03', 'allergy', { answer: 'none known' }],
    ['2018-01-03', 'pregnancy', { answer: 'does not apply', reason: 'told us' }],
    ['2018-01-03', 'height', { quantity: { comparator: '', value: '158', unit: 'cm' }, which: 'peak adult' }],
    ['2018-01-04', 'consent', { decision: 'given', how: 'spoken' }],
    ...[2019, 2020, 2021, 2022, 2023, 2024, 2025].flatMap(yearOf),
    ...yearOf(2026).slice(0, 7),
    ['2026-05-05', 'course-review', { outcome: 'new course', plannedDoses: 3, reason: 'restart' }],
    [
      '2026-05-06',
      'prescription',
      { regimen: 'zoledronic-acid-yearly', validFrom: '2026-05-06', validUntil: '2027-05-05' },
    ],
    ['2026-10-02', 'weight', { quantity: { comparator: '', value: '56.2', unit: 'kg' }, method: 'measured' }],
  ];
  return lines.map(([on, kind, body, id], index) => ({
    subject: 'patient/bench',
    kind,
    shape: 1,
    body,
    effectiveAt: on,
    zone: 'Europe/London',
    id: id ?? `e${index + 1}`,
    act: `a${index + 1}`,
    seq: index + 1,
    recordedAt: `${on}T09:00:00.000Z`,
    author: { staff: 'rn-1', role: 'nurse' },
    previousHash: '',
    hash: '',
  }));
}
