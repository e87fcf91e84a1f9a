/**
 * The starter by the EU product text: what it and the named papers say, and nothing where they are silent. The other starters
 * are this one with their differences (starter-uk.ts, starter-us.ts). Where the sources are silent a suggestion stands beside the empty number and the sheet cannot be adopted until two people have decided it.
 * Citations and how each was seen: the status beside it.
 */
import type { PlainDate } from '../calendar/day.ts';
import { usualDayQuestions } from './day-questions.ts';
import { type NumberKey, numberKeyNames } from './number-keys.ts';
import type { ProtocolSheet } from './protocol.ts';
import { requirementIds } from './requirement-ids.ts';
import type { SourcedNumber } from './sourced-number.ts';
import { usualCarryOn } from './usual-carry-on.ts';
import { usualParacetamol } from './usual-paracetamol.ts';
import { usualRegimens } from './usual-regimens.ts';
import { usualSwitches } from './usual-switches.ts';

export const said = (value: string, source: string, status: SourcedNumber['status'] = 'read'): SourcedNumber => ({
  value,
  source,
  status,
});
/** Where the label is silent: what others do, as a suggestion only. */
export const open = (
  suggestion: string,
  source: string,
  status: SourcedNumber['status'] = 'from memory',
): SourcedNumber => ({
  value: null,
  suggestion,
  source,
  status,
});

export const PRODUCT_TEXT = 'zoledronic acid 5 mg product text (EU/UK)';
export const NOS_2018 = 'National Osteoporosis Society (now Royal Osteoporosis Society) vitamin D guideline 2018';
export const SILENT = 'the label is silent';
const MHRA_2010 = 'MHRA Drug Safety Update April 2010: creatinine after the dose is considered in people at risk';
const A_HABIT = 'a habit of a service, so that nobody waits unseen';
const ECTS_2021 = 'ECTS 2021, Tsourdi, JCEM 106:264';
const NOGG_2021 = 'NOGG 2021, Gregson 2022, doi 10.1007/s11657-022-01061-5';
const IOF_2012 = 'IOF 2012, Diez-Perez, Osteoporos Int 23:2769';
const ISCD_PRECISION =
  "2.77 x the least precision ISCD Official Positions 2019 accept; a unit writes its own scanner's";

