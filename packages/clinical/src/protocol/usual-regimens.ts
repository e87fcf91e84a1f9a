/**
 * The regimens a starter sheet begins with. The yearly infusion comes first: it is what is meant where nothing is
 * prescribed. Each says where it comes from; a unit strikes out what it does not give.
 */
import type { DecidedNumber } from './sourced-number.ts';
import type { Regimen } from './regimen.ts';

const ZOLEDRONIC = 'zoledronic acid 5 mg product text (EU/UK)';
const DENOSUMAB = 'denosumab 60 mg product text';
const PAMIDRONATE = 'practice; the product text covers other uses';

/** What a regimen is unless it says otherwise. */
const usual = {
  given: 'infusion',
  recall: 'next dose',
  countedApart: false,
  leavesOut: [],
  belowClearanceFloor: 'not given',
  numbers: {},
  dayQuestions: [],
  cautions: [],
} as const satisfies Partial<Regimen>;

/** Product text 6.2 and US label 2 (secondary). */
const OWN_LINE =
  "Its own vented line: never through or with calcium-containing fluid (Ringer's, Hartmann's); flush with 0.9 % saline.";
/** Who checks an injection differs between hospitals (from memory): another person, until a unit decides otherwise. */
const injected = { given: 'injection', secondCheck: 'another person' } as const;
const yearlyInfusion = { ...usual, medicine: 'zoledronic acid 5 mg', plannedDoses: 3, cautions: [OWN_LINE] } as const;

const floorOf30 = (source: string, status: DecidedNumber['status']): Regimen['numbers'] => ({
  clearanceFloor: { value: '30', source, status },
  nearLimitCeiling: { value: '35', source: 'a band of 5 mL/min above the limit', status: 'common practice, no source' },
});
/** No floor that refuses: below it low calcium threatens, so a prescriber decides and calcium is looked at afterwards. */
const askedBelow30 = floorOf30(
  `${DENOSUMAB}: severe and fatal low calcium below 30 mL/min and on dialysis (US boxed warning)`,
  'read',
);
/** Six in a row and then a specialist is said of zoledronic acid; of these the review after the planned doses says it. */
/** When the next dose is asked for, and when it is overdue, where the interval is short. Common practice, no source. */
const calledFor = (leadDays: string, overdueDays: string): Regimen['numbers'] => {
  const usually = { source: 'the interval is short', status: 'common practice, no source' } as const;
  return {
    recallLeadDays: { value: leadDays, ...usually },
    overdueAfterDays: { value: overdueDays, ...usually },
  };
};
const reviewAfter = (doses: string, source: string, status: DecidedNumber['status']): Regimen['numbers'] => ({
  maxConsecutiveDoses: { value: doses, source, status },
});

