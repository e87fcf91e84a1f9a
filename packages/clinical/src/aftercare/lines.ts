/**
 * What is written beside the answers: the call, the reaction that next year's talk goes back to, and each sign that must be
 * cleared before another dose. Nothing is cleared here.
 */
import { type Day, day } from '../calendar/day.ts';
import type { BodyOfKind, KindName } from '../kinds/index.ts';
import { plural } from '../kinds-texts/words.ts';
import type { RedFlagName } from './danger-signs.ts';
import type { Asked } from './told.ts';

/** `on`: when it was true; a reaction on the day it began. */
type LineOf<Kind extends KindName> = { readonly kind: Kind; readonly body: BodyOfKind<Kind>; readonly on: Day };
export type AftercareLine = LineOf<'call'> | LineOf<'aftercare'> | LineOf<'reaction'> | LineOf<'symptom'>;

/** Red flags that hold every dose until somebody has looked into them, and the symptom they are written as. */
export const holding: Partial<Record<RedFlagName, BodyOfKind<'symptom'>['what']>> = {
  'thigh, hip or groin pain': 'thigh, hip or groin pain',
  'red or painful eye': 'eye pain or redness',
  'jaw or tooth trouble': 'jaw pain',
  'tingling or cramps': 'tingling or cramps',
  'new back pain, or grown shorter': 'back pain',
  'ear pain or discharge': 'other',
  'severe pain in bones, joints or muscles': 'other',
};

export function aftercareLines(answers: Asked, on: Day): readonly AftercareLine[] {
  const route =
    answers.how === 'their own answers' ? 'message' : answers.how === 'face to face' ? undefined : answers.how;
  return [
    ...(route === undefined ? [] : [{ kind: 'call', body: { route, about: 'aftercare', reached: true }, on } as const]),
    { kind: 'aftercare', body: answers, on },
    ...reactionLine(answers, on),
    ...answers.signs.flatMap((sign) => {
      const what = holding[sign];
      return what === undefined
        ? []
        : [{ kind: 'symptom', body: { what, note: `${sign}, told after the dose` }, on } as const];
    }),
  ];
}

const worst = ['severe', 'moderate', 'mild'] as const;

function reactionLine({ felt, words }: Asked, on: Day): readonly LineOf<'reaction'>[] {
  const [first] = felt;
  if (first === undefined) return [];
  const began = Math.min(...felt.map(({ beganOn }) => day(beganOn)));
  const ended = felt.every(({ endedOn }) => endedOn !== undefined)
    ? Math.max(...felt.map(({ endedOn }) => (endedOn === undefined ? on : day(endedOn))))
    : undefined;
  const what = plural(
    felt.map((one) => one.what),
    'and',
  );
  return [
    {
      kind: 'reaction',
      on: began as Day,
      body: {
        what: words === undefined ? what : `${what}: "${words}"`,
        ...(ended === undefined ? {} : { days: ended - began + 1 }),
        severity: worst.find((severity) => felt.some((one) => one.severity === severity)) ?? first.severity,
      },
    },
  ];
}
