/** "During a break", R7 of docs/readiness.md, written from the page alone: the days of what opens a review of a break. */
import type { OracleFact } from './facts.ts';
import { type Fraction, above, atLeast, exactly, fraction, minus, times } from './fraction.ts';
import { type Happened, alone, beside } from './course.ts';
import { countingDoses, isCleared } from './others.ts';
import type { View } from './view.ts';

const last = <Item>(items: readonly Item[]): Item | undefined => items[items.length - 1];
const hundred = fraction(100n);

/** Empty where the newest review is no planned break. */
export function breakEvents(view: View): readonly number[] {
  const newest = last(view.of('course-review'));
  if (newest?.body.outcome !== 'planned break') return [];
  const began = newest.on;
  const firstDose = countingDoses(view)[0]?.on ?? Infinity;
  const told = [
    ...view.of('fracture').filter(({ body }) => body.site !== 'other'),
    ...view
      .of('symptom')
      .filter((fact) => ['back pain', 'height loss'].includes(fact.body.what) && !isCleared(view, fact)),
    ...view.of('spine-imaging').filter(({ body }) => body.found === 'new fracture'),
    ...view.of('medicine').filter(({ body }) => body.sort === 'steroid' && isHighDose(view, body)),
  ].map(alone);
  const compared = [
    ...view.of('height').map((fact): [OracleFact, readonly OracleFact[]] => [fact, tallerOnes(view, fact)]),
    ...view
      .of('bone-density')
      .map((fact): [OracleFact, readonly OracleFact[]] => [fact, lostAgainst(view, fact, began)]),
    ...view.of('result').map((fact): [OracleFact, readonly OracleFact[]] => [fact, risenAgainst(view, fact, began)]),
  ].flatMap(([fact, others]): Happened[] => (others.length === 0 ? [] : [beside(fact, others)]));
  return [...told, ...compared]
    .filter(({ on, told: by }) => on > began || (on > firstDose && by > newest.firstSeq))
    .map(({ on }) => on)
    .toSorted((a, b) => a - b);
}

const centimeters = ({ body }: OracleFact<'height'>): Fraction =>
  body.quantity.unit === 'in' ? times(exactly(body.quantity.value), exactly('2.54')) : exactly(body.quantity.value);

function tallerOnes(view: View, small: OracleFact<'height'>): readonly OracleFact[] {
  const isMeasured = ({ body }: OracleFact<'height'>): boolean =>
    body.which === 'measured now' && body.quantity.comparator === '';
  if (!isMeasured(small)) return [];
  return view
    .of('height')
    .filter(
      (tall) =>
        isMeasured(tall) &&
        tall.on < small.on &&
        atLeast(minus(centimeters(tall), centimeters(small)), view.world.limit('heightLossCentimeters')),
    );
}

const isHighDose = (view: View, body: OracleFact<'medicine'>['body']): boolean =>
  body.prednisoloneMgPerDay === undefined ||
  atLeast(exactly(body.prednisoloneMgPerDay), view.world.limit('steroidMgPerDay'));

const machineOf = ({ body }: OracleFact<'bone-density'>): string =>
  [body.scanner.trim().toLowerCase(), body.site, body.side ?? 'neither'].join('/');

function lostAgainst(view: View, scan: OracleFact<'bone-density'>, began: number): readonly OracleFact[] {
  const before = last(
    view
      .of('bone-density')
      .filter(
        (fact) =>
          fact.on <= began &&
          fact.on < scan.on &&
          fact.body.density.comparator === '' &&
          machineOf(fact) === machineOf(scan),
      ),
  );
  if (before === undefined || scan.body.density.comparator !== '') return [];
  const was = exactly(before.body.density.value);
  const lost = minus(was, exactly(scan.body.density.value));
  if (!above(lost, exactly('0'))) return [];
  const own = scan.body.leastChange;
  if (own !== undefined && own.comparator === '') return atLeast(lost, exactly(own.value)) ? [before] : [];
  const percent = {
    'lumbar spine': view.world.limit('leastChangeSpinePercent'),
    'total hip': view.world.limit('leastChangeTotalHipPercent'),
    'femoral neck': view.world.limit('leastChangeFemoralNeckPercent'),
  }[scan.body.site];
  return atLeast(times(hundred, lost), times(percent, was)) ? [before] : [];
}

/** In ng/L; undefined for a bound or a unit that is not the marker's. */
function nanograms({ body }: OracleFact<'result'>): Fraction | undefined {
  const { comparator, unit, value } = body.quantity;
  if (comparator !== '') return undefined;
  if (unit === 'ug/L' || unit === 'ng/mL') return times(exactly(value), fraction(1000n));
  return body.analyte === 'CTX' && (unit === 'ng/L' || unit === 'pg/mL') ? exactly(value) : undefined;
}

function risenAgainst(view: View, result: OracleFact<'result'>, began: number): readonly OracleFact[] {
  const { analyte } = result.body;
  const is = nanograms(result);
  const isSigned = ({ ids: [own] }: OracleFact): boolean =>
    view.of('results-signed').some(({ body }) => own !== undefined && body.results.includes(own));
  if ((analyte !== 'CTX' && analyte !== 'P1NP') || is === undefined || !isSigned(result)) return [];
  const before = last(
    view
      .of('result')
      .filter(
        (fact) =>
          fact.on <= began &&
          fact.on < result.on &&
          fact.body.analyte === analyte &&
          nanograms(fact) !== undefined &&
          isSigned(fact),
      ),
  );
  const was = before === undefined ? undefined : nanograms(before);
  if (before === undefined || was === undefined || !above(is, was)) return [];
  return atLeast(times(hundred, minus(is, was)), times(view.world.limit('markerRisePercent'), was)) ? [before] : [];
}
