/**
 * Signing at a shared screen: an enrolled device, in the open session of its unit, by PIN or badge of somebody who is named
 * in the opening. One signature covers the group of steps it was given for, until nobody acts for the protocol's minutes. A
 * screen that nobody enrolled asks for name and password in the same way, where the unit shares its screens at all
 * (docs/decisions/0012).
 */
import { type Act, type StaffId, sessionDayOf, sessionOf } from '@twelvemonth/clinical';
import type { ActBody } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import { Refused } from '../problem.ts';
import { tooManyTries } from '../routes/sign-in.ts';
import type { Member, SignedIn } from '../sign-in/accounts.ts';
import type { Device } from '../sign-in/devices.ts';
import { whereTheyAre } from '../views/where-they-are.ts';
import { type StepGroup, stepGroupOf } from './step-group.ts';

export type QuickProof = Exclude<NonNullable<ActBody['signedBy']>, { username: string }>;

/** A screen at which steps are signed, whoever is signed in. */
type SigningPlace = {
  /** The enrolled device, or the session of whoever is signed in elsewhere. */
  readonly screen: string;
  /** Whose signature stands for a group of steps. */
  readonly present: readonly Member[];
  /** A signature covers its steps until nobody has acted for so long. */
  readonly minutes: number;
};
/** Where somebody may sign quickly, and who may. */
export type SharedPlace = SigningPlace & { readonly device: Device };

const usualMinutes = 10;

const refused = (name: string, says: string, remedy: string): Refused =>
  new Refused(403, name, says, { reasons: [{ name, says, field: 'signedBy', remedy }] });

/** The place, or why nobody signs quickly here. */
export async function sharedPlaceOf(patient: string, headers: Headers, atHand: AtHand): Promise<SharedPlace | Refused> {
  const device = await atHand.devices.of(headers);
  if (device === undefined)
    return refused(
      'device-not-enrolled',
      'This screen is not enrolled as a shared one.',
      'sign with name and password, or ask an administrator to enrol it',
    );
  const session = await openSessionOf(patient, atHand);
  if (session === undefined)
    return refused(
      'session-not-open',
      'No open session of today holds this person.',
      'sign with name and password, or open the session',
    );
  if (session.unit !== device.unit)
    return refused('device-of-another-unit', 'This screen belongs to another unit.', 'sign with name and password');
  return { ...session, device, screen: `device ${device.id}` };
}

/** Where steps are signed: a shared screen, or any other in the open session of a unit that shares its screens. */
export async function signingPlaceOf(
  patient: string,
  { member, session: signedInAs }: SignedIn,
  headers: Headers,
  atHand: AtHand,
): Promise<SigningPlace | undefined> {
  const shared = await sharedPlaceOf(patient, headers, atHand);
  if (!(shared instanceof Refused)) return shared;
  const session = await openSessionOf(patient, atHand);
  if (session === undefined || !(await atHand.devices.sharesScreens(session.unit))) return undefined;
  // Somebody else who proves it here signs that one act: the next is not theirs because they passed by.
  return { ...session, present: [member], screen: `signed in ${signedInAs}` };
}

/** The open session of today that holds somebody: its unit, and who is named in its opening. */
async function openSessionOf(
  patient: string,
  atHand: AtHand,
): Promise<(Omit<SigningPlace, 'screen'> & { readonly unit: string }) | undefined> {
  const person = await atHand.people.of(patient);
  const { sessionId } = person === undefined ? { sessionId: undefined } : await whereTheyAre(atHand, person);
  const notes = sessionId === undefined ? undefined : await atHand.notes.of('session', sessionId);
  const session = notes === undefined ? undefined : sessionOf(notes);
  const day = notes === undefined ? undefined : sessionDayOf(notes);
  if (session === undefined || day?.state !== 'open' || day.opened === undefined) return undefined;
  const protocol = (await atHand.units.named(session.unit))?.protocol;
  return {
    unit: session.unit,
    present: day.opened.body.present.flatMap(({ staff }) => {
      const member = atHand.accounts.member(staff);
      return member?.active === true ? [member] : [];
    }),
    minutes: protocol?.number.interruptionMinutes ?? usualMinutes,
  };
}

export const isShared = (place: SigningPlace): place is SharedPlace => 'device' in place;

/** At a screen that is not shared only one person is signed in: what waited there is theirs, and nobody else signs for it. */
export const writtenByAnother: Refused = refused(
  'signature-of-another',
  'This was written without the network by whoever is signed in here: only they sign it.',
  'sign with your own name and password, or let whoever wrote it sign in',
);

