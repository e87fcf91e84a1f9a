/** The chains of steps a unit runs, made from its own minutes. */
import type { Dose, Step, Visit } from './day.ts';

/** The unit's settings, in ticks of its day. */
export type StepTicks = {
  readonly observations: number;
  readonly checklist: number;
  readonly cannula: number;
  readonly preparation: number;
  readonly secondCheck: number;
  /** A prepared dose may stand at most this long. */
  readonly keeps: number;
  readonly removal: number;
  readonly watch: number;
  readonly leave: number;
  readonly injection: number;
};

/** Starting values for a grid of 5 minutes: common practice, no source. A unit sets its own. */
export const usualStepTicks: StepTicks = {
  observations: 2,
  checklist: 2,
  cannula: 2,
  preparation: 2,
  secondCheck: 1,
  keeps: 6,
  removal: 1,
  watch: 6,
  leave: 1,
  injection: 1,
};

/** What the steps are called, in sentences too. */
export const stepNames = {
  observations: 'observations',
  checklist: 'checklist',
  cannula: 'cannula and flush',
  infusion: 'infusion',
  removal: 'removal',
  watch: 'watch',
  leaving: 'leaving',
  injection: 'injection',
} as const;

type Chain = Pick<Visit, 'steps' | 'chair' | 'watch' | 'dose'>;

const step = (name: string, ticks: number, nurse: Step['nurse'], atOnce = false): Step => ({
  name,
  ticks,
  nurse,
  atOnce,
});

const cannula = 2;
const infusion = 3;
const removal = 4;

/** An infusion in a chair, and `watchTicks` of watch afterwards; 0: none. */
export function infusionChain(ticks: StepTicks, infusionTicks: number, watchTicks: number): Chain {
  const isWatched = watchTicks > 0;
  const dose: Dose = {
    before: infusion,
    preparationTicks: ticks.preparation,
    secondCheckTicks: ticks.secondCheck,
    keepsTicks: ticks.keeps,
  };
  return {
    steps: [
      step(stepNames.observations, ticks.observations, 'whole'),
      step(stepNames.checklist, ticks.checklist, 'whole'),
      step(stepNames.cannula, ticks.cannula, 'whole'),
      step(stepNames.infusion, infusionTicks, 'shared'),
      step(stepNames.removal, ticks.removal, 'whole'),
      ...(isWatched ? [step(stepNames.watch, watchTicks, 'none', true)] : []),
      step(stepNames.leaving, ticks.leave, 'whole'),
    ],
    chair: { from: cannula, to: removal },
    watch: isWatched ? removal + 1 : null,
    dose,
  };
}

/** An injection from a filled syringe: no chair, nothing to prepare. */
export function injectionChain(ticks: StepTicks): Chain {
  return {
    steps: [
      step(stepNames.observations, ticks.observations, 'whole'),
      step(stepNames.checklist, ticks.checklist, 'whole'),
      step(stepNames.injection, ticks.injection, 'whole'),
      step(stepNames.leaving, ticks.leave, 'whole'),
    ],
    chair: null,
    watch: null,
    dose: null,
  };
}
