/**
 * What may be a slip and may be true: asked about before it is written, never guessed and never refused for good. Whoever has
 * looked confirms the sentence that was shown; another sentence, because the notes have moved on, is asked anew.
 */
import { addMonths, day, shortDate } from '../calendar/day.ts';
import { type Measure, plausibility, weightJumpShare } from '../exact/plausible.ts';
import { type Quantity, exactValue, quantityText } from '../exact/quantity.ts';
import { dividedBy, minus, ratioAsNumber } from '../exact/ratio.ts';
import { weightKg } from '../formulas/units.ts';
import { counted } from '../kinds-texts/words.ts';
import { type BodyOfKind, kindNamed } from '../kinds/index.ts';
import { medicineClassOf } from '../protocol/medicine-classes.ts';
import type { Protocol } from '../protocol/protocol.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { sameName } from '../requirements/medicine-name.ts';
import { visitOn } from '../visit/visit.ts';
import { watchAfter } from '../visit/watch-minutes.ts';
import { standingSupports } from '../visit/supports.ts';
import { type Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';

/** `replaced`: the entry a correction stands in for, which it need not agree with. */
export function checkDoubts(
  record: SubjectRecord,
  fact: Fact,
  path: string,
  confirmed: readonly string[],
  replaced: string | undefined,
  protocol: Protocol | undefined,
): readonly Refusal[] {
  const { field, look } = askedAt(fact.kind);
  return doubtsAbout(record, fact, replaced, protocol)
    .filter((says) => !confirmed.includes(says))
    .map((says) =>
      refusal('is-it-right', says, {
        field: `${path}.${field}`,
        remedy: `${look}, or say that it is right as typed`,
      }),
    );
}

/** Where on the form it is asked, and what to look at first. */
function askedAt(kind: Fact['kind']): { readonly field: string; readonly look: string } {
  switch (kind) {
    case 'medicine':
      return { field: 'sort', look: 'choose its sort here' };
    case 'prescription':
      return { field: 'validUntil', look: 'look at both days and their years' };
    case 'support-booking':
      return { field: 'bookedWith', look: 'look at what is booked, and at the times' };
    case 'died':
      return { field: 'source', look: 'look whose notes these are, and at the day' };
    case 'observed':
      return { field: 'minutes', look: 'watch on, and write it when the minutes are over' };
    case 'left':
      return { field: 'leaves', look: 'say who took over, or what was said; correct the watch if they are well now' };
    default:
      return { field: 'quantity', look: 'look at what was reported: correct it here' };
  }
}

function doubtsAbout(
  record: SubjectRecord,
  fact: Fact,
  replaced: string | undefined,
  protocol: Protocol | undefined,
): readonly string[] {
  const others = <Kind extends Fact['kind']>(kind: Kind): readonly Fact<Kind>[] =>
    factsOf(record, kind).filter(({ id }) => id !== replaced);
  switch (fact.kind) {
    case 'result': {
      const { analyte, quantity } = (fact as Fact<'result'>).body;
      const there = others('result').filter(({ on, body }) => on === fact.on && body.analyte === analyte);
      return [...asUnit(analyte, analyte, quantity), ...sameDay(analyte, quantity, there)];
    }
    case 'weight': {
      const { quantity } = (fact as Fact<'weight'>).body;
      return [...asUnit('weight', 'weight', quantity), ...jump(quantity, fact, others('weight'))];
    }
    case 'height': {
      const { quantity } = (fact as Fact<'height'>).body;
      return asUnit('height', 'height', quantity);
    }
    case 'medicine':
      return asSort((fact as Fact<'medicine'>).body, others('medicine'));
    case 'prescription':
      return [
        ...asDays(fact as Fact<'prescription'>),
        ...inPlaceOf(fact as Fact<'prescription'>, others('prescription')),
      ];
    case 'support-booking':
      return [
        ...bookedAlready(record, fact as Fact<'support-booking'>),
        ...thereTooLate(fact as Fact<'support-booking'>),
      ];
    case 'died':
      return seenAfter(record, fact);
    case 'observed':
      return watchedShorter(record, fact as Fact<'observed'>, protocol);
    case 'left':
      return unwellAfter(record, fact as Fact<'left'>);
    default:
      return [];
  }
}

/** Two clerks, one car each: the same thing booked twice for one place. */
function bookedAlready(record: SubjectRecord, { body }: Fact<'support-booking'>): readonly string[] {
  if (body.answer !== 'booked') return [];
  const there = standingSupports(record).find(
    (one) => one.body.what === body.what && one.body.session === body.session && one.id !== body.inPlaceOf,
  );
  return there === undefined
    ? []
    : [
        `A ${body.what} is booked for that day already, with ${there.body.bookedWith}${there.body.at === undefined ? '' : ` at ${there.body.at}`}: is this another one, for the way back?`,
      ];
}

/** HH:MM compares as text. */
const thereTooLate = ({ body }: Fact<'support-booking'>): readonly string[] =>
  body.answer === 'booked' && body.at !== undefined && body.at > body.arriveAt
    ? [`It is to be there at ${body.at}, after they are to arrive at ${body.arriveAt}: is that for the way back?`]
    : [];

/** An order that is valid for longer is asked about. Common practice, no source: most services let one last a year. */
const validMonthsAskedAbout = 24;

/** The wrong year: over before it is written, or valid for a lifetime. */
function asDays({ on, body }: Fact<'prescription'>): readonly string[] {
  const [from, until] = [day(body.validFrom), day(body.validUntil)];
  if (until < on)
    return [`It is over: valid until ${shortDate(until)}, dated ${shortDate(on)}. Is that the right year?`];
  return until > addMonths(from, validMonthsAskedAbout)
    ? [`It is valid until ${shortDate(until)}, more than ${validMonthsAskedAbout} months: is that the right year?`]
    : [];
}

/** The newest order counts from its day on, also before it is valid: next year's, written early, would hold this year's dose. */
function inPlaceOf(
  { on, body: { validFrom } }: Fact<'prescription'>,
  others: readonly Fact<'prescription'>[],
): readonly string[] {
  const before = others.findLast((one) => one.on <= on);
  return day(validFrom) <= on || before === undefined || day(before.body.validUntil) < on
    ? []
    : [
        `From its day it takes the place of the prescription of ${shortDate(before.on)}, valid until ${shortDate(day(before.body.validUntil))}, and is itself valid only from ${shortDate(day(validFrom))}: until then no dose can be given. Is that meant?`,
      ];
}

/** Written only of somebody who is there. */
const inTheRoom: ReadonlySet<Fact['kind']> = new Set(['arrived', 'weight', 'height', 'cannula', 'dose']);

/** A death written in the wrong notes stops every recall and letter of somebody who lives. */
function seenAfter(record: SubjectRecord, { on }: Fact): readonly string[] {
  const seen = record.all.findLast((fact) => fact.on > on && inTheRoom.has(fact.kind));
  return seen === undefined
    ? []
    : [
        `The notes have “${kindNamed(seen.kind).label}” of ${shortDate(seen.on)}, after that day: is it this person who has died, and on that day?`,
      ];
}

/** Who has a first dose is watched longer (protocol): a shorter watch may be true, and is nothing to write in passing. */
function watchedShorter(
  record: SubjectRecord,
  { on, body: { minutes } }: Fact<'observed'>,
  protocol: Protocol | undefined,
): readonly string[] {
  const dose = visitOn(record, on)?.dose;
  if (protocol === undefined || dose === undefined) return [];
  const { first, minutes: asked } = watchAfter(record, { on, medicine: dose.body.medicine }, protocol);
  return minutes >= asked
    ? []
    : [
        `You typed ${counted(minutes, 'minute')}; the protocol watches ${asked} after ${first ? 'a first' : 'a later'} dose: were they watched no longer?`,
      ];
}

/** Hazards 36 and 89: not well at the watch, or a pulse newly irregular when it was last felt there, and fit at the door. */
function unwellAfter(record: SubjectRecord, { on, body: { leaves } }: Fact<'left'>): readonly string[] {
  const visit = visitOn(record, on);
  if (visit === undefined || leaves !== 'fit to go') return [];
  const felt = visit.observationsAfter.findLast(({ body }) => body.newIrregularPulse !== undefined);
  return [
    ...(visit.observed?.body.well === false
      ? ['The watch after the dose says that they were not well: are they fit to go now?']
      : []),
    ...(felt?.body.newIrregularPulse === true
      ? ['The pulse was newly irregular after the dose: was a doctor told, and are they fit to go now?']
      : []),
  ];
}

/** A medicine entered as something that its name says it is not, or as half of what it is: samples before it would go on counting. */
function asSort(
  { name, sort, stoppedOn }: BodyOfKind<'medicine'>,
  others: readonly Fact<'medicine'>[],
): readonly string[] {
  const found = medicineClassOf(name);
  if (found === undefined || stoppedOn !== undefined || found.or?.includes(sort) === true) return [];
  const there = [sort, ...others.filter(({ body }) => sameName(body.name, name)).map(({ body }) => body.sort)];
  const missing = found.sorts.filter((each) => !there.includes(each));
  if (missing.length === 0) return [];
  const wanted = missing.map((each) => `“${each}”`).join(' and once more as ');
  return [
    `You typed ${name} as “${sort}”. It is ${found.is}: should it be written as ${wanted}${found.sorts.includes(sort) ? ' too' : ''}?`,
  ];
}

/** "creatinine 0.9 umol/L is far outside what is seen in umol/L; it would be usual in mg/dL" */
function asUnit(measure: Measure, what: string, quantity: Quantity): readonly string[] {
  if (quantity.comparator !== '') return [];
  const { sits, betterAs } = plausibility(measure, quantity.unit, Number(quantity.value));
  if (sits === 'usual' || (sits === 'unusual' && betterAs === undefined)) return [];
  const other =
    betterAs === undefined ? 'is a figure or the point out of place' : `is it ${quantity.value} ${betterAs}`;
  return [`You typed ${what} ${quantityText(quantity)}, far outside what is seen in ${quantity.unit}: ${other}?`];
}

function sameDay(what: string, quantity: Quantity, there: readonly Fact<'result'>[]): readonly string[] {
  const other = there.find(({ body }) => !isSame(body.quantity, quantity));
  return other === undefined || there.some(({ body }) => isSame(body.quantity, quantity))
    ? []
    : [
        `You typed ${what} ${quantityText(quantity)}; the notes have ${quantityText(other.body.quantity)} of the same day, ${shortDate(other.on)}: which is right, or were there two samples?`,
      ];
}

const isSame = (one: Quantity, other: Quantity): boolean =>
  one.unit === other.unit && one.comparator === other.comparator && exactValue(one) === exactValue(other);

function jump(quantity: Quantity, { on }: Fact, weights: readonly Fact<'weight'>[]): readonly string[] {
  const before = weights.findLast((weight) => weight.on <= on);
  const [now, was] = [weightKg(quantity), before === undefined ? undefined : weightKg(before.body.quantity)];
  if (before === undefined || now === undefined || was === undefined || was.top <= 0) return [];
  const change = ratioAsNumber(dividedBy(minus(now, was), was));
  if (Math.abs(change) <= weightJumpShare) return [];
  return [
    `You typed ${quantityText(quantity)}; on ${shortDate(before.on)} it was ${quantityText(before.body.quantity)}, ${Math.round(Math.abs(change) * 100)} % ${change < 0 ? 'less' : 'more'}: is the unit right, and was it weighed twice?`,
  ];
}
