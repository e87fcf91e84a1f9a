/** What the sheet has to know of a person, and the risk that the unit copied from its own instrument. */
import { type Day, shortDate } from '@twelvemonth/clinical';

export type RiskOf = 'hip fracture' | 'major fracture' | 'any fracture';

export type Baseline = {
  readonly of: RiskOf;
  /** Per cent, without treatment. */
  readonly percent: number;
  readonly years: number;
  readonly instrument: string;
  readonly workedOutOn: Day;
  /** The instrument's own range, where it gives one. */
  readonly range: { readonly lowPercent: number; readonly highPercent: number } | undefined;
  readonly veryFrail: boolean;
};

export type PersonFacts = {
  readonly today: Day;
  readonly sex: 'female' | 'male' | undefined;
  readonly ageYears: number | undefined;
  readonly newestFracture: Day | undefined;
  /** The newest hip fracture, by its repair where it was repaired. */
  readonly hip: { readonly on: Day; readonly repaired: boolean } | undefined;
  readonly onSteroid: boolean;
  readonly hadBoneTablets: boolean;
  /** Ever, and since the last planned break. */
  readonly dosesGiven: number;
  readonly dosesInARow: number;
  /** The first dose on or after the day of `hip`. */
  readonly firstDoseSinceHip: Day | undefined;
};

/** The newest risk of each kind, in the order in which they are told. */
export function newestOfEach(baselines: readonly Baseline[]): readonly Baseline[] {
  const order: readonly RiskOf[] = ['major fracture', 'any fracture', 'hip fracture'];
  return order.flatMap((of) => {
    const newest = baselines
      .filter((one) => one.of === of)
      .toSorted((a, b) => a.workedOutOn - b.workedOutOn)
      .at(-1);
    return newest === undefined ? [] : [newest];
  });
}

/** Why a risk cannot be used; undefined: it can. */
export function whyNotUsable({ workedOutOn }: Baseline, { newestFracture, today }: PersonFacts): string | undefined {
  if (workedOutOn > today) return 'Its date lies ahead.';
  return newestFracture !== undefined && newestFracture > workedOutOn
    ? `It was worked out on ${shortDate(workedOutOn)}, before the fracture of ${shortDate(newestFracture)}: work it out again.`
    : undefined;
}
