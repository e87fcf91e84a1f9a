/**
 * Who flips: people whose verdict or window would differ if a sheet were in force. Answered in parts, so that a screen can
 * show how far it is, and stop by asking for no more. What stands is worked out once for as long as the register stays.
 */
import {
  type ComparedRegister,
  type Flip,
  type Protocol,
  plainDate,
  registerCompared,
  shortDate,
  subjectId,
} from '@twelvemonth/clinical';
import type { FlipsAnswer } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import { steadyMilliseconds } from '../clock.ts';
import type { Person } from '../register/people.ts';
import type { UnitNow } from '../register/units.ts';
import { fullName } from './person-words.ts';

const ended = new Set(['died', 'closed', 'transferred out', 'returned to referrer']);

/** How many people are looked at between two looks at the clock. */
const partSize = 25;
/** How long one part of the answer may take: others are answered in between. */
const partMilliseconds = 80;

type Parts = { readonly people: readonly Person[]; readonly compared: (ComparedRegister | undefined)[] };
/** By the register as it was, then by unit: another register is another list. */
const known = new WeakMap<readonly Person[], Map<string, Parts>>();

export async function flipsOf({ people }: AtHand, unit: UnitNow, draft: Protocol, after: number): Promise<FlipsAnswer> {
  const parts = partsOf(await people.all(), unit);
  const flips: FlipsAnswer['flips'] = [];
  const began = steadyMilliseconds();
  let at = after;
  while (at < parts.people.length && steadyMilliseconds() - began < partMilliseconds) {
    const part = partFrom(parts, unit, Math.floor(at / partSize));
    for (const flip of part.flips(draft)) {
      const person = parts.people.find(({ record }) => record.subject === flip.subject);
      if (person !== undefined) flips.push(flipView(person, flip));
    }
    at = (Math.floor(at / partSize) + 1) * partSize;
  }
  const of = parts.people.length;
  return { compared: Math.min(at, of), of, ...(at < of ? { next: at } : {}), flips };
}

function partsOf(everyone: readonly Person[], { unit: { id } }: UnitNow): Parts {
  let byUnit = known.get(everyone);
  if (byUnit === undefined) known.set(everyone, (byUnit = new Map()));
  let parts = byUnit.get(id);
  if (parts === undefined) {
    const people = everyone.filter(({ unitId, standing }) => unitId === id && !ended.has(standing.standing));
    byUnit.set(id, (parts = { people, compared: [] }));
  }
  return parts;
}

function partFrom({ people, compared }: Parts, { unit, context }: UnitNow, index: number): ComparedRegister {
  return (compared[index] ??= registerCompared(
    people.slice(index * partSize, (index + 1) * partSize).map(({ record, today, place }) => ({
      record,
      today,
      place: place?.on,
      context: context ?? { protocols: [], calendar: unit.calendar },
    })),
  ));
}

const flipView = (person: Person, { subject, on, from, to, verdictChanges, windowChanges }: Flip) => ({
  patient: subjectId(subject as `patient/${string}`),
  name: fullName(person),
  on: plainDate(on),
  from: from.headline(),
  to: to.headline(),
  verdictChanges,
  ...(windowChanges ? { windowFrom: windowText(from), windowTo: windowText(to) } : {}),
});

const windowText = ({ window }: Flip['from']): string =>
  window === undefined
    ? 'no date'
    : `${shortDate(window.first)} ${window.last === undefined ? 'onwards' : `to ${shortDate(window.last)}`}`;
