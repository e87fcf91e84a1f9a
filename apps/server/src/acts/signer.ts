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
import type { FastifyRequest } from 'fastify';
import { Refused } from '../problem.ts';
import { headersOf } from '../sign-in/cookie-headers.ts';
import { tooManyTries, wrongNameOrPassword } from '../routes/sign-in.ts';
import type { Member, SignedIn } from '../sign-in/accounts.ts';
import {
  isShared,
  letStand,
  provenQuickly,
  severalGroups,
  signatureNeeded,
  signingPlaceOf,
  standingSigner,
  writtenByAnother,
} from './shared-screen.ts';
import { isOfSeveralGroups, stepGroupOf } from './step-group.ts';

export async function signerOf(
  { act, role, signedBy, deviceAt }: Pick<ActBody, 'act' | 'role' | 'signedBy' | 'deviceAt'>,
  signedIn: SignedIn,
  request: FastifyRequest,
  atHand: AtHand,
): Promise<Author | Refused> {
  const headers = headersOf(request);
  if (isOfSeveralGroups(act) && 'patient' in act) {
    const place = await signingPlaceOf(act.patient, signedIn, headers, atHand);
    if (place !== undefined) return severalGroups;
  }
  const member =
    signedBy === undefined
      ? await signerHere({ act, deviceAt }, signedIn, headers, atHand)
      : 'username' in signedBy
        ? await provenByPassword(signedBy, { act, deviceAt }, signedIn, request, atHand)
        : await provenQuickly(signedBy, act, headers, atHand);
  if (member instanceof Refused) return member;
  const named = role === undefined ? undefined : member.roles.find((one) => one === role);
  if (role !== undefined && named === undefined) return refused(`You do not hold the role "${role}".`);
  const withdrawn = act.name === 'withdraw' ? await kindOf(act, atHand) : undefined;
  const chosen = named ?? member.roles.find((one) => mayDo(one, act, withdrawn)) ?? member.roles[0];
  return chosen === undefined ? refused('You hold no role here.') : { staff: member.staff, role: chosen };
}

const refused = (says: string): Refused =>
  new Refused(403, 'not-yours-to-do', says, { reasons: [{ name: 'not-yours-to-do', says, field: 'role' }] });

/**
 * Nobody proved anything with this act. Where steps are signed that is for whoever signed the group of steps; elsewhere the
 * person signed in signs. What was written without a network is signed by itself: whoever has signed here since need not be
 * who wrote it.
 */
async function signerHere(
  { act, deviceAt }: Pick<ActBody, 'act' | 'deviceAt'>,
  signedIn: SignedIn,
  headers: Headers,
  atHand: AtHand,
): Promise<Member | Refused> {
  const group = stepGroupOf(act);
  if (group === undefined || !('patient' in act)) return signedIn.member;
  const place = await signingPlaceOf(act.patient, signedIn, headers, atHand);
  if (place === undefined) return signedIn.member;
  const signer = deviceAt === undefined ? standingSigner(place, act.patient, group, atHand) : undefined;
  if (signer === undefined) return signatureNeeded(place);
  letStand(place, act.patient, group, signer.staff, atHand);
  return signer;
}

/** By name and password, at any screen; where steps are signed the signature covers its group of steps like a quick one. */
async function provenByPassword(
  proof: Extract<NonNullable<ActBody['signedBy']>, { username: string }>,
  { act, deviceAt }: Pick<ActBody, 'act' | 'deviceAt'>,
  signedIn: SignedIn,
  request: FastifyRequest,
  atHand: AtHand,
): Promise<Member | Refused> {
  const member = await provenBy(proof, request.ip, atHand);
  const group = stepGroupOf(act);
  if (member instanceof Refused || group === undefined || !('patient' in act)) return member;
  const place = await signingPlaceOf(act.patient, signedIn, headersOf(request), atHand);
  if (place !== undefined && deviceAt !== undefined && !isShared(place) && member.staff !== signedIn.member.staff)
    return writtenByAnother;
  if (place !== undefined) letStand(place, act.patient, group, member.staff, atHand);
  return member;
}

export async function provenBy(
  { username, password }: Extract<NonNullable<ActBody['signedBy']>, { username: string }>,
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
