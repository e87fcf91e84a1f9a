/**
 * What opens a review of the course at once: on treatment, and during a planned break (docs/readiness.md R7; restart in a
 * break: ASBMR 2016 and NOGG, `from memory`). Everything is compared exactly.
 */
import { type Day, shortDate } from '../calendar/day.ts';
import type { Scaled } from '../exact/decimal.ts';
import { exactValue, quantityText } from '../exact/quantity.ts';
import { type Ratio, compareRatio, compareRatios, minus, ratio, ratioOf, ratioText, times } from '../exact/ratio.ts';
import { heightCm } from '../formulas/units.ts';
import type { DensitySite } from '../kinds/bone-density.ts';
import type { BodyOfKind } from '../kinds/index.ts';
import type { NumberKey } from '../protocol/number-keys.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Fact } from '../record/patient-record.ts';
import type { CourseFacts } from './course-facts.ts';
import { markerNgPerL } from './markers.ts';
import { isAtOrAbove } from './steroids.ts';

export type CourseEvent = {
  readonly because: 'fracture' | 'symptom' | 'steroid' | 'scan' | 'marker';
  readonly on: Day;
  /** "hip fracture", "new back pain" */
  readonly says: string;
  readonly entry: string;
  /** Sequence of the entry by which the notes told it: a review written before that has not looked at it. */
  readonly toldBy: number;
};

/** `others`: what it is compared with. It is told once the first of them and the fact itself are in the notes. */
const eventOf = (
  because: CourseEvent['because'],
  fact: Fact,
  says: string,
  others: readonly Fact[] = [],
): CourseEvent => ({
  because,
  on: fact.on,
  says: `${says}, ${shortDate(fact.on)}`,
  entry: fact.id,
  toldBy: others.length === 0 ? fact.seq : Math.max(fact.seq, Math.min(...others.map(({ seq }) => seq))),
});

/** Opens a review by itself. */
const graveSites: ReadonlySet<BodyOfKind<'fracture'>['site']> = new Set(['hip', 'thigh shaft', 'spine']);

/** After the first dose of a course: hip, thigh shaft, spine, a second one of any named site, back pain, height lost. By date. */
export const eventsOnTreatment = (
  facts: CourseFacts,
  firstDose: Day,
  protocol: Protocol | undefined,
): readonly CourseEvent[] =>
  inOrder([
    ...facts.fractures
      .filter(({ on, body }) => on > firstDose && body.site !== 'other')
      .flatMap((fact, index, all) => {
        const earlier = all.slice(0, index);
        const isGrave = graveSites.has(fact.body.site);
        return isGrave || earlier.length > 0
          ? [eventOf('fracture', fact, `${fact.body.site} fracture on treatment`, isGrave ? [] : earlier)]
          : [];
      }),
    ...spineAndHeight(facts, firstDose, protocol, 'on treatment'),
  ]);

/**
 * After a planned break began, or on treatment and told only after the review that began it: those, any fracture of a named
 * site, a steroid, bone lost on a scan, a marker that rose.
 */
export function eventsDuringBreak(
  facts: CourseFacts,
  review: Fact<'course-review'>,
  firstDose: Day | undefined,
  protocol: Protocol | undefined,
): readonly CourseEvent[] {
  const began = review.on;
  const after = firstDose !== undefined && firstDose < began ? firstDose : began;
  const events = [
    ...facts.fractures
      .filter(({ on, body }) => on > after && body.site !== 'other')
      .map((fact) => eventOf('fracture', fact, `${fact.body.site} fracture during the break`)),
    ...spineAndHeight(facts, after, protocol, 'during the break'),
    ...facts.steroids
      .filter((fact) => fact.on > after && isAtOrAbove(fact, protocol))
      .map((fact) => eventOf('steroid', fact, `${fact.body.name} during the break`)),
    ...(protocol === undefined
      ? []
      : [...densityLosses(facts, after, began, protocol), ...markerRises(facts, after, began, protocol)]),
  ];
  return inOrder(events.filter(({ on, toldBy }) => on > began || toldBy > review.firstSeq));
}

const inOrder = (events: readonly CourseEvent[]): readonly CourseEvent[] =>
  events.length < 2 ? events : events.toSorted((a, b) => a.on - b.on);

const spineAndHeight = (
  facts: CourseFacts,
  after: Day,
  protocol: Protocol | undefined,
  when: string,
): readonly CourseEvent[] => [
  ...facts.symptoms
    .filter(({ on }) => on > after)
    .map((fact) => eventOf('symptom', fact, `new ${fact.body.what} ${when}`)),
  ...facts.newSpineFractures
    .filter(({ on }) => on > after)
    .map((fact) => eventOf('fracture', fact, `new spine fracture on imaging ${when}`)),
  ...(protocol === undefined ? [] : heightLosses(facts, after, protocol.exact.heightLossCentimeters, when)),
];

