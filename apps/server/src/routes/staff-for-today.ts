/**
 * A nurse from the bank, for today. Without an account of their own they would sign under somebody else's name (hazard 107);
 * with one that a single person can make, that person could be both hands of a second check. So the nurse in charge makes it,
 * another registered person proves that they saw who it is, and it ends with the day.
 */
import { plainDate, registrants } from '@twelvemonth/clinical';
import type { FastifyInstance } from 'fastify';
import { randomUUID } from 'node:crypto';
import { doAct } from '../acts/do-act.ts';
import { provenBy } from '../acts/signer.ts';
import type { AtHand } from '../at-hand.ts';
import { Refused, notHere } from '../problem.ts';
import { serveRoute } from '../serve-route.ts';
import type { ForToday, Member } from '../sign-in/accounts.ts';
import { hashOfPassword } from '../sign-in/passwords.ts';
import { wrongNameOrPassword } from './sign-in.ts';
import { nameTaken, staffViewOf } from './staff.ts';

const refused = (name: string, field: string, says: string, remedy: string): Refused =>
  new Refused(422, name, says, { reasons: [{ name, says, field, remedy }] });

/** The account ends when the next day of the unit begins. */
function dayOf(atHand: AtHand, zone: string): Pick<ForToday, 'lastDay' | 'endsAt'> {
  const lastDay = plainDate(atHand.clock.local(zone).today);
  const next = Temporal.PlainDate.from(lastDay).add({ days: 1 }).toZonedDateTime(zone);
  return { lastDay, endsAt: next.toInstant().toString({ smallestUnit: 'millisecond' }) };
}

function witnessRefused(witness: Member, madeBy: string): Refused | undefined {
  const { staff, roles, forToday } = witness;
  return staff !== madeBy && forToday === undefined && roles.some((role) => registrants.includes(role))
    ? undefined
    : refused(
        'second-person-needed',
        'witnessUsername',
        'Another registered person who works here, not only for today, proves who has come.',
        'ask one of them to look at the registration and to sign here',
      );
}

const asWritten = (registration: string): string => registration.replaceAll(/[^\p{L}\p{N}]/gu, '').toUpperCase();

/** Two accounts of one person would be two pairs of hands. */
function isHereAlready(registration: string, username: string, { accounts }: AtHand): boolean {
  return accounts
    .everyone()
    .some(
      ({ forToday, username: theirs }) =>
        forToday !== undefined && theirs !== username && asWritten(forToday.registration) === asWritten(registration),
    );
}

/** A wrong password is said beside the field it was typed in. */
async function proven(
  proof: { readonly username: string; readonly password: string },
  field: string,
  address: string,
  atHand: AtHand,
): Promise<Member | Refused> {
  const member = await provenBy(proof, address, atHand);
  return member instanceof Refused && member.name === 'signature-not-proven'
    ? refused(member.name, field, wrongNameOrPassword, 'type it anew')
    : member;
}

export function serveStaffForToday(app: FastifyInstance, atHand: AtHand): void {
  const { accounts } = atHand;
  serveRoute(app, atHand, 'addStaffForToday', async ({ body, who, request }) => {
    const unit = await atHand.units.named(body.unit);
    if (unit === undefined) return notHere('unit');
    const self = await proven(
      { username: who.member.username, password: body.ownPassword },
      'ownPassword',
      request.ip,
      atHand,
    );
    if (self instanceof Refused) return self;
    const witness = await proven(
      { username: body.witnessUsername, password: body.witnessPassword },
      'witnessPassword',
      request.ip,
      atHand,
    );
    if (witness instanceof Refused) return witness;
    const madeBy = who.member.staff;
    const notAWitness = witnessRefused(witness, madeBy);
    if (notAWitness !== undefined) return notAWitness;
    if (isHereAlready(body.registration, body.username, atHand))
      return refused(
        'name-taken',
        'registration',
        'Somebody with this registration was here before under another username.',
        'use the username they had then',
      );
    const forToday: ForToday = {
      ...dayOf(atHand, unit.unit.zone),
      registration: body.registration,
      addedBy: madeBy,
      witness: witness.staff,
    };
    if (accounts.named(body.username)?.forToday?.closed === true)
      return refused(
        'not-yours-to-do',
        'username',
        'An administrator closed this account.',
        'ask an administrator, who alone may open it again',
      );
    const member = await openedForToday(body, forToday, atHand);
    if (member === 'name-taken') return nameTaken();
    for (const what of body.shown) {
      const written = await doAct(atHand, {
        id: randomUUID(),
        act: {
          name: 'record competence',
          unit: body.unit,
          body: {
            staff: member.staff,
            role: 'nurse',
            what,
            until: plainDate(atHand.clock.local(unit.unit.zone).today),
          },
        },
        by: { staff: madeBy, role: 'nurse in charge' },
      });
      if (written instanceof Refused) return written;
    }
    return staffViewOf(accounts.member(member.staff) ?? member);
  });
}

type NewForToday = {
  readonly name: string;
  readonly username: string;
  readonly password: string;
  readonly unit: string;
};

/** Who was here before for a day is opened again for this one, under the same name in the notes; nobody else's account is touched. */
async function openedForToday(
  { name, username, password, unit }: NewForToday,
  forToday: ForToday,
  { accounts, events }: AtHand,
): Promise<Member | 'name-taken'> {
  const before = accounts.named(username);
  if (before === undefined)
    return accounts.add({ name, username, roles: ['nurse'], unit, forToday }, await hashOfPassword(password));
  const isTheirs =
    before.forToday !== undefined &&
    asWritten(before.forToday.registration) === asWritten(forToday.registration) &&
    before.name === name;
  if (!isTheirs) return 'name-taken';
  const again = await accounts.change(before.staff, { roles: ['nurse'], active: true, password, forToday });
  events.endOf(before.staff);
  return again ?? 'name-taken';
}
