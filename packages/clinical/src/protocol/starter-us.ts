/**
 * The starter by US guidance, for units whose laboratory reports in mg/dL and ng/mL: only what it says otherwise than the
 * EU-like starter, which has the rest. A limit kept in one unit says what it is in the other. Citations and how each was
 * seen: the status beside it.
 */
import { inAmerican } from '../kinds-texts/in-american.ts';
import type { NumberKey } from './number-keys.ts';
import type { ProtocolSheet } from './protocol.ts';
import type { Regimen } from './regimen.ts';
import type { SourcedNumber } from './sourced-number.ts';
import { SILENT, open, said, starterSheet } from './starter.ts';
import { usualCarryOnUs } from './usual-carry-on.ts';

const US_TEXT = 'zoledronic acid 5 mg product text (US)';
const VITAMIN_D =
  'American Geriatrics Society 2014: 30 ng/mL or more (read); National Academy of Medicine 2011: 20 ng/mL (from memory); Endocrine Society 2024 names no target (from memory)';
const DEFICIENT =
  'US guidance calls a level below 20 ng/mL deficient (from memory); lower limits are called severe elsewhere: the stricter is suggested';
const LOADING = 'Endocrine Society 2011: 50,000 IU once a week for eight weeks';

const differs: Partial<Record<NumberKey, SourcedNumber>> = {
  clearanceFloor: said('35', `${US_TEXT} 4: contraindicated below 35 mL/min, and in acute renal impairment`),
  adultFromYears: said('18', `${US_TEXT} 8.4: not indicated for use in children`, 'from memory'),
  creatinineRise: open(
    '26.52',
    `${US_TEXT} 4: acute renal impairment, without a number; KDIGO 2012: 0.3 mg/dL or more, that is 26.52 umol/L`,
  ),
  creatinineRiseFactor: open('1.5', `${US_TEXT} 4: acute renal impairment, without a number; KDIGO 2012: 1.5 times`),
  bloodsValidDays: open('42', `${US_TEXT}: before each dose, without a number; four to six weeks suggested`, 'read'),
  calciumLow: open('2.20', `${SILENT}; the laboratory prints its own; 2.20 mmol/L is 8.82 mg/dL`, 'read'),
  calciumHigh: open('2.60', `${SILENT}; the laboratory prints its own; 2.60 mmol/L is 10.42 mg/dL`, 'read'),
  calciumAdjustSlope: said(
    '0.02',
    'zoledronic acid 4 mg product text (US): 0.8 mg/dL for each g/dL of albumin, that is 0.02 mmol/L per g/L',
  ),
  calciumAdjustAlbumin: said('40', 'zoledronic acid 4 mg product text (US): 4.0 g/dL, that is 40 g/L'),
  calciumAfterLoadingDays: open('7', SILENT, 'common practice, no source'),
  calciumAfterDoseDays: said(
    '14',
    'denosumab 60 mg product text (US): 10 to 14 days after the dose in those predisposed; below 30 mL/min and on dialysis weekly in the first month',
  ),
  calciumAfterDoseWeeks: said(
    '4',
    'denosumab 60 mg product text (US), boxed warning: below 30 mL/min and on dialysis calcium weekly in the first month',
  ),
  vitaminDFloor: open('75', `${VITAMIN_D}; 30 ng/mL is 74.88 nmol/L`),
  vitaminDFloorNgPerMl: open('30', VITAMIN_D),
  vitaminDSevere: open('50', DEFICIENT),
  vitaminDSevereNgPerMl: open('20', DEFICIENT),
  loadingDoses: open('8', LOADING),
  loadingEveryDays: open('7', LOADING),
  loadingUnitsPerDose: open('50000', LOADING),
  hipRepairDays: open(
    '14',
    'no days in the US text (from memory); Eriksen 2009, JBMR 24:1308: two weeks or more after repair (read)',
  ),
  pregnancyAnswerDays: open(
    '14',
    `${US_TEXT}: a warning, not a contraindication (from memory); the rule here keeps the stricter reading; how long an answer counts is not said`,
    'common practice, no source',
  ),
  otherProductMonths: open('12', `${US_TEXT} 5.1: never together with the 4 mg product, without a number`, 'read'),
  maxConsecutiveDoses: open('6', 'AACE/ACE 2020, doi 10.4158/GL-2019-0524: up to six years at very high risk'),
  breakMonths: open(
    '24',
    'ASBMR 2016, Adler, JBMR 31:16: a pause of two to three years, then reassess; Endocrine Society 2019: up to five years',
    'read',
  ),
  denosumabIntervalMonths: said('6', 'denosumab 60 mg product text (US): once every six months'),
  denosumabLateDays: open('1', 'no delay is accepted in US practice', 'common practice, no source'),
  runningMinutesLeast: said('15', `${US_TEXT} 2.1: no less than 15 minutes at a constant rate`),
  runningMinutesUsual: open('30', `${US_TEXT} 2.1: 15 minutes or more; 30 minutes leaves room`, 'read'),
};

const regimenDiffers: Readonly<Record<string, Partial<Regimen>>> = {
  'zoledronic-acid-yearly': {
    source: `${US_TEXT} 2: once a year (read); ASBMR 2016, Adler, JBMR 31:16: look again after three years (read)`,
  },
  'zoledronic-acid-24-monthly': {
    title: 'zoledronic acid 5 mg every 24 months, to prevent osteoporosis',
    source: `${US_TEXT} 2: for prevention once every two years (read)`,
  },
  'zoledronic-acid-pagets-disease': {
    cautions: [
      'Calcium 1500 mg a day, divided, and vitamin D 800 IU a day, above all in the two weeks after (US product text).',
      'Again only on relapse: a prescriber decides.',
    ],
    source: `${US_TEXT} 2.6: a single infusion, again only on relapse (read); not within a year (from memory)`,
  },
  'teriparatide-daily': {
    cautions: [
      'The US text no longer names a strict lifetime limit: a prescriber decides (from memory). Not with raised calcium, unexplained raised alkaline phosphatase, earlier radiotherapy of bone or bone cancer.',
      'A calcium sample at least 16 hours after a dose.',
    ],
    source: 'teriparatide product text (US): daily; the 24 months are those of the trials',
    status: 'from memory',
  },
};

export const starterUs: ProtocolSheet = {
  ...starterSheet,
  version: 'starter-us',
  title: 'US-like: the US product text and guidance, for US units',
  numbers: { ...starterSheet.numbers, ...differs },
  hipRepairNeedsLoading: false,
  /** Product text (US), highlights: a routine oral examination by the prescriber before treatment (read). */
  dentalCheck: 'demanded',
  dayQuestions: starterSheet.dayQuestions.map((question) => ({
    ...question,
    asks: inAmerican(question.asks),
    says: inAmerican(question.says),
  })),
  carryOn: usualCarryOnUs,
  regimens: starterSheet.regimens
    .filter(({ id }) => id !== 'zoledronic-acid-18-monthly')
    .map((regimen) => ({ ...regimen, ...regimenDiffers[regimen.id] })),
};
