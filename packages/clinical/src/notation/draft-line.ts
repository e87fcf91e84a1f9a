/**
 * What stands on one line of a ledger as text: a draft, and beside it what only a written entry has, where the text says it.
 * An entry is one too, so that drafts and entries print alike.
 */
import type { KindName } from '../kinds/index.ts';
import { isKindName, kindNamed } from '../kinds/index.ts';
import type { Author, Draft, Instant, Uuid } from '../ledger/entry.ts';
import type { Subject } from '../ledger/subject.ts';
import { referenceFields } from './value-text.ts';

export type NotedDraft = Draft & {
  /** The label other lines name it by. */
  readonly id?: Uuid;
  readonly author?: Author;
  readonly recordedAt?: Instant;
};

/** Whose notes they are where the text does not say. */
export const usualPerson: Subject = 'patient/person';
export const usualZone = 'Europe/London';
/** When a person line without a date was true. */
export const undated = '2000-01-01';

/** Who writes an entry where the text does not say: a nurse if a nurse may, else the first who may. */
export function usualAuthor(kind: string): Author {
  const writes = isKindName(kind) ? kindNamed(kind).writes : [];
  const role = writes.includes('nurse') ? 'nurse' : (writes[0] ?? 'nurse');
  return { staff: staffOfRole(role), role };
}
export const staffOfRole = (role: string): string => role.replaceAll(' ', '-');

/** A result written with the word "signed" and no label of its own is known by its place among the lines. */
export const labelOfSigned = (index: number): Uuid => `signed-${index + 1}`;

/** Words that may follow any entry on its line; a name of staff that is one of them is quoted. */
export const wordsAfter: readonly string[] = ['signed', 'corrects', 'by', 'device', 'written'];

export const kindOf = (draft: NotedDraft): KindName | undefined => (isKindName(draft.kind) ? draft.kind : undefined);

/** The labels of the other lines a draft names: the one it corrects, and those its body is about. */
export function referencesOf(draft: NotedDraft): readonly Uuid[] {
  const fields = referenceFields(draft.kind).flatMap((field) => {
    const value = (draft.body as Record<string, unknown> | null)?.[field];
    return Array.isArray(value) ? value.map(String) : typeof value === 'string' ? [value] : [];
  });
  return draft.amends === undefined ? fields : [draft.amends, ...fields];
}
