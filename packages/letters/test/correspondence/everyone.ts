/** Every letter of an invented person, in each of its forms. */
import { day, putOffReasons } from '@twelvemonth/clinical';
import type { LetterFacts, LetterMatter } from '@twelvemonth/letters';

export const someone: LetterFacts = {
  language: 'en-GB',
  today: day('2026-11-25'),
  demo: true,
  treatment: { medicine: 'zoledronic acid 5 mg', by: 'drip' },
  unit: { name: 'Thornbeck Day Unit', telephone: '01632 960100', postalAddress: '4 Weir Lane, Thornbeck' },
  person: {
    name: 'Wilhelmina Arkwright-Poe',
    born: '2 June 1941',
    number: '999 204 7713',
    address: '1 Heron Street, Thornbeck',
  },
  reader: { name: 'Dr A. Penrose, Thornbeck Surgery', address: undefined },
  signedBy: { name: 'Imre Sandoval', role: 'nurse in charge' },
  ownWords: undefined,
  matter: { name: 'closing' },
};

const between = { from: day('2026-11-26'), until: day('2026-11-30') };
const due = day('2027-11-25');
const answerBy = day('2026-12-09');
const dose = { on: day('2025-11-25'), medicine: 'zoledronic acid 5 mg', batch: 'PA-2391' };

export const matters: readonly LetterMatter[] = [
  { name: 'invitation', on: day('2026-12-03'), arriveAt: '13:40', bloods: between },
  { name: 'invitation', on: day('2026-12-03'), arriveAt: '09:05', bloods: undefined },
  { name: 'bloods needed', between, tests: ['creatinine', 'adjusted calcium'] },
  ...putOffReasons.map((reason): LetterMatter => ({
    name: 'put off',
    on: day('2026-11-24'),
    reason,
    nextStep: undefined,
    worryOn: day('2026-12-08'),
  })),
  {
    name: 'put off',
    on: day('2026-11-24'),
    reason: 'bloods',
    nextStep: 'Have a blood test at your surgery.',
    worryOn: undefined,
  },
  { name: 'no answer', due, answerBy },
  { name: 'no answer', due: undefined, answerBy },
  { name: 'no answer, to the family doctor', due, lastDose: dose, tried: 'three calls, a letter', answerBy },
  { name: 'review outcome', on: day('2026-11-24'), decided: { outcome: 'carry on', toDoses: 6 } },
  { name: 'review outcome', on: day('2026-11-24'), decided: { outcome: 'planned break', reviewOn: day('2029-11-25') } },
  {
    name: 'review outcome',
    on: day('2026-11-24'),
    decided: { outcome: 'other treatment', to: 'teriparatide 20 micrograms a day', dueOn: day('2026-12-20') },
  },
  { name: 'review outcome', on: day('2026-11-24'), decided: { outcome: 'new course', plannedDoses: 3 } },
  { name: 'review outcome', on: day('2026-11-24'), decided: { outcome: 'stop' } },
  {
    name: 'transfer',
    treatment: 'zoledronic acid 5 mg once a year',
    doses: [dose],
    due,
    given: 1,
    planned: 3,
    allergies: 'no known allergies',
    reactions: ['reaction: fever and aching, 2 days, mild, 27 Nov 2025'],
    results: [['creatinine', '79 umol/L, 9 Oct 2026']],
    answerBy,
  },
  { name: 'closing' },
  {
    name: 'request to the family doctor',
    wanted: ['bloods', 'medicines', 'vitamin D course', 'weight'],
    doseAhead: true,
    bloods: between,
    due,
    answerBy,
  },
  {
    name: 'request to the family doctor',
    wanted: ['bloods'],
    doseAhead: false,
    bloods: undefined,
    due: undefined,
    answerBy,
  },
  { name: 'request to the dentist', due, dosesGiven: 0, answerBy },
  { name: 'request to the dentist', due, dosesGiven: 1, answerBy },
  { name: 'request to the dentist', due: undefined, dosesGiven: 2, answerBy },
];
