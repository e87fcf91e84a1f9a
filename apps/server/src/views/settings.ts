/** Settings: the service, its units, its staff, and what is still to be done before patients can be treated. */
import type { SettingsView } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import { certificateViewOf } from '../certificate.ts';
import { wallNow } from '../clock.ts';
import { staffViewOf } from '../routes/staff.ts';
import { everySession } from './sessions.ts';
import { unitViewOf } from './units.ts';

export const serviceName = async ({ store }: AtHand): Promise<string> =>
  (await store.setting('service')) ?? 'Twelvemonth';

/** As many of the newest tries to sign at a shared screen are looked through for refused ones. */
const triesShown = 50;

export async function settingsOf(atHand: AtHand): Promise<SettingsView> {
  const units = await atHand.units.all();
  const staff = atHand.accounts.everyone();
  const has = (role: string): boolean => staff.some(({ active, roles }) => active && roles.some((one) => one === role));
  const sessions = await everySession(atHand);
  const devices = await atHand.devices.all();
  const tries = await atHand.signatureLog.newest(triesShown);
  return {
    service: await serviceName(atHand),
    demo: atHand.demo !== undefined,
    ...(atHand.certificate === undefined ? {} : { certificate: certificateViewOf(atHand.certificate, wallNow()) }),
    units: units.map(unitViewOf),
    staff: staff.map(staffViewOf),
    devices: devices.map(({ id, name, unit, enrolledBy, enrolledAt, active }) => ({
      device: id,
      name,
      unit,
      by: atHand.accounts.nameOf(enrolledBy),
      at: enrolledAt,
      active,
    })),
    signaturesRefused: tries
      .filter(({ outcome }) => outcome !== 'proven')
      .map(({ at, device, staff: who, how, outcome }) => ({
        at,
        device: devices.find(({ id }) => id === device)?.name ?? 'a screen that is not enrolled',
        staff: atHand.accounts.nameOf(who),
        how,
        outcome,
      })),
    setUp: [
      { what: 'an administrator', done: has('administrator'), how: 'the first visitor on this machine becomes one' },
      {
        what: 'a prescriber and a pharmacist, two people',
        done: has('prescriber') && has('pharmacist'),
        how: 'add them under Staff: they sign the protocol',
      },
      {
        what: 'two registered people at the chair',
        done:
          staff.filter(
            ({ active, roles }) => active && roles.some((role) => role === 'nurse' || role === 'nurse in charge'),
          ).length >= 2,
        how: 'add them under Staff: nobody makes the second check of their own preparation',
      },
      {
        what: 'a unit with its hours, chairs, session days and blood days',
        done: units.length > 0,
        how: 'describe it under Units',
      },
      {
        what: 'a protocol in force',
        done: units.length > 0 && units.every(({ protocol }) => protocol !== undefined),
        how: 'begin from a starter under Protocol, fill in the empty numbers, have both sign',
      },
      {
        what: 'a session to book into',
        done:
          units.length > 0 &&
          sessions.some(({ on, unit }) => on >= (units.find(({ unit: { id } }) => id === unit)?.today ?? 0)),
        how: 'plan one under Sessions',
      },
      {
        what: 'people on the register',
        done: (await atHand.people.all()).length > 0,
        how: 'register someone, or bring in the register you keep now',
      },
    ],
  };
}
