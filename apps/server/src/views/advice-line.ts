/** The advice line of a unit: who may take a red flag on, and the calls that still wait for somebody. */
import {
  type Role,
  entryText,
  flagsIn,
  openCallsOf,
  plainDate,
  registrants,
  unknownCallsOf,
} from '@twelvemonth/clinical';
import type { WaitingCallsView } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import type { UnitNow } from '../register/units.ts';
import { fullName } from './person-words.ts';

/** A red flag goes to a prescriber first. */
const order: readonly Role[] = ['prescriber', ...registrants.filter((role) => role !== 'prescriber')];

export async function adviceLineOf({ accounts, notes, people }: AtHand, { unit }: UnitNow): Promise<WaitingCallsView> {
  const takers = accounts
    .everyone()
    .filter(({ active }) => active)
    .flatMap(({ name, roles }) => {
      const role = order.find((one) => roles.includes(one));
      return role === undefined ? [] : [{ name, role }];
    })
    .toSorted((a, b) => order.indexOf(a.role) - order.indexOf(b.role) || (a.name < b.name ? -1 : 1));
  const open = (await people.all())
    .filter(({ unitId }) => unitId === unit.id)
    .flatMap((person) =>
      openCallsOf(person.record).map(({ call, waitsFor, due }) => ({
        patient: person.patient,
        name: fullName(person),
        call: call.id,
        says: entryText(call),
        waitsFor,
        due: plainDate(due),
      })),
    )
    .toSorted((a, b) => (a.due < b.due ? -1 : 1));
  return {
    unit: unit.id,
    unitName: unit.name,
    takers,
    open,
    unknown: unknownCallsOf(await notes.of('unit', unit.id)).map((call) => ({
      call: call.id,
      says: entryText(call),
      at: call.at ?? call.recordedAt,
      by: accounts.nameOf(call.author.staff),
      redFlag: flagsIn(call.body.redFlags).length > 0,
    })),
  };
}