export const usualRegimens: readonly Regimen[] = [
  {
    ...yearlyInfusion,
    id: 'zoledronic-acid-yearly',
    title: 'zoledronic acid 5 mg once a year',
    intervalMonths: 12,
    source: `${ZOLEDRONIC} 4.2: once a year (read); review after three doses: UK practice (from memory)`,
    status: 'read',
  },
  {
    ...yearlyInfusion,
    id: 'zoledronic-acid-18-monthly',
    title: 'zoledronic acid 5 mg every 18 months',
    intervalMonths: 18,
    source:
      'New Zealand practice: initial three doses at 18 or 24 months (read); four doses 18-monthly: Reid 2018, NEJM 379:2407 (read); longer than the label',
    status: 'read',
  },
  {
    ...yearlyInfusion,
    id: 'zoledronic-acid-24-monthly',
    title: 'zoledronic acid 5 mg every 24 months',
    intervalMonths: 24,
    source: 'New Zealand practice: initial three doses at 18 or 24 months (read); longer than the label',
    status: 'read',
  },
  {
    ...usual,
    id: 'zoledronic-acid-pagets-disease',
    title: "zoledronic acid 5 mg once, for Paget's disease",
    medicine: 'zoledronic acid 5 mg',
    intervalMonths: 12,
    plannedDoses: 1,
    recall: 'none',
    countedApart: true,
    cautions: [
      OWN_LINE,
      'Calcium about 1000 mg a day (500 mg twice daily) and vitamin D for the first 10 days (EU product text).',
      'Again only on relapse: a prescriber decides.',
    ],
    source: `${ZOLEDRONIC} 4.2 and US label 2.6: a single infusion, again only on relapse (read); not within a year (from memory)`,
    status: 'read',
  },
  {
    ...usual,
    id: 'denosumab-60-six-monthly',
    title: 'denosumab 60 mg every six months',
    medicine: 'denosumab 60 mg',
    ...injected,
    intervalMonths: 6,
    plannedDoses: 10,
    leavesOut: ['hip-repair'],
    belowClearanceFloor: 'a prescriber decides',
    numbers: {
      ...askedBelow30,
      ...reviewAfter('10', 'review from five years on', 'read'),
      overdueAfterDays: {
        value: '28',
        source: 'on time is within four weeks: Ann Intern Med 2020;173:516',
        status: 'read',
      },
    },
    cautions: [
      'Never stopped without a replacement and its date.',
      'Clearance below 30 mL/min or dialysis: severe and fatal hypocalcaemia is reported; calcium before, and again within two weeks after.',
    ],
    source: `${DENOSUMAB}: every six months, calcium before each dose, no dose limit by clearance (read)`,
    status: 'read',
  },
  {
    ...usual,
    id: 'denosumab-120',
    title: 'denosumab 120 mg, oncology decides',
    medicine: 'denosumab 120 mg',
    ...injected,
    intervalMonths: 1,
    plannedDoses: 24,
    recall: 'none',
    leavesOut: ['hip-repair'],
    belowClearanceFloor: 'a prescriber decides',
    numbers: { ...askedBelow30, ...reviewAfter('24', 'oncology decides', 'common practice, no source') },
    cautions: ['Oncology decides the interval and the end. When it ends, the clock is that of denosumab 60 mg.'],
    source: 'denosumab 120 mg product text: every four weeks, here at the earliest after a month; oncology decides',
    status: 'from memory',
  },
  {
    ...usual,
    id: 'ibandronate-three-monthly',
    title: 'ibandronate 3 mg every three months',
    medicine: 'ibandronate 3 mg',
    ...injected,
    intervalMonths: 3,
    plannedDoses: 12,
    leavesOut: ['hip-repair'],
    numbers: {
      ...floorOf30('ibandronate 3 mg product text: not below 30 mL/min', 'read'),
      ...reviewAfter('12', 'review after three years of it', 'common practice, no source'),
      ...calledFor('35', '28'),
    },
    cautions: ['Into a vein over 15 to 30 seconds, never into an artery or beside the vein.'],
    source: 'ibandronate 3 mg product text: every three months, never more often (read)',
    status: 'read',
  },
  {
    ...usual,
    id: 'pamidronate-three-monthly',
    title: 'pamidronate 30 mg every three months',
    medicine: 'pamidronate',
    intervalMonths: 3,
    plannedDoses: 12,
    leavesOut: ['hip-repair'],
    numbers: {
      ...floorOf30(`${PAMIDRONATE}: avoid below 30 mL/min`, 'from memory'),
      ...reviewAfter('12', 'review after three years of it', 'common practice, no source'),
      ...calledFor('35', '28'),
    },
    cautions: ['Not licensed for osteoporosis. Over hours: at most 60 mg an hour and 90 mg in 250 mL.'],
    source: `${PAMIDRONATE}: 30 mg every three months`,
    status: 'from memory',
  },
  {
    ...usual,
    id: 'romosozumab-monthly',
    title: 'romosozumab 210 mg monthly, twelve doses',
    medicine: 'romosozumab 210 mg',
    ...injected,
    intervalMonths: 1,
    plannedDoses: 12,
    followOn: {
      dueMonths: 1,
      reachMonths: 2,
      listMonths: 3,
      firstInLineMonths: 1,
      source: 'romosozumab product text: an antiresorptive follows (read); at month 12 to 13 (from memory)',
      status: 'from memory',
    },
    leavesOut: ['hip-repair'],
    belowClearanceFloor: 'a prescriber decides',
    numbers: {
      ...floorOf30(
        'romosozumab product text: low calcium threatens in severe renal impairment (15 to 29 mL/min) and on dialysis',
        'read',
      ),
      calciumAfterDoseDays: {
        value: '14',
        source: 'romosozumab product text: calcium is watched, no days are named; as after denosumab',
        status: 'common practice, no source',
      },
      calciumAfterDoseWeeks: {
        value: '0',
        source: 'romosozumab product text: calcium is watched, no weeks are named',
        status: 'common practice, no source',
      },
      ...reviewAfter('12', 'romosozumab product text: twelve doses', 'read'),
      ...calledFor('14', '14'),
    },
    dayQuestions: [
      {
        id: 'heart-or-stroke',
        asks: 'Ever had a heart attack or a stroke?',
        holdsOn: 'yes',
        then: 'not ready',
        says: 'heart attack or stroke: not romosozumab',
        staysUntilCleared: true,
      },
    ],
    cautions: [
      'Contraindicated after a heart attack or a stroke. Two injections of 105 mg make one dose.',
      'Clearance below 30 mL/min or dialysis: low calcium threatens; calcium before, and again within two weeks after.',
    ],
    source: 'romosozumab product text: monthly, twelve doses; late: when feasible, the next not within a month (read)',
    status: 'read',
  },
  {
    ...usual,
    id: 'teriparatide-daily',
    title: 'teriparatide 20 micrograms daily for 24 months',
    medicine: 'teriparatide',
    given: 'daily at home',
    intervalMonths: 24,
    plannedDoses: 1,
    lastsMonths: 24,
    recall: 'none',
    followOn: {
      dueMonths: 0,
      reachMonths: 1,
      listMonths: 3,
      firstInLineMonths: 1,
      source: 'an antiresorptive promptly, within about a month: AACE and NOGG',
      status: 'from memory',
    },
    leavesOut: ['hip-repair'],
    numbers: floorOf30(
      'teriparatide product text: not in severe renal impairment (read); that this is below 30 mL/min: from memory',
      'from memory',
    ),
    cautions: [
      'Once in a lifetime (EU/UK). Not with raised calcium, unexplained raised alkaline phosphatase, earlier radiotherapy of bone or bone cancer.',
      'A calcium sample at least 16 hours after a dose.',
    ],
    source: 'teriparatide product text (EU/UK): daily, 24 months once in a lifetime (read)',
    status: 'read',
  },
];
