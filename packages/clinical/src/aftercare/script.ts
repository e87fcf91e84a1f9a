/**
 * The questions of the aftercare call, one a line, in the order in which they are asked. The same for a nurse on the telephone
 * and for a person who answers by themselves; nothing is answered beforehand. Danger signs come first after the greeting: a
 * line may go dead.
 */
import { type ReactionSymptom, reactionSymptoms } from '../kinds/aftercare.ts';
import {
  amountsDrunk,
  type DangerSign,
  dangerSignNames,
  dangerSigns,
  feelings,
  paracetamolTaken,
} from './danger-signs.ts';

export type ScriptQuestion =
  | { readonly id: 'feels' | 'drinks' | 'paracetamol'; readonly asks: string; readonly options: readonly string[] }
  | { readonly id: 'sign'; readonly sign: DangerSign; readonly asks: string }
  /** A "yes" asks on: since when, how bad, whether it is over. */
  | { readonly id: 'symptom'; readonly symptom: ReactionSymptom; readonly asks: string }
  | { readonly id: 'temperature' | 'words'; readonly asks: string };

const symptomAsks: Readonly<Record<ReactionSymptom, string>> = {
  'fever or shivering': 'Fever, or feeling hot and shivery?',
  'aching muscles or joints': 'Aching muscles, bones or joints?',
  headache: 'A headache?',
  'very tired': 'Very tired, no strength?',
  'feeling sick': 'Feeling sick, or off food?',
};

export const severityWords: Readonly<Record<'mild' | 'moderate' | 'severe', string>> = {
  mild: 'mild: does all they usually do',
  moderate: 'moderate: cannot shop, cook or clean',
  severe: 'severe: cannot wash, dress or eat alone',
};

export const aftercareScript: readonly ScriptQuestion[] = [
  { id: 'feels', asks: 'How do you feel, compared with before the dose?', options: feelings },
  ...dangerSignNames.map((sign) => ({ id: 'sign', sign, asks: dangerSigns[sign].asks }) as const),
  ...reactionSymptoms.map((symptom) => ({ id: 'symptom', symptom, asks: symptomAsks[symptom] }) as const),
  { id: 'temperature', asks: 'Have you taken your temperature? What was it?' },
  { id: 'drinks', asks: 'How much do you drink?', options: amountsDrunk },
  { id: 'paracetamol', asks: 'How do you take paracetamol?', options: paracetamolTaken },
  { id: 'words', asks: 'Is there anything else?' },
];
