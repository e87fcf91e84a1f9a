/**
 * Which trial speaks for this person and this treatment, if one does. A trial of other people is not used: it is said that
 * there is none. Whom each trial took: the trials themselves (trials/).
 */
import { addDays, addMonths } from '@twelvemonth/clinical';
import type { PersonFacts } from './person.ts';
import { afterAHipFracture, daysAfterRepair } from './trials/after-a-hip-fracture.ts';
import { injectionInWomen, tabletsInWomen } from './trials/alternatives.ts';
import { oneDripInCareHomes, threeMoreDoses, yearlyDripInMen, yearlyDripOnSteroids } from './trials/few-trials.ts';
import type { Trial } from './trials/trial.ts';
import { yearlyDripInWomen } from './trials/yearly-drip-in-women.ts';

export type Treatment = 'yearly drip' | 'weekly tablets' | 'injection every six months';
export const treatments: readonly Treatment[] = ['yearly drip', 'weekly tablets', 'injection every six months'];

export type Fit = {
  /** The trial nearest to this person; undefined where there is none at all. */
  readonly trial: Trial | undefined;
  /** Whether its effect may be put to this person's own risk. */
  readonly fits: boolean;
  /** Why this one, or why none: a sentence a person can read. */
  readonly says: string;
};

/** After how many doses the trial of the first three no longer speaks for what more would bring. */
const dosesOfFirstTrial = 3;
const monthsOfHipTrial = 24;

export function fitOf(treatment: Treatment, person: PersonFacts, veryFrail: boolean): Fit {
  const without = (says: string, trial?: Trial): Fit => ({ trial, fits: false, says });
  const isDrip = treatment === 'yearly drip';
  if (person.sex === undefined)
    return without('It is not written down if you are a woman or a man. Trials differ by that.');
  if (veryFrail)
    return isDrip
      ? without(
          'People who need help with most things were left out of the large trials. One small trial could not tell if the drip spares breaks.',
          oneDripInCareHomes,
        )
      : without('People who need help with most things were left out of the large trials.');
  if (person.onSteroid)
    return isDrip
      ? without(
          'You take a steroid. The trial of the drip in people on steroids looked at bone density. It did not count enough breaks to tell.',
          yearlyDripOnSteroids,
        )
      : without('You take a steroid. We hold no trial of this in people on steroids that counted breaks.');
  const hip = hipFit(person);
  if (hip !== undefined) return isDrip ? hip : without('We hold no trial of this right after a broken hip.');
  if (person.sex === 'male')
    return isDrip
      ? without(
          'The trial in men looked at the spine on X-ray. It was too small to tell about hips and other bones.',
          yearlyDripInMen,
        )
      : without('The trials of this that we hold were in women.');
  if (person.dosesInARow >= dosesOfFirstTrial)
    return isDrip
      ? without(
          'You have had three doses. A trial of three more found fewer spine breaks on X-ray. Other breaks were as many.',
          threeMoreDoses,
        )
      : without('We hold no trial of a change to this after three drips.');
  return { trial: womenTrials[treatment], fits: true, says: `This comes from ${womenTrials[treatment].title}.` };
}

const womenTrials: Readonly<Record<Treatment, Trial>> = {
  'yearly drip': yearlyDripInWomen,
  'weekly tablets': tabletsInWomen,
  'injection every six months': injectionInWomen,
};

/** The trial after a broken hip took people whose first dose came within 90 days of the repair, and followed them two years. */
function hipFit({ hip, today, firstDoseSinceHip }: PersonFacts): Fit | undefined {
  if (hip === undefined || addMonths(hip.on, monthsOfHipTrial) < today) return undefined;
  if (addDays(hip.on, daysAfterRepair) < (firstDoseSinceHip ?? today)) return undefined;
  return hip.repaired
    ? { trial: afterAHipFracture, fits: true, says: `This comes from ${afterAHipFracture.title}.` }
    : {
        trial: afterAHipFracture,
        fits: false,
        says: 'The trial after a broken hip took people whose hip had been repaired. Yours was not, or it is not written down.',
      };
}
