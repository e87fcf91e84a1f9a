/**
 * Who signs an act: the person who is signed in or, at a shared screen, another who proves it for this one act. The role is
 * the one named, or the first of theirs that may do it.
 */
import {
  type Act,
  type ActNamed,
  type Author,
  type KindName,
  type Role,
  isKindName,
  kindNamed,
  rolesFor,
} from '@twelvemonth/clinical';
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
  const withdrawn = act.name === 'withdraw' ? await kindOf(act, atHand) : undefined;
  const chosen = named ?? member.roles.find((one) => mayDo(one, act, withdrawn)) ?? member.roles[0];
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

/** What is withdrawn says who may. */
async function kindOf(act: ActNamed<'withdraw'>, { notes }: AtHand): Promise<KindName | undefined> {
  const record = await notes.of('patient', act.patient);
  return record.all.find(({ id }) => id === act.entry)?.kind;
}

/** The role a protocol is signed in. */
const signsAs = { clinician: 'prescriber', pharmacist: 'pharmacist' } as const satisfies Record<string, Role>;

/** For lines, whoever may write every kind among them; a protocol is signed in the role that it is signed as. */
function mayDo(role: Role, act: Act, withdrawn: KindName | undefined): boolean {
  if (withdrawn !== undefined) return kindNamed(withdrawn).writes.includes(role);
  if (act.name === 'sign protocol') return role === signsAs[act.as];
  const kinds =
    act.name === 'record' ? [act.line.kind] : act.name === 'record together' ? act.lines.map(({ kind }) => kind) : [];
  return kinds.length === 0
    ? rolesFor(act.name).includes(role)
    : kinds.every((kind) => isKindName(kind) && kindNamed(kind).writes.includes(role));
}
