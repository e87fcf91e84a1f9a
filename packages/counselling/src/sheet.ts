/** The counselling sheet of one person: everything the screen and its printed twin show, as one value. */
import { shortDate } from '@twelvemonth/clinical';
import { type Benefit, type BenefitCounts, type NoBenefitTold, benefitOf, countsOf } from './benefit.ts';
import { type BothWays, type OutOf, bothWays, outOfFor } from './counts.ts';
import { type Fit, type Treatment, fitOf, treatments } from './fit.ts';
import { reactionByDose } from './harms/acute-phase.ts';
import { type Baseline, type PersonFacts, type RiskOf, newestOfEach, whyNotUsable } from './person.ts';
import type { Share } from './source.ts';
import type { Effect, Trial } from './trials/trial.ts';
import { benefitSentences, haveText, lead, treatmentText } from './words.ts';

export type ToldBenefit = {
  readonly benefit: Benefit;
  readonly counts: BenefitCounts;
  readonly sentences: readonly string[];
};

/** One kind of risk: without treatment, and under each. */
export type ToldRisk = {
  readonly of: RiskOf;
  readonly baseline: Baseline;
  readonly without: BothWays;
  readonly says: string;
  readonly under: readonly ((ToldBenefit & { readonly told: true }) | (NoBenefitTold & { readonly told: false }))[];
};

/** What the nearest trial found in the people it took: not this person's own risk. */
export type FoundInTrial = {
  readonly effect: Effect;
  readonly treated: BothWays;
  readonly untreated: BothWays;
  readonly says: string;
};

export type ToldReaction = {
  readonly dose: 1 | 2 | 3;
  readonly treated: BothWays;
  readonly untreated: BothWays;
  readonly treatedShare: Share;
  readonly untreatedShare: Share;
  readonly says: string;
};

export type Sheet = {
  readonly outOf: OutOf;
  /** Undefined where no number of this person's own can be told. */
  readonly years: number | undefined;
  readonly lead: string | undefined;
  /** Why there are no numbers of benefit; empty where there are. */
  readonly noNumbers: readonly string[];
  readonly risks: readonly ToldRisk[];
  readonly fits: Readonly<Record<Treatment, Fit>>;
  readonly found:
    | { readonly trial: Trial; readonly lead: string; readonly effects: readonly FoundInTrial[] }
    | undefined;
  readonly reactions: readonly ToldReaction[];
  readonly nextDose: number;
};

export function sheetOf(person: PersonFacts, baselines: readonly Baseline[]): Sheet {
  const newest = newestOfEach(baselines);
  const usable = newest.filter((one) => whyNotUsable(one, person) === undefined);
  // Whoever was found very frail on the newest sheet is, on all of them.
  const veryFrail = newest.toSorted((a, b) => a.workedOutOn - b.workedOutOn).at(-1)?.veryFrail ?? false;
  const fits = Object.fromEntries(treatments.map((one) => [one, fitOf(one, person, veryFrail)])) as Record<
    Treatment,
    Fit
  >;
  const drip = fits['yearly drip'];
  const years = drip.trial?.years;
  const benefits = usable.map((baseline) => ({
    baseline,
    under: years === undefined ? [] : treatments.map((one) => benefitOf(one, fits[one], baseline, person, years)),
  }));
  const told = benefits.flatMap(({ under }) => under).filter((one): one is Benefit => 'estimate' in one);
  const outOf = outOfFor(told.map(({ estimate }) => estimate.spared));
  const untold = benefits.flatMap(({ under }) => under.filter((one) => !('estimate' in one)).slice(0, 1));
  const noNumbers = reasonsForNone(newest, person, told.length > 0, untold, drip);
  return {
    outOf,
    years: told.length === 0 ? undefined : years,
    lead: told.length === 0 || years === undefined ? undefined : lead(outOf, years),
    noNumbers,
    risks: benefits.flatMap(({ baseline, under }) => riskToldOf(baseline, under, outOf)),
    fits,
    // Without a risk of the person's own no benefit is told at all, a stranger's least of all.
    found: usable.length === 0 || drip.trial === undefined ? undefined : foundIn(drip.trial, outOf),
    reactions: reactionByDose.map(({ dose, treated, untreated }) => {
      const those = bothWays(treated.percent / 100, outOf);
      const others = bothWays(untreated.percent / 100, outOf);
      return {
        dose,
        treated: those,
        untreated: others,
        treatedShare: treated,
        untreatedShare: untreated,
        says: `Dose ${dose}: ${those.have} feel ill and ${those.haveNot} do not. With a drip without medicine, ${others.have} did.`,
      };
    }),
    nextDose: person.dosesGiven + 1,
  };
}

function riskToldOf(
  baseline: Baseline,
  under: readonly (Benefit | NoBenefitTold)[],
  outOf: OutOf,
): readonly ToldRisk[] {
  const first = under.find((one): one is Benefit => 'estimate' in one);
  if (first === undefined) return [];
  const without = bothWays(first.estimate.without, outOf);
  return [
    {
      of: baseline.of,
      baseline,
      without,
      says: `Without treatment, ${haveText(baseline.of, without)}.`,
      under: under.map((one) => {
        if (!('estimate' in one)) return { ...one, told: false as const };
        const counts = countsOf(one.estimate, outOf);
        return { told: true as const, benefit: one, counts, sentences: benefitSentences(one, counts) };
      }),
    },
  ];
}

function reasonsForNone(
  newest: readonly Baseline[],
  person: PersonFacts,
  told: boolean,
  untold: readonly (Benefit | NoBenefitTold)[],
  drip: Fit,
): readonly string[] {
  if (newest.length === 0)
    return ['Your own risk is not in the notes. Without it no number can be told of what a treatment would change.'];
  const old = newest.flatMap((one) => whyNotUsable(one, person) ?? []);
  if (told || old.length === newest.length) return old;
  const why = untold.flatMap((one) => ('says' in one ? [one.says] : []));
  return [...new Set([...old, ...(why.length === 0 ? [drip.says] : why)])];
}

function foundIn(trial: Trial, outOf: OutOf): Sheet['found'] {
  const effects = trial.effects.flatMap((effect) => {
    if (effect.treated === undefined || effect.untreated === undefined) return [];
    const treated = bothWays(effect.treated.percent / 100, outOf);
    const untreated = bothWays(effect.untreated.percent / 100, outOf);
    const doubt = effect.found === 'fewer' ? '' : ' The trial could not tell these apart.';
    return [
      {
        effect,
        treated,
        untreated,
        says: `Without the drip, ${haveText(effect.outcome, untreated)}. ${treatmentText('yearly drip')}, ${haveText(effect.outcome, treated)}.${doubt}`,
      },
    ];
  });
  return {
    trial,
    lead: `In ${trial.title}, over ${trial.years} years, of every ${outOf === 100 ? '100' : '1,000'} people:`,
    effects,
  };
}

export const riskText = ({ of, percent, years, instrument, workedOutOn, range }: Baseline): string =>
  `${of} ${percent} %${range === undefined ? '' : ` (${range.lowPercent} to ${range.highPercent})`} over ${years} ${years === 1 ? 'year' : 'years'}, without treatment; ${instrument}, ${shortDate(workedOutOn)}`;
