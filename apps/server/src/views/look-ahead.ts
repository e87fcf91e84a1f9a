/** A unit with what the coming years are looked ahead at from: counts and rates of its notes, nobody by name. */
import { plainDate } from '@twelvemonth/clinical';
import type { LookAheadView } from '@twelvemonth/exchange';
import { unitAheadInSteps } from '@twelvemonth/planning';
import type { AtHand } from '../at-hand.ts';
import { inSlices } from '../in-slices.ts';
import type { UnitNow } from '../register/units.ts';
import { noProtocolInForce } from './person-row.ts';
import { everySession } from './sessions.ts';

export async function lookAheadOf(atHand: AtHand, { unit, context, today }: UnitNow): Promise<LookAheadView> {
  const about = { unit: unit.id, unitName: unit.name, today: plainDate(today) };
  const nothing = (says: string): LookAheadView => ({ ...about, says, read: [], hasUsualSettings: false });
  if (context === undefined) return nothing(noProtocolInForce);
  const everyone = await atHand.people.all();
  const made = await inSlices(
    unitAheadInSteps({
      unit,
      context,
      today,
      sessions: (await everySession(atHand)).filter((session) => session.unit === unit.id),
      records: everyone.flatMap(({ record, unitId }) => (unitId === unit.id ? [record] : [])),
    }),
  );
  if (!made.ok) return nothing(made.says);
  const { ahead, read, hasUsualSettings } = made;
  return { ...about, ahead, read, hasUsualSettings };
}
