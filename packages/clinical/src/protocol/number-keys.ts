/**
 * Every number a protocol holds, with its unit and what it means. The rules are code; these numbers are the unit's, each
 * with a source, signed by two people. A key that is not here cannot decide anything.
 */
export const numberKeys = {
  clearanceFloor: { unit: 'mL/min', means: 'creatinine clearance below which the dose is not given' },
  nearLimitCeiling: { unit: 'mL/min', means: 'clearance below which a passing value is called near the limit' },
  adultFromYears: { unit: 'years', means: 'age below which these rules say nothing' },
  creatinineRise: {
    unit: 'umol/L',
    means: 'rise of creatinine over the own baseline from which a prescriber is asked',
  },
  creatinineRiseFactor: {
    unit: 'times',
    means: 'rise of creatinine as a multiple of the own baseline from which a prescriber is asked',
  },
  creatinineAfterDoseFromDays: {
    unit: 'days',
    means: 'days after a dose given near the clearance limit from which a creatinine counts',
  },
  creatinineAfterDoseByDays: {
    unit: 'days',
    means: 'days after such a dose by which creatinine is looked at; 0 where the unit asks for none',
  },
  baselineDays: { unit: 'days', means: 'how far back the own baseline of creatinine is looked for' },
  weightChangePercent: { unit: '%', means: 'a weight that differs by more from the one before it is weighed again' },
  adjustedWeightFromPercent: {
    unit: '% of ideal weight',
    means: 'actual weight from which the adjusted weight is looked at',
  },
  adjustedWeightShare: {
    unit: 'of the excess weight',
    means: 'share of the weight above ideal that the adjusted weight counts',
  },
  weightValidDays: { unit: 'days', means: 'how long a weight counts for planning' },
  bloodsValidDays: {
    unit: 'days',
    means: 'how long creatinine and calcium count, from the day of the sample, that day plus so many included',
  },
  resultDays: { unit: 'days', means: 'days from a sample until its result may be used' },
  calciumLow: { unit: 'mmol/L', means: 'lowest adjusted calcium for a dose, where the laboratory gives no limits' },
  calciumHigh: { unit: 'mmol/L', means: 'highest adjusted calcium for a dose, where the laboratory gives no limits' },
  calciumLowMgPerDl: { unit: 'mg/dL', means: 'the same, for results reported in mg/dL' },
  calciumHighMgPerDl: { unit: 'mg/dL', means: 'the same, for results reported in mg/dL' },
  calciumAdjustSlope: {
    unit: 'mmol/L per g/L',
    means: 'how much calcium is added for each g/L of albumin below the reference',
  },
  calciumAdjustAlbumin: { unit: 'g/L', means: 'albumin at which no adjustment is made' },
  calciumAfterLoadingDays: { unit: 'days', means: 'days from the last loading dose to the calcium sample that counts' },
  calciumMonthAfterLoadingFromDays: {
    unit: 'days',
    means: 'days from the last loading dose from which the calcium of about a month later counts',
  },
  calciumMonthAfterLoadingByDays: { unit: 'days', means: 'days from the last loading dose by which it is looked at' },
  calciumAfterDoseDays: {
    unit: 'days',
    means:
      'days after a dose by which calcium is looked at, where the clearance was below the floor of a regimen that lets a prescriber decide, or not known',
  },
  calciumAfterDoseWeeks: {
    unit: 'weeks',
    means:
      'for so many weeks after such a dose calcium is looked at every week; 0 where once, by the days above, is enough',
  },
  vitaminDFloor: { unit: 'nmol/L', means: 'vitamin D level from which no loading is needed' },
  vitaminDFloorNgPerMl: { unit: 'ng/mL', means: 'the same, for results reported in ng/mL' },
  vitaminDValidDays: { unit: 'days', means: 'how long a vitamin D level counts' },
  loadingDoses: { unit: 'doses', means: 'loading doses of vitamin D' },
  loadingEveryDays: { unit: 'days', means: 'days between loading doses' },
  loadingUnitsPerDose: { unit: 'IU', means: 'units of vitamin D in each loading dose' },
  loadingHoldsDays: {
    unit: 'days',
    means: 'how long a finished loading stands for a level once maintenance is confirmed',
  },
  maintenanceConfirmDays: {
    unit: 'days',
    means:
      'how long a finished loading, or a word that the daily vitamin D is taken, stands until it must be confirmed',
  },
  wellDaysBeforeSample: { unit: 'days', means: 'days well before a new sample counts' },
  surgerySampleDays: { unit: 'days', means: 'days after an operation during which a sample does not count' },
  hipRepairDays: { unit: 'days', means: 'days from the latest hip repair to a dose' },
  hipLookbackDays: {
    unit: 'days',
    means:
      'how long after a repaired hip fracture the day of its repair, and loading before a first dose, are asked about',
  },
  vitaminDSevere: { unit: 'nmol/L', means: "vitamin D level below which bone pain is a prescriber's before a dose" },
  vitaminDSevereNgPerMl: { unit: 'ng/mL', means: 'the same, for results reported in ng/mL' },
  teethAnswerDays: { unit: 'days', means: 'how long an answer about teeth and jaw counts' },
  dentalValidDays: { unit: 'days', means: 'how long a dental check counts, where one is demanded' },
  consentValidDays: { unit: 'days', means: 'how long a consent counts for planning; it is asked again on the day' },
  pregnancyAnswerDays: { unit: 'days', means: 'how long the answer "not pregnant" counts' },
  exceptionLongestDays: { unit: 'days', means: "how long a prescriber's exception may last" },
  exceptionBloodsOldestDays: {
    unit: 'days',
    means: "age of creatinine and calcium up to which a prescriber's exception may carry them past their days",
  },
  otherProductMonths: { unit: 'months', means: 'months after zoledronic acid 4 mg during which no dose is given' },
  maxConsecutiveDoses: {
    unit: 'doses',
    means: 'doses in a row, without a planned break, after which a specialist reviews the course before another',
  },
  heightLossCentimeters: {
    unit: 'cm',
    means: 'height lost between two measurements from which the course is reviewed at once',
  },
  steroidMgPerDay: {
    unit: 'mg of prednisolone a day',
    means: 'steroid dose from which there is no planned break, and a break is reviewed at once',
  },
  leastChangeSpinePercent: {
    unit: '% of the earlier scan',
    means: 'smallest change of the lumbar spine a scan can tell from noise, where the report prints none',
  },
  leastChangeTotalHipPercent: { unit: '% of the earlier scan', means: 'the same, for the total hip' },
  leastChangeFemoralNeckPercent: { unit: '% of the earlier scan', means: 'the same, for the femoral neck' },
  markerRisePercent: {
    unit: '% of the earlier value',
    means: 'rise of a bone marker during a planned break from which the break is reviewed at once',
  },
  breakMonths: { unit: 'months', means: 'usual length of a planned break, from the last infusion' },
  breakLongestMonths: { unit: 'months', means: 'longest planned break without a review, from the last infusion' },
  continueFromAge: { unit: 'years', means: 'age from which carrying on after the planned doses is considered' },
  continueHipTScore: {
    unit: 'T-score',
    means: 'hip T-score at or below which carrying on after the planned doses is considered',
  },
  failureTreatmentMonths: {
    unit: 'months',
    means: 'months of treatment before anything is called treatment failure',
  },
  failureFractures: { unit: 'fractures', means: 'new fractures on treatment that alone mean treatment failure' },
  failureSpineLossPercent: {
    unit: '% of the first scan',
    means: 'loss at the lumbar spine on treatment that counts towards treatment failure',
  },
  failureHipLossPercent: {
    unit: '% of the first scan',
    means: 'loss at the hip on treatment that counts towards treatment failure',
  },
  failureMarkerFallPercent: {
    unit: '% of the value before treatment',
    means: 'fall of a bone marker on treatment below which it counts towards treatment failure',
  },
  denosumabIntervalMonths: {
    unit: 'months',
    means: 'months from one denosumab injection to the next dose of it or of its replacement',
  },
  denosumabListMonths: {
    unit: 'months',
    means: 'months after the last denosumab injection from which the person is on the worklist',
  },
  denosumabFirstInLineMonths: {
    unit: 'months',
    means: 'months after the last denosumab injection from which someone without a booked replacement is first in line',
  },
  denosumabReachMonths: {
    unit: 'months',
    means: 'months after the last denosumab injection by which the replacement must be reached',
  },
  denosumabLateDays: { unit: 'days', means: 'days after the due date from which a prescriber is asked the same day' },
  denosumabSecondDoseMonths: {
    unit: 'months',
    means:
      'shortest interval a prescription may set between the first and the second dose of the medicine that follows denosumab',
  },
  denosumabMarkersFirstMonths: {
    unit: 'months',
    means: 'months after the medicine that follows denosumab by which bone markers are looked at',
  },
  denosumabMarkersSecondMonths: { unit: 'months', means: 'the same, for the second time' },
  replacementTakenMonths: {
    unit: 'months',
    means:
      'how long a bone medicine that follows denosumab, romosozumab or teriparatide must have been taken for its end to bring nothing back',
  },
  denosumabReboundDays: { unit: 'days', means: 'days after the due date from which a rebound is thought of' },
  runningMinutesLeast: { unit: 'minutes', means: 'shortest running time of the infusion' },
  runningMinutesUsual: { unit: 'minutes', means: 'running time the unit plans for' },
  siteCheckMinutes: { unit: 'minutes', means: 'running time after which the site of the cannula is looked at' },
  interruptionMinutes: {
    unit: 'minutes',
    means: 'between second check and start, after which identifiers and product are asked again',
  },
  observeFirstMinutes: { unit: 'minutes', means: 'watch after a first dose' },
  observeLaterMinutes: { unit: 'minutes', means: 'watch after later doses' },
  putOffTemperature: { unit: 'degrees Celsius', means: 'temperature from which the dose is put off' },
  putOffSystolicLow: { unit: 'mmHg', means: 'systolic pressure below which the dose is put off' },
  recallLeadDays: { unit: 'days', means: 'days before the due date at which the recall begins' },
  overdueAfterDays: { unit: 'days', means: 'days after the due date from which the person is overdue' },
  lookAgainReferralDays: { unit: 'days', means: 'days from a referral until it is decided on' },
  lookAgainReturnedDays: {
    unit: 'days',
    means: 'days after which somebody looks whether a referral that was returned came back',
  },
  lookAgainWorkUpDays: { unit: 'days', means: 'days after which somebody looks again at a person in work-up' },
  lookAgainPlaceDays: {
    unit: 'days',
    means: 'days after which somebody looks again at a person who waits for a place',
  },
  lookAgainPutOffDays: {
    unit: 'days',
    means: 'days after which somebody looks again at a person whose dose was put off',
  },
  lookAgainOverdueDays: { unit: 'days', means: 'days after which somebody looks again at a person who is overdue' },
  lookAgainReviewDays: { unit: 'days', means: 'days from the opening of a review until a prescriber has decided' },
  askAgainDoseDays: {
    unit: 'days',
    means: 'days after a no to this dose until the person is asked again, where no day was agreed',
  },
  askAgainMedicineDays: {
    unit: 'days',
    means: 'days after a no to this medicine until a prescriber asks again, where no day was agreed',
  },
  askAgainContactDays: {
    unit: 'days',
    means: 'days after a no to all contact until somebody looks again, where no day was agreed',
  },
  aftercareFirstDays: { unit: 'days', means: 'days after a first dose from which the person is asked how they are' },
  aftercareCallDays: { unit: 'days', means: 'days after a first dose by which the person has been asked how they are' },
  feverTooHighCelsius: {
    unit: 'degrees Celsius',
    means: 'temperature after a dose above which a doctor sees the person the same day',
  },
  feverTooLongDays: {
    unit: 'days',
    means: 'days a fever after a dose may last before a doctor sees the person the same day',
  },
  letterDays: { unit: 'days', means: 'days after a dose by which the letter about it is written' },
  cannulaTriesBeforeOther: { unit: 'tries', means: 'failed tries after which another operator is asked' },
} as const;

export type NumberKey = keyof typeof numberKeys;
export const numberKeyNames = Object.keys(numberKeys) as NumberKey[];
