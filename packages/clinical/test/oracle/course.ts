/** R7 of docs/readiness.md: the course, asked for one day. During a break every day is not ready, whatever happens in it. */
import { type Answer, NOT_READY, READY, exceptionHolds } from './answer.ts';
import type { OracleFact } from './facts.ts';
import { type Fraction, atLeast, exactly, minus, times } from './fraction.ts';
import { countingDoses, isCleared } from './others.ts';
import type { View } from './view.ts';

const last = <Item>(items: readonly Item[]): Item | undefined => items[items.length - 1];

/** The regimen a dose was given under: what the newest prescription up to its day names. */
const underOf = (view: View, dose: OracleFact<'dose'>): string | undefined =>
  last(view.of('prescription').filter((order) => order.on <= dose.on))?.body.regimen;

/** Doses of a single treatment of another disease are a course of their own. */
function dosesHere(view: View): readonly OracleFact<'dose'>[] {
  const apart = (id: string | undefined): boolean =>
    view.world.sheet.regimens.some((regimen) => regimen.id === id && regimen.countedApart);
  return countingDoses(view).filter((dose) => {
    const under = underOf(view, dose);
    return view.regimen.countedApart ? under === view.regimen.id : under === view.regimen.id || !apart(under);
  });
}

/** The day from which the medicine ordered now is ordered, where another one was before (S of R0). */
function changedOn(view: View): number | undefined {
  const orders = view.of('prescription').toReversed();
  const medicineOf = (order: OracleFact<'prescription'>): string => {
    const { regimens } = view.world.sheet;
    return (regimens.find(({ id }) => id === order.body.regimen) ?? regimens[0])?.medicine ?? '';
  };
  const other = orders.findIndex((order) => medicineOf(order) !== view.regimen.medicine);
  return other === -1 ? undefined : orders[other - 1]?.on;
}

export function course(view: View, day: number): Answer {
  if (exceptionHolds(view, 'course review', day)) return READY;
  const everyReview = view.of('course-review');
  const changed = changedOn(view) ?? -Infinity;
  const reviews = everyReview.filter((review) => review.on > changed);
  const newest = last(reviews);
  if (newest !== undefined && ['planned break', 'other treatment', 'stop'].includes(newest.body.outcome))
    return NOT_READY;
  const started = last(reviews.filter((review) => review.body.outcome === 'new course'))?.on ?? -Infinity;
  const doses = dosesHere(view).filter((dose) => dose.on >= started);
  const said = last(
    reviews.flatMap(({ body }) =>
      body.outcome === 'carry on' ? [body.toDoses] : body.outcome === 'new course' ? [body.plannedDoses] : [],
    ),
  );
  const planned = said ?? last(view.of('prescription'))?.body.plannedDoses ?? view.regimen.plannedDoses;
  if (doses.length >= planned) return NOT_READY;
  const pauses = everyReview.filter((review) => review.body.outcome === 'planned break').map((review) => review.on);
  const inARow = dosesHere(view).filter((dose) => dose.on >= Math.max(-Infinity, ...pauses));
  const most = view.world.count('maxConsecutiveDoses');
  if (inARow.length >= most) {
    const reached = inARow[most - 1]?.on ?? Infinity;
    const bySpecialist = reviews.filter(({ body }) => body.capacity === 'specialist');
    if (!bySpecialist.some(({ on, body }) => on >= reached && ['carry on', 'new course'].includes(body.outcome)))
      return NOT_READY;
  }
  const first = doses[0]?.on;
  if (first === undefined) return READY;
  const isReviewed = ({ on, told }: Happened): boolean =>
    everyReview.some((review) => review.on >= on && review.firstSeq > told);
  return eventsOnTreatment(view, first).every(isReviewed) ? READY : NOT_READY;
}

/** The day of it, and the sequence of the entry with which the notes could tell it. */
export type Happened = { readonly on: number; readonly told: number };
export const alone = ({ on, seq }: OracleFact): Happened => ({ on, told: seq });
/** Told only beside another one: as soon as any of those was there too. */
export const beside = ({ on, seq }: OracleFact, others: readonly OracleFact[]): Happened => ({
  on,
  told: Math.max(seq, Math.min(...others.map((other) => other.seq))),
});

/** What opens a review: a hip, spine or thigh shaft fracture, the second of any named site, back pain or height loss. */
function eventsOnTreatment(view: View, first: number): readonly Happened[] {
  const fractures = view.of('fracture').filter((fact) => fact.on > first && fact.body.site !== 'other');
  const graves = fractures.filter((fact) => ['hip', 'spine', 'thigh shaft'].includes(fact.body.site));
  const furtherOnes = fractures.slice(1).filter((fact) => !graves.includes(fact));
  return [
    ...graves.map(alone),
    ...furtherOnes.map((fact) => beside(fact, fractures.slice(0, fractures.indexOf(fact)))),
    ...spineAndHeight(view, first),
  ];
}

function spineAndHeight(view: View, after: number): readonly Happened[] {
  const symptoms = view
    .of('symptom')
    .filter((fact) => fact.body.what === 'back pain' || fact.body.what === 'height loss')
    .filter((fact) => !isCleared(view, fact));
  const pictures = view.of('spine-imaging').filter((fact) => fact.body.found === 'new fracture');
  const heights = view
    .of('height')
    .filter(({ body }) => body.which === 'measured now' && body.quantity.comparator === '');
  const shrunk = heights.flatMap((fact) => {
    const taller = heights.filter(
      (tall) =>
        tall.on < fact.on &&
        atLeast(minus(centimeters(tall), centimeters(fact)), view.world.limit('heightLossCentimeters')),
    );
    return taller.length === 0 ? [] : [beside(fact, taller)];
  });
  return [...[...symptoms, ...pictures].map(alone), ...shrunk].filter(({ on }) => on > after);
}

const centimeters = ({ body }: OracleFact<'height'>): Fraction =>
  body.quantity.unit === 'in' ? times(exactly(body.quantity.value), exactly('2.54')) : exactly(body.quantity.value);
