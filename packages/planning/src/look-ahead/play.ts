/** The coming weeks once: people fall due, wait, are seen, and some come back after an interval. */
import { bitsFor, streamFor, thresholdOf } from '../rehearse/chance.ts';
import { tooOldOnTheDay } from './bloods-run-out.ts';
import type { DemandInputs, Offer } from './inputs.ts';
import { type Rates, ratesOfFuture } from './rates.ts';

export type Future = {
  /** By week: places asked for, people waiting at its end, people turned away because of old bloods. */
  readonly demand: Float64Array;
  readonly waiting: Float64Array;
  readonly turnedAway: Float64Array;
};

/** Waits are spread about their mean by this share of it: 6 ± 3 weeks, 10 ± 4, 16 ± 5 (normal waits in practice). */
const spreadOfWaits = 0.4;

const weeksPerYear = 52;
const quarters = 4;
const even = [1, 1, 1, 1];

type Chance = {
  /** How many of so many, each with the same probability. */
  readonly of: (count: number, probability: number) => number;
  /** How many come in a week when so many do on average. */
  readonly arrivals: (mean: number) => number;
};

function chanceFrom(stream: number): Chance {
  let counter = 0;
  const bits = (): number => {
    counter += 1;
    return bitsFor(stream, counter);
  };
  return {
    of(count, probability) {
      const threshold = thresholdOf(probability);
      let yes = 0;
      for (let one = 0; one < count; one += 1) if (bits() < threshold) yes += 1;
      return yes;
    },
    arrivals(mean) {
      if (mean <= 0) return 0;
      // The gaps between arrivals are exponential: as many as fit into one week.
      const gap = (): number => -Math.log((bits() + 0.5) / 2 ** 32) / mean;
      let count = 0;
      for (let time = gap(); time <= 1; time += gap()) count += 1;
      return count;
    },
  };
}

/**
 * Share of those given dose `dose` (from 0) that will come for the next. Deaths of the part of the interval that is over are in
 * the notes already: only those of the part to come are still looked for.
 */
function comesBack(rates: Rates, dose: number, partToCome = 1): number {
  const dies = dose === 0 ? rates.diesAfterFirst : rates.diesLater;
  return (rates.returns[dose] ?? rates.returns.at(-1) ?? 0) * (1 - dies) ** partToCome;
}

function fillDue(told: DemandInputs, due: readonly Int32Array[], weeks: number, stream: number): Rates {
  const inputs = { ...told, ...ratesOfFuture(told, streamFor(stream, -2)) };
  const add = (dose: number, week: number, people: number): void => {
    if (week < weeks) due[Math.min(dose, due.length - 1)]![Math.max(0, week)]! += people;
  };
  const known = chanceFrom(streamFor(stream, -1));
  for (const { week, dose, people } of inputs.due) {
    const partToCome = Math.min(1, week / inputs.intervalWeeks);
    add(dose - 1, week, dose === 1 ? people : known.of(people, comesBack(inputs, dose - 2, partToCome)));
  }
  for (const { week, people } of inputs.pausesEnding) add(0, week, known.of(people, inputs.startsAgain));
  const sources = [
    { ...inputs.referrals, season: inputs.season },
    { ...inputs.leavers, season: even },
  ];
  // Those heard of before today are among the due: only what is heard of from now on is added.
  sources.forEach(({ perWeek, lagWeeks, season }, source) => {
    for (let week = 0; week + lagWeeks < weeks; week += 1) {
      const quarter = Math.floor(((week % weeksPerYear) * quarters) / weeksPerYear);
      const own = chanceFrom(streamFor(stream, week * sources.length + source));
      add(0, week + lagWeeks, own.arrivals(perWeek * (season[quarter] ?? 1)));
    }
  });
  return inputs;
}

export function play(inputs: DemandInputs, offer: Offer, weeks: number, seed: number, run: number): Future {
  const stream = streamFor(seed, run);
  const due = Array.from({ length: inputs.doses }, () => new Int32Array(weeks));
  const rates = fillDue(inputs, due, weeks, stream);
  const chance = chanceFrom(stream);
  const future = {
    demand: new Float64Array(weeks),
    waiting: new Float64Array(weeks),
    turnedAway: new Float64Array(weeks),
  };
  // Who waits, in order of coming: groups of one dose each.
  const queueDose: number[] = [];
  const queueCount: number[] = [];
  let head = 0;
  let length = 0;
  const join = (dose: number, people: number): void => {
    if (people === 0) return;
    queueDose.push(dose);
    queueCount.push(people);
    length += people;
  };
  inputs.waiting.forEach((people, dose) => join(Math.min(dose, inputs.doses - 1), people));
  const later = (dose: number, week: number, people: number): void => {
    if (week < weeks) due[dose]![week]! += people;
  };
  let places = 0;
  for (let week = 0; week < weeks; week += 1) {
    for (let dose = 0; dose < inputs.doses; dose += 1) {
      const people = due[dose]![week]!;
      future.demand[week]! += people;
      join(dose, people);
    }
    const wait = length / offer.placesPerWeek;
    const tooOld =
      offer.bloods.drawn === 'at referral' ? tooOldOnTheDay(wait, wait * spreadOfWaits, offer.bloods.validWeeks) : 0;
    // Parts of a place add up to one over some weeks; a whole place that nobody has is gone.
    places = (places % 1) + offer.placesPerWeek;
    while (places >= 1 && head < queueDose.length) {
      const dose = queueDose[head]!;
      const called = Math.min(Math.floor(places), queueCount[head]!);
      places -= called;
      length -= called;
      queueCount[head]! -= called;
      if (queueCount[head] === 0) head += 1;
      const away = tooOld === 0 ? 0 : chance.of(called, tooOld);
      future.turnedAway[week]! += away;
      if (away > 0) later(dose, week + 1, away);
      const seen = called - away;
      if (dose + 1 < inputs.doses)
        later(dose + 1, week + inputs.intervalWeeks, chance.of(seen, comesBack(rates, dose)));
      else later(0, week + inputs.pauseWeeks, chance.of(seen, rates.startsAgain * comesBack(rates, dose)));
    }
    future.waiting[week] = length;
  }
  return future;
}
