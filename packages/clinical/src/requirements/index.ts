/** Every requirement, by name. The order in which trouble is named is the protocol's. */
import type { RequirementId } from '../protocol/requirement-ids.ts';
import { calcium } from './calcium.ts';
import { consent } from './consent.ts';
import { course } from './course.ts';
import { hipRepair } from './hip-repair.ts';
import { hypersensitivity } from './hypersensitivity.ts';
import { identity } from './identity.ts';
import { illness } from './illness.ts';
import { interval } from './interval.ts';
import { kidneyFunction } from './kidney-function.ts';
import { mineralMetabolism } from './mineral-metabolism.ts';
import { otherBoneMedicines } from './other-bone-medicines.ts';
import { pregnancy } from './pregnancy.ts';
import { prescription } from './prescription.ts';
import type { Requirement } from './requirement.ts';
import { secondaryCauses } from './secondary-causes.ts';
import { symptoms } from './symptoms.ts';
import { teethAndJaw } from './teeth-and-jaw.ts';
import { vitaminD } from './vitamin-d.ts';

export const requirements: Readonly<Record<RequirementId, Requirement>> = {
  identity,
  hypersensitivity,
  pregnancy,
  illness,
  symptoms,
  'kidney-function': kidneyFunction,
  calcium,
  'vitamin-d': vitaminD,
  'mineral-metabolism': mineralMetabolism,
  'teeth-and-jaw': teethAndJaw,
  'hip-repair': hipRepair,
  interval,
  'other-bone-medicines': otherBoneMedicines,
  course,
  prescription,
  'secondary-causes': secondaryCauses,
  consent,
};
