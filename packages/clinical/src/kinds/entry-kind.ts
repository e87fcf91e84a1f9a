/**
 * An entry kind is defined once, in a file of its own: its body, who may write it, how it reads, an example.
 * The form, the check of what comes in, the notation, the help page and the test generators derive from it.
 */
import type { z } from 'zod';
import type { Draft, Entry } from '../ledger/entry.ts';
import type { Role } from '../ledger/role.ts';
import type { SubjectKind } from '../ledger/subject.ts';

export type EntryKind<Name extends string = string, Schema extends z.ZodType = z.ZodType> = {
  readonly name: Name;
  readonly of: SubjectKind;
  /** Current version of the body's shape. */
  readonly shape: number;
  readonly body: Schema;
  /** Roles that may write it. */
  readonly writes: readonly Role[];
  /** What a person reads in a list of entries. */
  readonly label: string;
  /** One line under the form field. */
  readonly help: string;
  readonly example: z.infer<Schema>;
};

export const entryKind = <const Name extends string, Schema extends z.ZodType>(
  definition: EntryKind<Name, Schema>,
): EntryKind<Name, Schema> => definition;

export type BodyOf<Kind> = Kind extends EntryKind<string, infer Schema> ? z.infer<Schema> : never;
export type NameOf<Kind> = Kind extends EntryKind<infer Name> ? Name : never;
export type EntryOf<Kind> = Entry<NameOf<Kind>, BodyOf<Kind>>;
export type DraftOf<Kind> = Draft<NameOf<Kind>, BodyOf<Kind>>;
