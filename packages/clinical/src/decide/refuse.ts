/** Refusals are gathered, all of them, and named in the order of `refusalNames`. */
import { plural } from '../kinds-texts/words.ts';
import type { Draft } from '../ledger/entry.ts';
import type { Role } from '../ledger/role.ts';
import { type Refusal, type RefusalName, refusalNames } from './refusal.ts';
import type { Decided } from './surroundings.ts';

const place = new Map<RefusalName, number>(refusalNames.map((name, index) => [name, index]));

export const refusal = (name: RefusalName, says: string, more: { field?: string; remedy?: string } = {}): Refusal => ({
  name,
  says,
  ...more,
});

/** The drafts if nothing was refused; otherwise every refusal in order. */
export function decided(refusals: readonly Refusal[], drafts: () => readonly Draft[]): Decided {
  const [first, ...rest] = refusals.toSorted((a, b) => (place.get(a.name) ?? 0) - (place.get(b.name) ?? 0));
  return first === undefined ? { drafts: drafts() } : { refusals: [first, ...rest] };
}

export const notYours = (role: Role, what: string, roles: readonly Role[]): Refusal =>
  refusal('not-yours-to-do', `As ${role} you may not ${what}.`, { remedy: `This is for: ${plural(roles)}.` });
