/**
 * What a treatment could change for this person: their own risk without it, and what is left of it under the trial's effect,
 * both ways, with the range the trial and the risk leave open. No baseline, no number; a trial that does not fit, no number.
 */
import { type BothWays, type OutOf, bothWays } from './counts.ts';
import type { Fit, Treatment } from './fit.ts';
import type { Baseline, PersonFacts, RiskOf } from './person.ts';
import { highestRiskTold, overYears, underEffect } from './risk.ts';
import type { Interval } from './source.ts';
import { type Effect, type Outcome, type Trial, effectOn } from './trials/trial.ts';

/** The trials count any break that was felt; instruments count the hip, or four sorts of bone. */
const outcomeFor: Readonly<Record<RiskOf, Outcome>> = {
  'hip fracture': 'hip fracture',
  'major fracture': 'any clinical fracture',
  'any fracture': 'any clinical fracture',
};

/** Shares between 0 and 1. `spared` is negative where more would break a bone with the treatment. */
export type Estimate = {
  readonly without: number;
  readonly withTreatment: number;
  readonly spared: number;
  readonly sparedRange: Interval;
};

export type Benefit = {
  readonly treatment: Treatment;
  readonly of: RiskOf;
  readonly years: number;
  readonly trial: Trial;
  readonly effect: Effect;
  readonly estimate: Estimate;
  readonly stretched: readonly string[];
};
export type NoBenefitTold = { readonly treatment: Treatment; readonly of: RiskOf; readonly says: string };

/** `years`: the time the whole sheet is told for. */
export function benefitOf(
  treatment: Treatment,
  { trial, fits, says }: Fit,
  baseline: Baseline,
  person: PersonFacts,
  years: number,
): Benefit | NoBenefitTold {
  const told = { treatment, of: baseline.of };
  if (!fits || trial === undefined) return { ...told, says };
  const effect = effectOn(trial, outcomeFor[baseline.of]);
  if (effect?.relative === undefined || effect.relative.interval === 'not published where we looked')
    return { ...told, says: 'The trial does not tell this with a range.' };
  const { measure, value, interval } = effect.relative;
  const risk = (percent: number): number => overYears(percent / 100, baseline.years, years);
  const without = risk(baseline.percent);
  const low = risk(baseline.range?.lowPercent ?? baseline.percent);
  const high = risk(baseline.range?.highPercent ?? baseline.percent);
  if (high > highestRiskTold)
    return { ...told, says: 'This risk is so high that no trial can tell how much of it a treatment would take away.' };
  const sparedAt = (share: number, ratio: number): number => share - underEffect(share, measure, ratio);
  const corners = [low, high].flatMap((share) => [sparedAt(share, interval.from), sparedAt(share, interval.to)]);
  const spared = sparedAt(without, value);
  return {
    ...told,
    years,
    trial,
    effect,
    estimate: {
      without,
      withTreatment: without - spared,
      spared,
      sparedRange: { from: Math.min(...corners), to: Math.max(...corners) },
    },
    stretched: stretchedBy(trial, effect, baseline, person, years),
  };
}

/** Where the sum goes further than the trial or the instrument did: said beside the number. */
function stretchedBy(
  trial: Trial,
  effect: Effect,
  { of, years: told, percent }: Baseline,
  { ageYears, dosesGiven }: PersonFacts,
  years: number,
): readonly string[] {
  const without = overYears(percent / 100, told, years) * 100;
  const inTrial = effect.untreated?.percent;
  return [
    ...(of === 'major fracture'
      ? ['Your risk counts breaks of hip, spine, wrist and upper arm. The trial counted any break that was felt.']
      : []),
    ...(told === years
      ? []
      : told > years
        ? [`Your risk was worked out for ${told} years. We spread it evenly over them. In truth it changes with time.`]
        : [
            `Your risk was worked out for ${told === 1 ? 'one year' : `${told} years`} only. We stretched it to ${years}.`,
          ]),
    ...(trial.years === years ? [] : [`The trial ran for ${trial.years} years.`]),
    ...(ageYears === undefined
      ? ['Your age is not known to us. We cannot tell if the trial took people as old as you.']
      : trial.ages !== undefined && (ageYears < trial.ages.from || ageYears > trial.ages.to)
        ? [`The trial took people from ${trial.ages.from} to ${trial.ages.to} years. You are ${ageYears}.`]
        : []),
    ...(inTrial === undefined || inTrial.toFixed(1) === without.toFixed(1)
      ? []
      : [
          `In the trial the risk without treatment was ${inTrial} in 100. Yours is ${without > inTrial ? 'higher' : 'lower'}, at ${without.toFixed(1)}.`,
        ]),
    ...(dosesGiven > 0 ? ['The trial counted from the first dose. You have had a dose already.'] : []),
  ];
}

export type BenefitCounts = {
  readonly without: BothWays;
  readonly withTreatment: BothWays;
  readonly spared: number;
  readonly sparedRange: Interval;
};

/**
 * As whole people. The number without treatment and the number spared are each rounded once, and the number with treatment is
 * what is left, so that the picture adds up and a higher risk never shows fewer spared.
 */
export function countsOf({ without, spared, sparedRange }: Estimate, of: OutOf): BenefitCounts {
  const before = bothWays(without, of);
  const fewer = Math.round(spared * of);
  return {
    without: before,
    withTreatment: { have: before.have - fewer, haveNot: before.haveNot + fewer },
    spared: fewer,
    sparedRange: { from: Math.round(sparedRange.from * of), to: Math.round(sparedRange.to * of) },
  };
}
