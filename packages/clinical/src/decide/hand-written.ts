/** Which kinds a person writes line by line. The others come out of an act that checks or computes more than a line can. */
import { type KindName, entryKinds, kindNames } from '../kinds/index.ts';
import type { ActName } from './act.ts';

const writtenBy: Partial<Record<KindName, ActName>> = {
  'place-booked': 'book',
  'place-given-up': 'give up place',
  'go-decision': 'decide',
  'second-check': 'second check',
  'infusion-started': 'start infusion',
  'dose-held': 'start infusion',
  'infusion-paused': 'pause infusion',
  'infusion-resumed': 'resume infusion',
  'infusion-finished': 'finish infusion',
  withdrawal: 'withdraw',
  'moved-here': 'move entry',
  'advice-call': 'write advice call',
  'same-person': 'may be one',
};

/** The act that writes a kind, where it is not written by hand. */
export const actThatWrites = (kind: KindName): ActName | undefined => writtenBy[kind];

export const handWrittenKinds: readonly KindName[] = kindNames.filter(
  (kind) => entryKinds[kind].of === 'patient' && writtenBy[kind] === undefined,
);

/**
 * What a register can bring in: history. Consent, prescriptions, signatures and decisions are a person's own and are made
 * here. Results brought in count only once a registered person has signed them.
 */
export const historyKinds: ReadonlySet<KindName> = new Set([
  'identity',
  'contact',
  'referral',
  'triage',
  'result',
  'weight',
  'height',
  'dental',
  'condition',
  'surgery',
  'fracture',
  'bone-density',
  'spine-imaging',
  'adherence',
  'symptom',
  'allergy',
  'medicine',
  'dose',
  'reaction',
  'died',
  'illness',
  'well-since',
  'vitamin-d-maintenance',
]);
