/** R1 of docs/readiness.md: what a blood sample counts for on a day. */
import type { BodyOfKind } from '@twelvemonth/clinical';
import type { OracleFact } from './facts.ts';
import { above, below, exactly } from './fraction.ts';
import type { View } from './view.ts';
import { exceptionHolds } from './answer.ts';

export type Result = OracleFact<'result'>;
type Analyte = BodyOfKind<'result'>['analyte'];
export type SampleState = 'never measured' | 'voided' | 'unsigned' | 'out of date' | 'in date';

export const last = <Item>(items: readonly Item[]): Item | undefined => items[items.length - 1];

/** Something that happened and, if it is over, the day of the newest word that the person is well. */
type Illness = { readonly on: number; readonly seq: number };

/** R1: illness entries, and answers of a checklist that tell of one. */
function illnesses(view: View): readonly Illness[] {
  const told = view
    .of('checklist')
    .filter(({ body }) =>
      view.world.sheet.dayQuestions.some(
        ({ id, holdsOn, event }) => event !== undefined && body.answers[id]?.answer === holdsOn,
      ),
    );
  return [...view.of('illness'), ...told];
}

/** The day of the newest `well-since`, where that comes after every illness; undefined while one is not over. */
export function wellAgain(view: View): { readonly over: boolean; readonly wellOn: number; readonly ever: boolean } {
  const all = illnesses(view);
  const well = last(view.of('well-since'));
  const over = all.every(({ on, seq }) => well !== undefined && (well.on > on || (well.on === on && well.seq > seq)));
  return { over, wellOn: well?.on ?? -Infinity, ever: all.length > 0 };
}

/** Samples before this day do not count; undefined: no sample counts, not yet well. */
export function floorDay(view: View): number | undefined {
  const { over, wellOn, ever } = wellAgain(view);
  if (!over) return undefined;
  let floor = ever ? wellOn + view.world.count('wellDaysBeforeSample') : -Infinity;
  for (const operation of view.of('surgery'))
    floor = Math.max(floor, operation.on + view.world.count('surgerySampleDays') + 1);
  return floor;
}

const plain = (name: string): string => name.trim().replaceAll(/\s+/g, ' ').toLowerCase();
/** Names that differ only in capitals and in outer or repeated spaces are one name. */
export const sameName = (a: string, b: string): boolean => plain(a) === plain(b);

/** The first days of medicines of a sort that spoil a sample taken before. */
function startsOf(view: View, sort: BodyOfKind<'medicine'>['sort']): readonly number[] {
  const told = view.of('medicine').filter(({ body }) => body.sort === sort);
  return told.flatMap(({ on, body }, index) => {
    if (body.stoppedOn !== undefined && view.day(body.stoppedOn) < on) return [];
    const before = told.slice(0, index).findLast((earlier) => sameName(earlier.body.name, body.name));
    const toldAgain =
      before !== undefined &&
      before.body.dailyDose === body.dailyDose &&
      (before.body.stoppedOn === undefined || view.day(before.body.stoppedOn) >= on);
    return toldAgain ? [] : [on];
  });
}

export const isSigned = (view: View, result: Result): boolean =>
  result.signed === true ||
  view.of('results-signed').some((signature) => signature.body.results.includes(result.ids[0] ?? ''));

export const resultsOf = (view: View, analyte: Analyte): readonly Result[] =>
  view.of('result').filter((fact) => fact.body.analyte === analyte);

/** Another counting value of the same test and day differs; one that a plan assumes is never looked at. */
export const isContradicted = (view: View, result: Result): boolean =>
  resultsOf(view, result.body.analyte).some(({ on, good, body: { quantity } }) => {
    const own = result.body.quantity;
    const isSame =
      quantity.unit === own.unit &&
      quantity.comparator === own.comparator &&
      !above(exactly(quantity.value), exactly(own.value)) &&
      !below(exactly(quantity.value), exactly(own.value));
    return on === result.on && good !== true && result.good !== true && !isSame;
  });

const isVoided = (view: View, result: Result): boolean => {
  const floor = floorDay(view);
  const sort = result.body.analyte === 'creatinine' ? 'nephrotoxic' : 'calcium-lowering';
  const spoilt = result.body.analyte !== 'albumin' && startsOf(view, sort).some((on) => result.on < on);
  return spoilt || floor === undefined || result.on < floor || result.body.acuteAdmission === true;
};

export function stateOf(view: View, result: Result | undefined, day: number): SampleState {
  if (result === undefined) return 'never measured';
  const vitamin = result.body.analyte === 'vitamin D';
  if (!vitamin && isVoided(view, result)) return 'voided';
  if (!isSigned(view, result)) return 'unsigned';
  const valid = view.world.count(vitamin ? 'vitaminDValidDays' : 'bloodsValidDays');
  const carried =
    !vitamin &&
    exceptionHolds(view, 'age of bloods', day) &&
    day - result.on <= view.world.count('exceptionBloodsOldestDays');
  if (day > result.on + valid && !carried) return 'out of date';
  return 'in date';
}