/** Measured at least so much smaller than the tallest measurement of an earlier day; told by the first that tells it. */
function heightLosses(facts: CourseFacts, after: Day, atLeast: Scaled, when: string): readonly CourseEvent[] {
  return facts.heights.flatMap((fact) => {
    const now = heightCm(fact.body.quantity);
    if (fact.on <= after || now === undefined) return [];
    const tallest = tallestBefore(facts, fact.on);
    if (tallest === undefined) return [];
    const lost = minus(tallest.cm, now);
    if (compareRatio(lost, atLeast) < 0) return [];
    const taller = facts.heights.filter((one) => {
      const cm = heightCm(one.body.quantity);
      return one.on < fact.on && cm !== undefined && compareRatio(minus(cm, now), atLeast) >= 0;
    });
    return [eventOf('symptom', fact, `${ratioText(lost, 1)} cm of height lost ${when}`, taller)];
  });
}

export function tallestBefore(
  facts: CourseFacts,
  before: Day,
): { readonly fact: Fact<'height'>; readonly cm: Ratio } | undefined {
  let tallest: { readonly fact: Fact<'height'>; readonly cm: Ratio } | undefined;
  for (const fact of facts.heights) {
    const cm = heightCm(fact.body.quantity);
    if (fact.on >= before || cm === undefined) continue;
    if (tallest === undefined || compareRatios(cm, tallest.cm) > 0) tallest = { fact, cm };
  }
  return tallest;
}

const HUNDRED = ratio(100n, 1n);
const leastChangeKey = {
  'lumbar spine': 'leastChangeSpinePercent',
  'total hip': 'leastChangeTotalHipPercent',
  'femoral neck': 'leastChangeFemoralNeckPercent',
} as const satisfies Record<DensitySite, NumberKey>;

const sameMachineText = (text: string): string => text.trim().toLowerCase();
/** Same scanner, site and side: nothing else is ever compared (ISCD, `from memory`). */
export const areComparable = (a: Fact<'bone-density'>, b: Fact<'bone-density'>): boolean =>
  a.body.site === b.body.site &&
  a.body.side === b.body.side &&
  sameMachineText(a.body.scanner) === sameMachineText(b.body.scanner);

/** The scan's own least significant change where its report prints one, else the protocol's for the site. */
export function leastChangeText({ body }: Fact<'bone-density'>, protocol: Protocol): string {
  const own = body.leastChange;
  return own !== undefined && own.comparator === ''
    ? quantityText(own)
    : `${protocol.sheet.numbers[leastChangeKey[body.site]].value} %`;
}

/** Whether a difference is more than noise: the later scan's own least significant change, else the protocol's per cent. */
export function isMoreThanNoise(
  earlier: Fact<'bone-density'>,
  later: Fact<'bone-density'>,
  protocol: Protocol,
): boolean {
  const was = ratioOf(exactValue(earlier.body.density));
  const is = ratioOf(exactValue(later.body.density));
  const difference = compareRatios(was, is) >= 0 ? minus(was, is) : minus(is, was);
  if (difference.top <= 0) return false;
  const own = later.body.leastChange;
  if (own !== undefined && own.comparator === '') return compareRatio(difference, exactValue(own)) >= 0;
  const percent = ratioOf(protocol.exact[leastChangeKey[later.body.site]]);
  return compareRatios(times(HUNDRED, difference), times(percent, was)) >= 0;
}

function densityLosses(facts: CourseFacts, after: Day, began: Day, protocol: Protocol): readonly CourseEvent[] {
  return facts.scans.flatMap((later) => {
    if (later.on <= after) return [];
    const earlier = facts.scans.findLast((one) => one.on <= began && one.on < later.on && areComparable(one, later));
    if (earlier === undefined) return [];
    const fell = exactValue(later.body.density) < exactValue(earlier.body.density);
    return fell && isMoreThanNoise(earlier, later, protocol)
      ? [
          eventOf(
            'scan',
            later,
            `${later.body.site} ${quantityText(earlier.body.density)} to ${quantityText(later.body.density)} during the break`,
            [earlier],
          ),
        ]
      : [];
  });
}

function markerRises(facts: CourseFacts, after: Day, began: Day, protocol: Protocol): readonly CourseEvent[] {
  return facts.markers.flatMap((later) => {
    const is = markerNgPerL(later);
    if (later.on <= after || is === undefined) return [];
    const earlier = facts.markers.findLast(
      (one) =>
        one.on <= began &&
        one.on < later.on &&
        one.body.analyte === later.body.analyte &&
        markerNgPerL(one) !== undefined,
    );
    const was = earlier === undefined ? undefined : markerNgPerL(earlier);
    if (earlier === undefined || was === undefined || compareRatios(is, was) <= 0) return [];
    const rise = times(HUNDRED, minus(is, was));
    return compareRatios(rise, times(ratioOf(protocol.exact.markerRisePercent), was)) >= 0
      ? [
          eventOf(
            'marker',
            later,
            `${later.body.analyte} up to ${quantityText(later.body.quantity)} during the break`,
            [earlier],
          ),
        ]
      : [];
  });
}
