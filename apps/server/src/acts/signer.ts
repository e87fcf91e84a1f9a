/**
 * Who signs an act: the person who is signed in or, at a shared screen, another who proves it for this one act. The role is
 * the one named, or the first of theirs that may do it.
 */
import { type Act, type Author, type Role, isKindName, kindNamed, rolesFor } from '@twelvemonth/clinical';
import type { ActBody } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import { Refused } from '../problem.ts';
import { tooManyTries, wrongNameOrPassword } from '../routes/sign-in.ts';
import type { Member } from '../sign-in/accounts.ts';

export async function signerOf(
  { act, role, signedBy }: Pick<ActBody, 'act' | 'role' | 'signedBy'>,
  signedIn: Member,
  address: string,
  atHand: AtHand,
): Promise<Author | Refused> {
  const member = signedBy === undefined ? signedIn : await provenBy(signedBy, address, atHand);
  if (member instanceof Refused) return member;
  const named = role === undefined ? undefined : member.roles.find((one) => one === role);
  if (role !== undefined && named === undefined) return refused(`You do not hold the role "${role}".`);
  const chosen = named ?? member.roles.find((one) => mayDo(one, act)) ?? member.roles[0];
  return chosen === undefined ? refused('You hold no role here.') : { staff: member.staff, role: chosen };
}

const refused = (says: string): Refused =>
  new Refused(403, 'not-yours-to-do', says, { reasons: [{ name: 'not-yours-to-do', says, field: 'role' }] });

async function provenBy(
  { username, password }: NonNullable<ActBody['signedBy']>,
  address: string,
  { attempts, accounts }: AtHand,
): Promise<Member | Refused> {
  const attempt = attempts.begin(username, address);
  if ('waitSeconds' in attempt) return tooManyTries(attempt.waitSeconds);
  const member = await accounts.verify(username, password);
  if (member === undefined) {
    // Not 401: the person whose session it is stays signed in.
    return new Refused(403, 'signature-not-proven', wrongNameOrPassword, {
      reasons: [{ name: 'signature-not-proven', says: wrongNameOrPassword, field: 'signedBy' }],
    });
  }
  attempt.succeeded();
  return member;
}

/** For lines, whoever may write every kind among them. */
function mayDo(role: Role, act: Act): boolean {
  const kinds =
    act.name === 'record' ? [act.line.kind] : act.name === 'record together' ? act.lines.map(({ kind }) => kind) : [];
  return kinds.length === 0
    ? rolesFor(act.name).includes(role)
    : kinds.every((kind) => isKindName(kind) && kindNamed(kind).writes.includes(role));
}
