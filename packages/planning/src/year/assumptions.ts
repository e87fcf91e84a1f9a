/** What a rehearsed year takes for granted, each with where it comes from. Both ways of working meet the same. */

export type YearAssumptions = {
  /** Share of first doses that wait for vitamin D loading, and its days. */
  readonly loads: number;
  readonly loadingDays: number;
  /** Share of first doses with teeth to be seen to, and the least and most days until they are. */
  readonly teeth: number;
  readonly teethDays: readonly [number, number];
  /** Share of first doses that are first in line. */
  readonly firstInLine: number;
  /** Of visits booked: does not come; comes unwell, or with something new, which nobody could know a week before. */
  readonly doesNotCome: number;
  readonly unwell: number;
  /** Days before another visit after being unwell. */
  readonly recoversDays: number;
  /** Of samples asked for: never taken; out of limits, and the days until that is settled and drawn again. */
  readonly missesDraw: number;
  readonly badResult: number;
  readonly settlesDays: number;
  /** Usual practice: of first doses, booked at once and worked up meanwhile; the others are worked up first. */
  readonly placeFirst: number;
  /** Usual practice, later doses: days between the sample and the due date, mean and spread. */
  readonly drawnBeforeDue: { readonly mean: number; readonly deviation: number };
  /** Share of troubles known a week ahead that somebody sees to. */
  readonly seenTo: number;
  /** Days between a result and the place, so that a bad one can still be acted on. */
  readonly drawMarginDays: number;
  /** People are recalled so many days before they are due. */
  readonly recallDays: number;
  /** A later dose is on time until so many days after it is due. */
  readonly onTimeDays: number;
};

export const yearAssumptions: YearAssumptions = {
  loads: 0.25,
  loadingDays: 49,
  teeth: 0.08,
  teethDays: [20, 60],
  firstInLine: 0.05,
  doesNotCome: 0.06,
  unwell: 0.04,
  recoversDays: 14,
  missesDraw: 0.1,
  badResult: 0.05,
  settlesDays: 21,
  placeFirst: 0.45,
  drawnBeforeDue: { mean: 45, deviation: 18 },
  seenTo: 0.9,
  drawMarginDays: 7,
  recallDays: 70,
  onTimeDays: 42,
};

/** Where each comes from, to stand beside every figure made with it. */
export const sourcesOfAssumptions: Readonly<Record<keyof YearAssumptions, string>> = {
  loads:
    '19 % too low before a dose (Birmingham, endocrine-abstracts 50 P058, as read); more before a first one: no source',
  loadingDays: '7 weeks (UK vitamin D guideline of the osteoporosis society), as read',
  teeth: 'common practice, no source',
  teethDays: 'common practice, no source',
  firstInLine: 'the share of people leaving denosumab in the invented register',
  doesNotCome: 'English outpatients 7 to 8 %, aged 70 to 79 one in 19 (HSCIC 2012/13), as read',
  unwell: 'common practice, no source',
  recoversDays: 'common practice, no source',
  missesDraw: 'common practice, no source; audits found 27 to 44 % of bloods after a dose done',
  badResult: 'common practice, no source',
  settlesDays: 'common practice, no source',
  placeFirst: 'as the invented register is made; no source',
  drawnBeforeDue:
    'median 45 days, quartiles 35 and 59, before a six-monthly injection (UK rheumatology, Ann Rheum Dis AB1392), as read',
  seenTo:
    'no source; set high, so that usual practice turns away about 16 of 100 who come, near the 5 to 15 that are common practice (no source)',
  drawMarginDays: 'common practice, no source',
  recallDays: 'common practice, no source: 10 to 6 weeks before',
  onTimeDays: 'common practice, no source: two weeks before to six weeks after',
};