const numbers: Record<NumberKey, SourcedNumber> = {
  clearanceFloor: said('35', `${PRODUCT_TEXT} 4.3 and 4.4: contraindicated below 35 mL/min`),
  nearLimitCeiling: open(
    '40',
    `${SILENT}; a band above the limit in which the dose is watched more closely`,
    'common practice, no source',
  ),
  adultFromYears: said('18', `${PRODUCT_TEXT} 4.2: not for children and adolescents below 18 years`, 'from memory'),
  creatinineRise: open('26', `${SILENT}; KDIGO 2012 acute kidney injury: 26 umol/L or more`),
  creatinineRiseFactor: open('1.3', `${SILENT}; stricter than KDIGO 2012 (1.5 times)`),
  baselineDays: open('365', `${SILENT}; a year of the person's own values`, 'common practice, no source'),
  weightChangePercent: open(
    '15',
    `${SILENT}; a change of weight past which the number is doubted`,
    'common practice, no source',
  ),
  adjustedWeightFromPercent: open(
    '120',
    `${SILENT}; Winter 2012, Pharmacotherapy 32:604: from 120 or 130 % of ideal weight`,
  ),
  adjustedWeightShare: open('0.4', `${SILENT}; Winter 2012, Pharmacotherapy 32:604`),
  weightValidDays: open(
    '90',
    `${SILENT}; planning only, the go decision wants a weight of the day`,
    'common practice, no source',
  ),
  bloodsValidDays: open(
    '42',
    'label: before each dose, without a number; published units use two weeks to six months (two months: Manchester 2012, Endocrine Abstracts 28 P161)',
    'read',
  ),
  resultDays: open('2', `${SILENT}; the laboratory's own turn-round`, 'common practice, no source'),
  calciumLow: open('2.20', `${SILENT}; the laboratory prints its own; UK Pathology Harmony interval`, 'read'),
  calciumHigh: open('2.60', `${SILENT}; the laboratory prints its own; UK Pathology Harmony interval`, 'read'),
  calciumLowMgPerDl: open(
    '8.8',
    'the laboratory prints its own; 2.20 mmol/L is 8.82 mg/dL',
    'common practice, no source',
  ),
  calciumHighMgPerDl: open(
    '10.4',
    'the laboratory prints its own; 2.60 mmol/L is 10.42 mg/dL',
    'common practice, no source',
  ),
  calciumAdjustSlope: said(
    '0.02',
    'attributed to Payne, BMJ 1977 1:598; the paper of 1973 (BMJ 4:643) had 0.025',
    'secondary',
  ),
  calciumAdjustAlbumin: said('40', 'attributed to Payne, BMJ 1977 1:598', 'secondary'),
  calciumAfterLoadingDays: open(
    '7',
    `${NOS_2018}: adjusted calcium about one month after loading; before the dose ${SILENT}`,
  ),
  calciumMonthAfterLoadingFromDays: open('21', `${NOS_2018}: adjusted calcium about one month after loading`),
  calciumMonthAfterLoadingByDays: open('42', `${NOS_2018}: adjusted calcium about one month after loading`),
  calciumAfterDoseDays: said(
    '14',
    'denosumab 60 mg product text: within two weeks after the dose in those predisposed to low calcium, such as below 30 mL/min',
  ),
  calciumAfterDoseWeeks: open(
    '0',
    'denosumab 60 mg product text: within two weeks, no weekly samples; the US text has them weekly in the first month below 30 mL/min and on dialysis',
    'read',
  ),
  creatinineAfterDoseFromDays: open('7', `${SILENT}; ${MHRA_2010}; one to two weeks after the dose (from memory)`),
  creatinineAfterDoseByDays: open('14', `${SILENT}; ${MHRA_2010}; one to two weeks after the dose (from memory)`),
  vitaminDFloor: open('50', `${SILENT}; ${NOS_2018}: above 50 nmol/L sufficient; other guidelines differ`, 'read'),
  vitaminDFloorNgPerMl: open(
    '20',
    `${SILENT}; Manchester 2012, Endocrine Abstracts 28 P161: action below 20 ng/mL; other guidelines differ`,
    'read',
  ),
  vitaminDValidDays: open('365', `${SILENT}; 3 to 12 months seen`),
  loadingDoses: open(
    '6',
    `${SILENT}; ${NOS_2018}: up to about 300,000 IU over 6 to 10 weeks, here 50,000 IU weekly`,
    'from memory',
  ),
  loadingEveryDays: open('7', `${SILENT}; ${NOS_2018}: weekly split doses`, 'from memory'),
  loadingUnitsPerDose: open(
    '50000',
    `${PRODUCT_TEXT} 4.2: 50,000 to 125,000 IU before the first dose after a hip fracture; ${NOS_2018}: 50,000 IU weekly for six weeks`,
    'from memory',
  ),
  loadingHoldsDays: open('365', `${SILENT}; twelve months while maintenance is taken`, 'common practice, no source'),
  maintenanceConfirmDays: open(
    '120',
    `${SILENT}; maintenance starts about a month after loading`,
    'common practice, no source',
  ),
  wellDaysBeforeSample: open(
    '2',
    `${SILENT}; New Zealand protocol 2016: bloods again after illness, without a number`,
    'common practice, no source',
  ),
  surgerySampleDays: open(
    '14',
    `${SILENT}; acute kidney injury accompanies about a quarter of hip-fracture admissions`,
    'common practice, no source',
  ),
  hipRepairDays: said(
    '14',
    `${PRODUCT_TEXT} 4.2: two or more weeks after hip fracture repair; Eriksen 2009, JBMR 24:1308`,
  ),
  hipLookbackDays: open('365', SILENT, 'common practice, no source'),
  vitaminDSevere: said('25', `${NOS_2018}: below 25 nmol/L deficient`),
  vitaminDSevereNgPerMl: open('10', `25 nmol/L is 10 ng/mL; ${SILENT}`, 'common practice, no source'),
  teethAnswerDays: open(
    '180',
    'label: dental examination and preventive dentistry considered before treatment; how long an answer counts is not said',
    'common practice, no source',
  ),
  dentalValidDays: open('365', `${SILENT}; a check within the year`, 'common practice, no source'),
  consentValidDays: open('365', `${SILENT}; asked again on the day of each dose`, 'common practice, no source'),
  pregnancyAnswerDays: open(
    '14',
    'label: contraindicated in pregnancy and breast-feeding, how long an answer counts is not said',
    'common practice, no source',
  ),
  exceptionLongestDays: open(
    '28',
    `${SILENT}; long enough for one booked dose, short enough that somebody looks again`,
    'common practice, no source',
  ),
  exceptionBloodsOldestDays: open(
    '84',
    `label: before each dose, without a number; UK units use two to twelve weeks`,
    'from memory',
  ),
  otherProductMonths: open('12', `${PRODUCT_TEXT} 4.4: never together with the 4 mg product, without a number`, 'read'),
  maxConsecutiveDoses: open(
    '6',
    `${SILENT}; extension trials: six yearly doses against three (Black 2012, JBMR 27:243), nine against six without clear gain (Black 2015, JBMR 30:934)`,
  ),
  heightLossCentimeters: open(
    '2',
    'ISCD Official Positions 2019: spine imaging from 2 cm lost between two measurements',
  ),
  steroidMgPerDay: open('7.5', `${NOGG_2021}: no pause while on 7.5 mg of prednisolone a day or more`),
  leastChangeSpinePercent: open('5.3', ISCD_PRECISION),
  leastChangeTotalHipPercent: open('5.0', ISCD_PRECISION),
  leastChangeFemoralNeckPercent: open('6.9', ISCD_PRECISION),
  markerRisePercent: open('30', 'ESCEO 2009, PMC2705815: least significant change of a bone marker', 'read'),
  breakMonths: open(
    '36',
    `${NOGG_2021}: reassess three years after zoledronate; ASBMR 2016, JBMR 31:16: two to three years`,
  ),
  breakLongestMonths: open('60', 'Endocrine Society 2019: a temporary pause of up to five years', 'read'),
  continueFromAge: open('70', `${NOGG_2021}: up to six years from this age on`),
  continueHipTScore: open('-2.5', `${NOGG_2021}: up to six years at or below this`),
  failureTreatmentMonths: open('12', `${IOF_2012}: at least a year of treatment, taken`),
  failureFractures: open('2', `${IOF_2012}: two or more new fragility fractures`, 'read'),
  failureSpineLossPercent: open('5', `${IOF_2012}: 5 % or more at the spine`),
  failureHipLossPercent: open('4', `${IOF_2012}: 4 % or more at the proximal femur`),
  failureMarkerFallPercent: open('25', `${IOF_2012}: a fall of less than 25 % from the value before treatment`),
  denosumabIntervalMonths: said('6', 'denosumab 60 mg product text: once every six months'),
  denosumabListMonths: open(
    '4',
    'a denosumab dose is a promise with a date: time to find the replacement',
    'common practice, no source',
  ),
  denosumabFirstInLineMonths: open('5', 'a month before the due date', 'common practice, no source'),
  denosumabReachMonths: open(
    '7',
    'a month after the due date; Osteoporosis Canada 2023, Morin CMAJ 195:E1333: at most one month late',
    'read',
  ),
  denosumabLateDays: open(
    '28',
    'more than 4 weeks late: on-time limit of the cohort of Ann Intern Med 2020;173:516',
    'read',
  ),
  denosumabReboundDays: said(
    '112',
    'more than 16 weeks late: vertebral fracture HR 3.91 (1.62-9.45), Ann Intern Med 2020;173:516',
  ),
  denosumabSecondDoseMonths: open(
    '3',
    `${SILENT}; ZOLARMAB2, a protocol under test: again 3 and 6 months after the first infusion`,
    'read',
  ),
  denosumabMarkersFirstMonths: open('3', `${ECTS_2021}: markers after the infusion, at 3 and 6 months`),
  denosumabMarkersSecondMonths: open('6', `${ECTS_2021}: markers after the infusion, at 3 and 6 months`),
  replacementTakenMonths: open(
    '12',
    `${SILENT}; Osteoporosis Canada 2023, Morin CMAJ 195:E1333: a bisphosphonate for a year after denosumab, then reassess`,
    'read',
  ),
  runningMinutesLeast: said('15', `${PRODUCT_TEXT} 4.2: at least 15 minutes at a constant rate`),
  runningMinutesUsual: open('30', `${SILENT}; 30 minutes seen in UK units`, 'read'),
  siteCheckMinutes: open('5', `${SILENT}; early, while little has run`, 'common practice, no source'),
  interruptionMinutes: open('10', `${SILENT}; a check that was left is begun again`, 'common practice, no source'),
  observeFirstMinutes: open('30', 'no label period; 15 to 60 minutes locally, 30 typical'),
  observeLaterMinutes: open('15', 'no label period; shorter after later doses'),
  putOffTemperature: open('38', SILENT, 'common practice, no source'),
  putOffSystolicLow: open('100', SILENT, 'common practice, no source'),
  recallLeadDays: open(
    '70',
    `${SILENT}; ten weeks to ask, take bloods and load if need be`,
    'common practice, no source',
  ),
  overdueAfterDays: open('42', SILENT, 'common practice, no source'),
  lookAgainReferralDays: open('7', 'a wait a service allows itself: five working days', 'common practice, no source'),
  lookAgainReturnedDays: open('28', A_HABIT, 'common practice, no source'),
  lookAgainWorkUpDays: open('28', A_HABIT, 'common practice, no source'),
  lookAgainPlaceDays: open('7', A_HABIT, 'common practice, no source'),
  lookAgainPutOffDays: open('7', A_HABIT, 'common practice, no source'),
  lookAgainOverdueDays: open('7', A_HABIT, 'common practice, no source'),
  lookAgainReviewDays: open('28', A_HABIT, 'common practice, no source'),
  askAgainDoseDays: open('84', A_HABIT, 'common practice, no source'),
  askAgainMedicineDays: open('28', A_HABIT, 'common practice, no source'),
  askAgainContactDays: open('365', A_HABIT, 'common practice, no source'),
  aftercareFirstDays: open('1', `${SILENT}; the reaction begins within a day: Reid 2010, JCEM 95:4380`, 'read'),
  aftercareCallDays: open(
    '3',
    `${SILENT}; the reaction begins within a day and lasts three at the median: Reid 2010, JCEM 95:4380`,
    'read',
  ),
  feverTooHighCelsius: open('39', `${SILENT}; over 39 to 40 degrees is not the reaction to the drip`),
  feverTooLongDays: open(
    '3',
    `${SILENT}; the reaction lasts three days at the median (Reid 2010, JCEM 95:4380); over 72 hours is looked at`,
  ),
  letterDays: open('1', `${SILENT}; the letter within a day`, 'common practice, no source'),
  cannulaTriesBeforeOther: open('2', SILENT, 'common practice, no source'),
};

