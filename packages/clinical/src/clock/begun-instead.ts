/**
 * What ends a promise with a date besides a dose: a bone medicine taken elsewhere, begun since. A written intention to give one
 * ends nothing (docs/readiness.md, "Clocks").
 */
import { type Day, addMonths, day } from '../calendar/day.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { nameKey } from '../requirements/medicine-name.ts';

const boneSorts: ReadonlySet<string> = new Set(['bisphosphonate tablet', 'other bone medicine']);

/**
 * A bone tablet or another bone medicine begun after the dose is being taken, or was taken for so many months: then its end
 * brings nothing back. The medicine of the dose itself, had elsewhere, is no successor of it.
 */
export function isBegunInstead(record: SubjectRecord, last: Fact<'dose'>, today: Day, takenMonths: number): boolean {
  const [itself = ''] = last.body.medicine.split(' ');
  const byName = new Map<string, Fact<'medicine'>[]>();
  for (const medicine of factsOf(record, 'medicine')) {
    const { on, body } = medicine;
    const name = nameKey(body.name);
    if (on <= last.on || on > today || !boneSorts.has(body.sort) || name.includes(itself)) continue;
    const told = byName.get(name);
    if (told === undefined) byName.set(name, [medicine]);
    else told.push(medicine);
  }
  return [...byName.values()].some((told) => isHolding(told, today, takenMonths));
}

/** Of one name, oldest first: the newest says whether it is taken still; told again without a stop between, it goes on. */
function isHolding(told: readonly Fact<'medicine'>[], today: Day, takenMonths: number): boolean {
  const newest = told[told.length - 1];
  if (newest === undefined) return false;
  const stoppedOn = newest.body.stoppedOn === undefined ? undefined : day(newest.body.stoppedOn);
  if (stoppedOn === undefined || stoppedOn > today) return true;
  let begunOn = newest.on;
  for (const { on, body } of told.toReversed().slice(1)) {
    if (body.stoppedOn !== undefined && day(body.stoppedOn) < begunOn) break;
    begunOn = on;
  }
  return addMonths(begunOn, takenMonths) <= stoppedOn;
}