/** A signature for the first of them would have covered the others too. */
export const severalGroups: Refused = refused(
  'signature-for-each-step',
  'These lines belong to different steps of the visit: each step is signed by itself here.',
  'send each step by itself',
);

/** What a step without a signature is refused with. */
export const signatureNeeded = (place: SigningPlace): Refused =>
  isShared(place)
    ? refused('signature-needed', 'This is a shared screen: say who you are.', 'sign with your PIN or badge')
    : refused(
        'signature-needed',
        'This unit shares its screens, and nobody enrolled this one: say who you are.',
        'sign with name and password, or ask an administrator to enrol this screen',
      );

type Standing = { readonly group: StepGroup; readonly staff: StaffId; readonly at: number };
/** Signatures that still cover their steps, by device and person. Nothing is lost with them but a few taps. */
export type StandingSignatures = Map<string, Standing>;
const keyOf = ({ screen }: SigningPlace, patient: string): string => `${screen} ${patient}`;

/** Who signs the steps of this group here now without proving it again. */
export function standingSigner(
  place: SigningPlace,
  patient: string,
  group: StepGroup,
  { standingSignatures, clock }: AtHand,
): Member | undefined {
  const found = standingSignatures.get(keyOf(place, patient));
  if (found === undefined || found.group !== group || group === 'second check') return undefined;
  if (clock.reading().uptimeMilliseconds - found.at > place.minutes * 60_000) return undefined;
  return place.present.find(({ staff }) => staff === found.staff);
}

/** From now on, and again from each act, the signature covers its group. */
export function letStand(place: SigningPlace, patient: string, group: StepGroup, staff: StaffId, atHand: AtHand): void {
  if (group === 'second check') return;
  const at = atHand.clock.reading().uptimeMilliseconds;
  atHand.standingSignatures.set(keyOf(place, patient), { group, staff, at });
}

/** The person a PIN or a badge proves, here and for this act. Every try is written down. */
export async function provenQuickly(
  proof: QuickProof,
  act: Act,
  headers: Headers,
  atHand: AtHand,
): Promise<Member | Refused> {
  const group = stepGroupOf(act);
  const patient = 'patient' in act ? act.patient : undefined;
  if (group === undefined || patient === undefined)
    return refused('not-by-pin', 'A PIN or a badge signs steps of a visit only.', 'sign with name and password');
  const place = await sharedPlaceOf(patient, headers, atHand);
  const how = 'badge' in proof ? 'badge' : 'PIN';
  const claimed = 'badge' in proof ? undefined : proof.staff;
  const noted = async (staff: StaffId | undefined, outcome: string): Promise<void> =>
    atHand.signatureLog.note({
      device: place instanceof Refused ? 'none' : place.device.id,
      staff: staff ?? 'nobody known',
      act: act.name,
      how,
      outcome,
    });
  if (place instanceof Refused) {
    await noted(claimed, place.name);
    return place;
  }
  const found = await proofOf(proof, place, atHand);
  await noted('staff' in found ? found.staff : claimed, 'staff' in found ? 'proven' : found.name);
  if ('staff' in found) letStand(place, patient, group, found.staff, atHand);
  return found;
}

async function proofOf(proof: QuickProof, place: SharedPlace, atHand: AtHand): Promise<Member | Refused> {
  const notProven = refused(
    'signature-not-proven',
    'The PIN or the badge is not right.',
    'try again, or sign with name and password',
  );
  const here = (staff: StaffId | undefined): Member | undefined => place.present.find((one) => one.staff === staff);
  if ('badge' in proof) {
    const attempt = atHand.attempts.begin('a badge', `device ${place.device.id}`);
    if ('waitSeconds' in attempt) return tooManyTries(attempt.waitSeconds);
    const member = here(await atHand.quickSecrets.ownerOfBadge(proof.badge));
    if (member !== undefined) attempt.succeeded();
    return member ?? notProven;
  }
  const member = here(proof.staff);
  if (member === undefined) return notProven;
  const tried = await atHand.quickSecrets.tryPin(member.staff, proof.pin);
  if (tried === 'locked')
    return refused(
      'pin-locked',
      'This PIN was wrong five times and is of no use any more.',
      'sign with name and password; set the PIN anew under PIN and badge',
    );
  return tried === 'right' ? member : notProven;
}