export const starterSheet: ProtocolSheet = {
  version: 'starter-label-eu',
  title: 'EU-like: the product text, and suggestions where it is silent',
  teachingOnly: false,
  reviewBy: '2027-11-30' as PlainDate,
  numbers,
  resultDaysCounted: 'working days',
  vitaminDPolicy: 'await the level',
  hipRepairNeedsLoading: true,
  dentalCheck: 'asked',
  pharmacyVerification: 'not asked for',
  homeDoseByOne: 'not allowed',
  weightThatDecides: 'actual',
  regimens: usualRegimens,
  switches: usualSwitches,
  carryOn: usualCarryOn,
  paracetamol: [],
  gravity: [...requirementIds],
  dayQuestions: usualDayQuestions,
  cautions: [
    'The prescriber and the local protocol decide; this sheet only helps to keep to them.',
    'eGFR is shown and never passes anyone.',
  ],
};

/** A starter sheet with every suggestion accepted as the unit's own decision: for the demo, and for trying things out. */
export function demoSheet(version: string): ProtocolSheet {
  const decided = { ...numbers };
  for (const key of numberKeyNames) {
    const { value, suggestion, source } = numbers[key];
    if (value !== null) continue;
    if (suggestion === undefined) throw new RangeError(`no suggestion for ${key}`);
    decided[key] = { value: suggestion, source: `suggestion accepted; ${source}`, status: 'local decision' };
  }
  return {
    ...starterSheet,
    version,
    title: 'Zoledronic acid 5 mg: demo protocol',
    numbers: decided,
    paracetamol: usualParacetamol,
  };
}
