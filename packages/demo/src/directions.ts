/** A group direction of the demo: its conditions are invented, a teaching example and no unit's text. */
import { addDays, addMonths, directionsOf, plainDate, subject } from '@twelvemonth/clinical';
import { at } from './clock.ts';
import type { Life } from './life.ts';
import { type UnitId, inRole, nursesAt } from './staff.ts';
import { type World, recordIn } from './world.ts';

const IN_FORCE_MONTHS = 24;
const ORDER_LASTS_DAYS = 28;

/** Two nurses of the unit are named. A prescriber writes it two months ago, a pharmacist signs it a week later. */
export function* keepsDirection(unit: UnitId, world: World): Life {
  const from = addMonths(world.today, -2);
  yield {
    at: at(from, 10),
    act: {
      name: 'write direction',
      unit,
      body: {
        name: 'Yearly zoledronic acid, second and later doses',
        version: '1',
        regimen: 'zoledronic-acid-yearly',
        validFrom: plainDate(addDays(from, 10)),
        validUntil: plainDate(addMonths(from, IN_FORCE_MONTHS)),
        mayGive: nursesAt(unit)
          .slice(0, 2)
          .map(({ staff }) => staff),
        conditions: [
          'Has had this medicine here before, without a severe reaction',
          'No new illness or medicine since the prescriber last saw them',
          'Knows that a nurse orders under this direction, and agrees',
        ],
        orderLastsDays: ORDER_LASTS_DAYS,
      },
    },
    by: inRole('prescriber', unit, 0),
  };
  yield { at: at(addDays(from, 7), 13) };
  const written = directionsOf(recordIn(world, subject('unit', unit)))[0];
  if (written === undefined) return;
  yield {
    at: at(addDays(from, 7), 14),
    act: { name: 'sign direction', unit, body: { direction: written.entry } },
    by: inRole('pharmacist', unit, 0),
  };
}
