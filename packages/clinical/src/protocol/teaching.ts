/**
 * The protocol of the worked cases in docs/readiness.md. It ships for tests and teaching only and can never be adopted.
 */
import type { PlainDate } from '../calendar/day.ts';
import { usualDayQuestions } from './day-questions.ts';
import { type Protocol, type ProtocolSheet, protocolFrom } from './protocol.ts';
import { requirementIds } from './requirement-ids.ts';
import type { SourcedNumber } from './sourced-number.ts';
import { usualRegimens } from './usual-regimens.ts';
import { usualSwitches } from './usual-switches.ts';

const taught = (value: string): SourcedNumber => ({
  value,
  source: 'docs/readiness.md, worked cases',
  status: 'local decision',
});

export const teachingSheet: ProtocolSheet = {
  version: 'teaching',
  title: 'Teaching protocol',
  teachingOnly: true,
  reviewBy: '2030-01-01' as PlainDate,
  numbers: {
    clearanceFloor: taught('35'),
    nearLimitCeiling: taught('40'),
    creatinineRise: taught('26'),
    creatinineRiseFactor: taught('1.3'),
    baselineDays: taught('365'),
    weightChangePercent: taught('15'),
    adjustedWeightFromPercent: taught('120'),
    adjustedWeightShare: taught('0.4'),
    weightValidDays: taught('90'),
    bloodsValidDays: taught('56'),
    resultDays: taught('3'),
    calciumLow: taught('2.20'),
    calciumHigh: taught('2.60'),
    calciumLowMgPerDl: taught('8.8'),
    calciumHighMgPerDl: taught('10.4'),
    calciumAdjustSlope: taught('0.02'),
    calciumAdjustAlbumin: taught('40'),
    calciumAfterLoadingDays: taught('7'),
    vitaminDFloor: taught('50'),
    vitaminDFloorNgPerMl: taught('20'),
    vitaminDValidDays: taught('365'),
    loadingDoses: taught('6'),
    loadingEveryDays: taught('7'),
    loadingUnitsPerDose: taught('50000'),
    loadingHoldsDays: taught('365'),
    maintenanceConfirmDays: taught('120'),
    wellDaysBeforeSample: taught('2'),
    surgerySampleDays: taught('10'),
    hipRepairDays: taught('14'),
    hipLookbackDays: taught('365'),
    vitaminDSevere: taught('25'),
    vitaminDSevereNgPerMl: taught('10'),
    teethAnswerDays: taught('730'),
    dentalValidDays: taught('365'),
    consentValidDays: taught('730'),
    pregnancyAnswerDays: taught('14'),
    exceptionLongestDays: taught('90'),
    exceptionBloodsOldestDays: taught('100'),
    otherProductMonths: taught('12'),
    maxConsecutiveDoses: taught('6'),
    heightLossCentimeters: taught('2'),
    steroidMgPerDay: taught('7.5'),
    leastChangeSpinePercent: taught('5.3'),
    leastChangeTotalHipPercent: taught('5.0'),
    leastChangeFemoralNeckPercent: taught('6.9'),
    markerRisePercent: taught('30'),
    breakMonths: taught('36'),
    breakLongestMonths: taught('60'),
    continueFromAge: taught('70'),
    continueHipTScore: taught('-2.5'),
    failureTreatmentMonths: taught('12'),
    failureFractures: taught('2'),
    failureSpineLossPercent: taught('5'),
    failureHipLossPercent: taught('4'),
    failureMarkerFallPercent: taught('25'),
    denosumabIntervalMonths: taught('6'),
    denosumabListMonths: taught('4'),
    denosumabFirstInLineMonths: taught('5'),
    denosumabReachMonths: taught('7'),
    denosumabLateDays: taught('28'),
    denosumabReboundDays: taught('112'),
    runningMinutesLeast: taught('15'),
    runningMinutesUsual: taught('30'),
    observeFirstMinutes: taught('30'),
    observeLaterMinutes: taught('15'),
    putOffTemperature: taught('38'),
    putOffSystolicLow: taught('100'),
    recallLeadDays: taught('70'),
    overdueAfterDays: taught('42'),
    cannulaTriesBeforeOther: taught('2'),
  },
  resultDaysCounted: 'calendar days',
  vitaminDPolicy: 'await the level',
  hipRepairNeedsLoading: false,
  dentalCheck: 'asked',
  weightThatDecides: 'actual',
  regimens: usualRegimens,
  switches: usualSwitches,
  gravity: [...requirementIds],
  dayQuestions: usualDayQuestions,
  cautions: ['Teaching numbers: never for a real person.'],
};

const compiled = protocolFrom(teachingSheet);
if (!('protocol' in compiled)) throw new RangeError('the teaching protocol has an empty number');
export const teaching: Protocol = compiled.protocol;
