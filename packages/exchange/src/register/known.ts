/** What the notes already hold of a person, as far as a register can say it again or contradict it. */
import {
  type BodyOfKind,
  type Day,
  type Entry,
  type SubjectRecord,
  factsOf,
  latest,
  localDate,
  plainDate,
  isKindName,
  quantityText,
} from '@twelvemonth/clinical';
import type { PlainDate } from '@twelvemonth/clinical';
import { factKey, resultKey } from './fact.ts';
import type { PersonName } from './similar.ts';

export type KnownPerson = PersonName & {
  readonly patient: string;
  /** Numbers of other notes of theirs that are read in these. */
  readonly otherNumbers?: readonly string[];
  /** Every fact ever written, withdrawn and corrected ones too: a file must not bring back what was taken out. */
  readonly written: ReadonlySet<string>;
  /** Laboratory values that count now: date and test to the value as text. */
  readonly results: ReadonlyMap<string, readonly string[]>;
  readonly doses: readonly { readonly on: Day; readonly medicine: string }[];
  readonly weights: readonly { readonly on: Day; readonly quantity: BodyOfKind<'weight'>['quantity'] }[];
  readonly allergies: readonly string[];
  readonly contact: BodyOfKind<'contact'> | undefined;
};

/** Undefined for notes without an identity: nothing can be matched with them. */
export function knownPerson(
  patient: string,
  entries: readonly Entry[],
  record: SubjectRecord,
): KnownPerson | undefined {
  const identity = latest(record, 'identity')?.body;
  if (identity === undefined) return undefined;
  const written = new Set<string>();
  for (const entry of entries) {
    if (!isKindName(entry.kind)) continue;
    const on = localDate(entry.effectiveAt) as PlainDate;
    written.add(factKey(entry.kind, on, entry.body));
    // A fracture the notes can date is the fracture a register mentions without a date.
    if (entry.kind === 'fracture')
      written.add(factKey('fracture', undefined, { ...(entry.body as BodyOfKind<'fracture'>), dateKnown: false }));
  }
  const results = new Map<string, string[]>();
  for (const fact of factsOf(record, 'result')) {
    const key = resultKey(plainDate(fact.on), fact.body.analyte);
    results.set(key, [...(results.get(key) ?? []), quantityText(fact.body.quantity)]);
  }
  return {
    patient,
    number: identity.number,
    otherNumbers: (record.together ?? []).flatMap(({ identities }) => identities.map(({ number }) => number)),
    family: identity.family,
    given: identity.given,
    formerNames: identity.formerNames ?? [],
    born: identity.born,
    written,
    results,
    doses: factsOf(record, 'dose').map((fact) => ({ on: fact.on, medicine: fact.body.medicine })),
    weights: factsOf(record, 'weight').map((fact) => ({ on: fact.on, quantity: fact.body.quantity })),
    allergies: factsOf(record, 'allergy').map((fact) => fact.body.answer),
    contact: latest(record, 'contact')?.body,
  };
}
