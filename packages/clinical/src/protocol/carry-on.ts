/**
 * What speaks for carrying on after the planned doses, as the rule sheet lists it. Guidelines differ, so the list is the unit's.
 * A review has each answered; it decides nothing: a prescriber does.
 */
import { z } from 'zod';
import { shortText, textField } from '../kinds/fields.ts';
import type { NumberKey } from './number-keys.ts';
import { sourceStatus } from './sourced-number.ts';

type ToNumber = (key: NumberKey) => string;
/** What the notes can answer, in words with the sheet's numbers put in. */
const answeredFromNotes = {
  age: (number: ToNumber) => `${number('continueFromAge')} years old or more`,
  'hip or spine fracture': () => 'a hip or spine fracture at any time',
  'fracture on treatment': () => 'a fracture on treatment',
  'hip T-score': (number: ToNumber) => `hip T-score of ${number('continueHipTScore')} or below`,
  steroid: (number: ToNumber) => `on ${number('steroidMgPerDay')} mg of prednisolone a day or more`,
} as const;
export type AnsweredFromNotes = keyof typeof answeredFromNotes;
export const isAnsweredFromNotes = (id: string): id is AnsweredFromNotes => Object.hasOwn(answeredFromNotes, id);

export const carryOnSchema = z
  .object({
    /** One that the notes can answer, or a name of its own. */
    id: shortText,
    /** The words in which the prescriber is asked what the notes cannot answer. */
    asks: textField.optional(),
    source: textField,
    status: sourceStatus.default('local decision'),
  })
  .readonly()
  .refine(({ id, asks }) => isAnsweredFromNotes(id) === (asks === undefined), {
    path: ['asks'],
    message: 'the words in which the prescriber is asked; the notes’ own have theirs',
  });
export type CarryOn = z.infer<typeof carryOnSchema>;

export const carryOnAsks = ({ id, asks = id }: CarryOn, number: ToNumber): string =>
  isAnsweredFromNotes(id) ? answeredFromNotes[id](number) : asks;
