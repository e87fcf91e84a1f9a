/** The group directions of a unit, and those under which whoever asks may record an order for a person. */
import {
  type GroupDirection,
  day,
  directionTitle,
  infusionNurses,
  notInForce,
  plainDate,
  prescribedOn,
  regimenNamed,
} from '@twelvemonth/clinical';
import type { DirectionToUse, GroupDirectionRow, PharmacyView } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import type { Person } from '../register/people.ts';
import type { UnitNow } from '../register/units.ts';

export function directionsShown(
  { accounts }: AtHand,
  { unit, today, protocol }: UnitNow,
  reader: string,
): Pick<PharmacyView, 'directions' | 'nurses' | 'regimens'> {
  const nameOf = (staff: string): string => accounts.nameOf(staff);
  const signature = ({ by, on }: GroupDirection['written']) => ({ by: nameOf(by), on: plainDate(on) });
  const rows = (unit.directions ?? []).map((one): GroupDirectionRow => {
    const { body, written, signed, ended } = one;
    const why = notInForce(one, today);
    return {
      direction: one.entry,
      title: directionTitle(one),
      regimen: regimenTitle(body.regimen, protocol),
      validFrom: body.validFrom,
      validUntil: body.validUntil,
      orderLastsDays: body.orderLastsDays,
      conditions: [...body.conditions],
      mayGive: body.mayGive.map(nameOf),
      written: signature(written),
      ...(signed === undefined ? {} : { signed: signature(signed) }),
      ...(why === undefined ? {} : { notInForce: why }),
      ended: ended !== undefined,
      own: written.by === reader,
    };
  });
  return {
    directions: rows.toReversed(),
    nurses: accounts
      .everyone()
      .filter((one) => one.active && (one.unit === undefined || one.unit === unit.id))
      .filter(({ roles }) => roles.some((role) => infusionNurses.includes(role)))
      .map(({ staff, name }) => ({ staff, name })),
    regimens: protocol === undefined ? [] : protocol.sheet.regimens.map(({ id, title }) => ({ id, title })),
  };
}

const regimenTitle = (id: string, protocol: UnitNow['protocol']): string =>
  (protocol === undefined ? undefined : regimenNamed(protocol, id)?.title) ?? `${id} (not in the protocol)`;

export function directionsToUse({ record, today, unit }: Person, reader: string): DirectionToUse[] {
  const order = prescribedOn(record, today);
  if (unit === undefined || (order !== undefined && day(order.body.validUntil) >= today)) return [];
  return (unit.unit.directions ?? [])
    .filter((one) => one.body.mayGive.includes(reader) && notInForce(one, today) === undefined)
    .map((one) => ({
      direction: one.entry,
      title: directionTitle(one),
      regimen: regimenTitle(one.body.regimen, unit.protocol),
      conditions: [...one.body.conditions],
      orderLastsDays: one.body.orderLastsDays,
    }));
}
