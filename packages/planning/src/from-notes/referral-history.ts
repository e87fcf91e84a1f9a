/** Who was referred, when in the year, how long working-up takes, and who of them left denosumab. */
import {
  type Day,
  type RegimenMedicine,
  type SubjectRecord,
  addDays,
  factsOf,
  isDenosumab,
} from '@twelvemonth/clinical';
import { yearDays } from '../year/year-measures.ts';

export type ReferralHistory = {
  /** Of the past year; sent back to the referrer are left out. */
  readonly referrals: number;
  readonly leavers: number;
  /** Of up to three years, by the quarters of the year that begin today. */
  readonly quarters: readonly [number, number, number, number];
  /** Weeks from referral to first dose that a quarter of people did not exceed: taken as what working-up takes. */
  readonly workUpWeeks: { readonly weeks: number; readonly of: number };
  /** Days that the notes reach back, a year at most. */
  readonly daysKnown: number;
};

const yearsOfSeason = 3;
const quarters = 4;
const shareWithoutWait = 0.25;
const daysPerWeek = 7;

/** The last bone medicine before a day was denosumab, of either strength. */
function leftDenosumab(record: SubjectRecord, on: Day): boolean {
  const before = factsOf(record, 'dose').findLast((dose) => dose.on <= on);
  return before !== undefined && isDenosumab(before.body.medicine);
}

const wasReturned = (record: SubjectRecord, referredOn: Day, next: Day | undefined): boolean =>
  factsOf(record, 'triage').some(
    ({ on, body }) => body.outcome === 'returned' && on >= referredOn && (next === undefined || on < next),
  );

function firstDoseAfter(record: SubjectRecord, medicine: RegimenMedicine, referredOn: Day): Day | undefined {
  const own = factsOf(record, 'dose').filter(({ body }) => body.medicine === medicine);
  return own.some(({ on }) => on < referredOn) ? undefined : own[0]?.on;
}

export function referralHistoryOf(
  records: readonly SubjectRecord[],
  medicine: RegimenMedicine,
  today: Day,
): ReferralHistory {
  const yearAgo = addDays(today, -yearDays);
  const known = records.flatMap((record) => {
    const all = factsOf(record, 'referral').filter(({ on }) => on <= today);
    return all.flatMap(({ on }, index) =>
      wasReturned(record, on, all[index + 1]?.on) ? [] : [{ record, on, isLeaver: leftDenosumab(record, on) }],
    );
  });
  const others = known.filter(({ isLeaver }) => !isLeaver);
  const ofYear = (some: typeof known): number => some.filter(({ on }) => on > yearAgo).length;
  const daysKnown = today - known.reduce((first, { on }) => (on < first ? on : first), today);
  const weeks = others
    .flatMap(({ record, on }) => {
      const given = firstDoseAfter(record, medicine, on);
      return given !== undefined && given > yearAgo ? [(given - on) / daysPerWeek] : [];
    })
    .toSorted((a, b) => a - b);
  return {
    referrals: ofYear(others),
    leavers: ofYear(known) - ofYear(others),
    quarters: quartersOf(
      others.map(({ on }) => today - on),
      Math.min(yearsOfSeason, Math.floor(daysKnown / yearDays)),
    ),
    workUpWeeks: { weeks: weeks[Math.floor(weeks.length * shareWithoutWait)] ?? 0, of: weeks.length },
    daysKnown: Math.min(yearDays, daysKnown),
  };
}

/** How many fell into each quarter of the years that begin today; only whole years, so that no quarter is looked at more often. */
function quartersOf(daysAgo: readonly number[], years: number): [number, number, number, number] {
  const counted: [number, number, number, number] = [0, 0, 0, 0];
  for (const ago of daysAgo) {
    if (ago >= years * yearDays) continue;
    // A year ago less a day belongs to the first weeks to come.
    const into = (yearDays - (ago % yearDays)) % yearDays;
    counted[Math.floor((into * quarters) / yearDays)]! += 1;
  }
  return counted;
}
