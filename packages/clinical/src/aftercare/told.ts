/** What an aftercare entry told, as the red-flag rules read it, and what was not asked. */
import { type Day, day } from '../calendar/day.ts';
import { type BodyOfKind } from '../kinds/index.ts';
import { type ReactionSymptom, reactionSymptoms } from '../kinds/aftercare.ts';
import type { Fact } from '../record/patient-record.ts';
import {
  type DangerSign,
  type RedFlag,
  type RedFlagLimits,
  type Told,
  dangerSignNames,
  redFlagsIn,
} from './danger-signs.ts';

type Body = BodyOfKind<'aftercare'>;
export type Asked = Extract<Body, { outcome: 'asked' }>;

export const toldIn = (body: Asked, on: Day): Told => ({
  signs: body.signs,
  feels: body.feels,
  temperatureCelsius: body.temperatureCelsius,
  feverDays: feverDays(body, on),
  drinks: body.drinks,
  paracetamol: body.paracetamol,
  severeAches: body.felt.some(({ what, severity }) => what === 'aching muscles or joints' && severity === 'severe'),
});

/** How long a fever has lasted or did last; undefined: none was told. */
function feverDays({ felt }: Asked, on: Day): number | undefined {
  const fever = felt.find(({ what }) => what === 'fever or shivering');
  return fever === undefined ? undefined : (fever.endedOn === undefined ? on : day(fever.endedOn)) - day(fever.beganOn);
}

export const redFlagsOfEntry = (
  { body, on }: Fact<'aftercare'>,
  limits: RedFlagLimits | undefined,
): readonly RedFlag[] => (body.outcome === 'asked' ? redFlagsIn(toldIn(body, on), limits) : []);

/** Questions of the script that have no answer: the line went dead, or nobody asked. */
export const notAsked = (body: Asked): readonly (DangerSign | ReactionSymptom)[] => [
  ...dangerSignNames.filter((sign) => !body.signs.includes(sign) && !body.notSigns.includes(sign)),
  ...reactionSymptoms.filter(
    (symptom) => !body.felt.some(({ what }) => what === symptom) && !body.notFelt.includes(symptom),
  ),
];

/** Every danger sign was asked: the contact counts. */
export const isWhole = (body: Asked): boolean =>
  !notAsked(body).some((one) => dangerSignNames.some((sign) => sign === one));
