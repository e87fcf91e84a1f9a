/**
 * Which numbers of a protocol an answer has read. An answer depends on the numbers it read and on no others: while those stay as
 * they are it stays as it is. So a draft that moves one number needs to ask again only those whose answer read that number.
 */
import type { RequirementId } from '../protocol/requirement-ids.ts';
import { type NumberKey, numberKeyNames } from '../protocol/number-keys.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Evidence } from '../requirements/evidence.ts';
import type { Judge, Requirement } from '../requirements/requirement.ts';

const BITS = 32;
const MOST = 4 * BITS;
if (numberKeyNames.length > MOST) throw new RangeError(`more than ${MOST} numbers: a set of them needs another word`);
const placeOf = new Map(numberKeyNames.map((key, index) => [key, index] as const));

/** A set of the numbers of a protocol. */
export class NumbersRead {
  #low = 0;
  #middle = 0;
  #high = 0;
  #highest = 0;

  add(place: number): void {
    const bit = 1 << (place % BITS);
    if (place < BITS) this.#low |= bit;
    else if (place < 2 * BITS) this.#middle |= bit;
    else if (place < 3 * BITS) this.#high |= bit;
    else this.#highest |= bit;
  }
  addAll(): void {
    this.#low = -1;
    this.#middle = -1;
    this.#high = -1;
    this.#highest = -1;
  }
  addEach(other: NumbersRead): void {
    this.#low |= other.#low;
    this.#middle |= other.#middle;
    this.#high |= other.#high;
    this.#highest |= other.#highest;
  }
  meets(other: NumbersRead): boolean {
    return (
      ((this.#low & other.#low) |
        (this.#middle & other.#middle) |
        (this.#high & other.#high) |
        (this.#highest & other.#highest)) !==
      0
    );
  }
  equals(other: NumbersRead): boolean {
    return (
      this.#low === other.#low &&
      this.#middle === other.#middle &&
      this.#high === other.#high &&
      this.#highest === other.#highest
    );
  }
  /** Equal sets have the same; of others hardly any two do. */
  get sum(): number {
    return this.#low ^ this.#middle ^ this.#high ^ this.#highest;
  }
}

/** One set for all that are equal, so that thousands of people keep a few dozen sets. None of them is added to any more. */
export function setsOnce(): (read: NumbersRead) => NumbersRead {
  const known = new Map<number, NumbersRead[]>();
  return (read) => {
    const alike = known.get(read.sum);
    const same = alike?.find((one) => one.equals(read));
    if (same !== undefined) return same;
    if (alike === undefined) known.set(read.sum, [read]);
    else alike.push(read);
    return read;
  };
}

/** Whoever is reading now. Everything that reads a protocol does so without pausing, so there is only one reading at a time. */
let reader: NumbersRead | undefined;

/** Notes in a set what is read meanwhile. Whoever was reading before has then read it too. */
export function readingAs<Value>(as: NumbersRead, read: () => Value): Value {
  const before = reader;
  reader = as;
  try {
    return read();
  } finally {
    reader = before;
    reader?.addEach(as);
  }
}

function watchedNumbers<Value>(numbers: Readonly<Record<NumberKey, Value>>): Readonly<Record<NumberKey, Value>> {
  const watched = {};
  for (const [key, place] of placeOf) {
    const value = numbers[key];
    Object.defineProperty(watched, key, {
      enumerable: true,
      get: () => {
        reader?.add(place);
        return value;
      },
    });
  }
  return watched as Readonly<Record<NumberKey, Value>>;
}

/** The same object, but whoever looks at its sourced numbers has read them all. */
function watchedSource<Source extends { readonly numbers: unknown }>(source: Source): Source {
  return Object.defineProperty({ ...source }, 'numbers', {
    enumerable: true,
    get: () => {
      reader?.addAll();
      return source.numbers;
    },
  });
}

const watchedOnes = new WeakMap<Protocol, Protocol>();

/** The same protocol, whose readers are noted. */
export function watched(protocol: Protocol): Protocol {
  const known = watchedOnes.get(protocol);
  if (known !== undefined) return known;
  const under = new Map<string, Protocol>();
  const made = watchedAlone(protocol, under);
  watchedOnes.set(protocol, made);
  for (const [id, one] of protocol.under) under.set(id, one === protocol ? made : watchedAlone(one, under));
  return made;
}

const watchedAlone = (protocol: Protocol, under: ReadonlyMap<string, Protocol>): Protocol => ({
  ...protocol,
  sheet: watchedSource(protocol.sheet),
  regimen: watchedSource(protocol.regimen),
  under,
  number: watchedNumbers(protocol.number),
  exact: watchedNumbers(protocol.exact),
});

/** A judge whose numbers were noted when it was made: whoever asks it later has read them too. */
export function watchedJudge(requirement: Requirement, evidence: Evidence, protocol: Protocol): Judge {
  const read = new NumbersRead();
  const judge = readingAs(read, () => requirement.judge(evidence, protocol));
  const tell = (): void => reader?.addEach(read);
  return {
    changes: judge.changes,
    on: (day) => (tell(), judge.on(day)),
    path: (day, loadingEnds) => (tell(), judge.path(day, loadingEnds)),
  };
}

/** The numbers that differ; undefined where something else differs too, so that numbers alone do not tell. */
export function numbersMoved(from: Protocol, to: Protocol): NumbersRead | undefined {
  if (besideNumbers(from) !== besideNumbers(to)) return undefined;
  const moved = new NumbersRead();
  for (const [key, place] of placeOf) if (from.exact[key] !== to.exact[key]) moved.add(place);
  return moved;
}

const besides = new WeakMap<Protocol, string>();

/** Everything of a protocol that may decide and is no number, as text. Names, dates of review and cautions decide nothing. */
function besideNumbers(protocol: Protocol): string {
  const known = besides.get(protocol);
  if (known !== undefined) return known;
  const { numbers, version, title, teachingOnly, reviewBy, cautions, regimens, ...rest } = protocol.sheet;
  void [numbers, version, title, teachingOnly, reviewBy, cautions];
  const text = JSON.stringify([
    rest,
    regimens.map((one) => ({ ...one, numbers: undefined })),
    { ...protocol.regimen, numbers: undefined },
    [...protocol.leavesOut] satisfies RequirementId[],
  ]);
  besides.set(protocol, text);
  return text;
}
