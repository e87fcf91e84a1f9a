/**
 * A year of places as the general-purpose peers were given it (the same seeded generator, rewritten): n visits over 250
 * sessions, a first visit takes two units, capacity grows with n. Published with the optima that a general solver found.
 */
import type { FillProblem } from '../../src/index.ts';

const sessions = 250;
const notPlaced = 2_000;
const closed = 8;
const load = 0.88;
const days = [14, 28, 42, 56] as const;
const bloodsHold = 90;

/** Optimum and relaxation by HiGHS 1.15.1 (linear and integer), in its own run. Nothing is known of the optimum at 20,000. */
export const knownYears: readonly { readonly visits: number; readonly relaxed: number; readonly optimum?: number }[] = [
  { visits: 300, relaxed: 540, optimum: 591 },
  { visits: 1_200, relaxed: 1_820, optimum: 1_851 },
  { visits: 5_000, relaxed: 6_283, optimum: 6_300 },
  { visits: 20_000, relaxed: 24_702 },
];

/** The generator of the instances: numbers from 0 up to 1. */
function fractions(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

type YearVisit = {
  readonly isFirst: boolean;
  readonly from: number;
  readonly until: number;
  readonly due: number;
  readonly wanted: number;
  readonly priority: number;
};

function visitsOf(count: number, next: () => number): YearVisit[] {
  return Array.from({ length: count }, () => {
    const due = Math.floor(next() * 345);
    const isFirst = next() < 0.3;
    const flexible = days[Math.floor(next() * days.length)] ?? 0;
    const bloods = due - 30 + Math.floor(next() * 40);
    const wanted = next() < 0.5 ? Math.floor(next() * 5) : -1;
    const until = Math.min(349, due + flexible, bloods + bloodsHold);
    return { isFirst, from: Math.max(0, due - 7), until, due, wanted, priority: next() < 0.1 ? 5 : 1 };
  });
}

export function yearOfPlaces(count: number): FillProblem {
  const next = fractions(1 + count);
  const visits = visitsOf(count, next);
  const units = visits.reduce((sum, { isFirst }) => sum + (isFirst ? 2 : 1), 0);
  const has = Int32Array.from({ length: sessions }, () =>
    Math.max(2, Math.round((units / sessions / load) * (0.6 + 0.8 * next()))),
  );
  for (let one = 0; one < closed; one += 1) has[Math.floor(next() * sessions)] = 0;
  const first = new Int32Array(count);
  const end = new Int32Array(count);
  const node: number[] = [];
  const cost: number[] = [];
  visits.forEach(({ from, until, due, wanted, priority }, visit) => {
    first[visit] = node.length;
    for (let session = 0; session < sessions; session += 1) {
      const day = Math.floor(session / 5) * 7 + (session % 5);
      if (has[session] === 0 || day < from || day > until) continue;
      const late = priority * Math.max(0, day - due) + Math.max(0, due - day);
      node.push(session);
      cost.push(late + (wanted >= 0 && wanted !== session % 5 ? 10 : 0));
    }
    node.push(sessions);
    cost.push(notPlaced);
    end[visit] = node.length;
  });
  return {
    places: { sessions, use: [[1], [2]], has: [has] },
    kind: Uint8Array.from(visits, ({ isFirst }) => (isFirst ? 1 : 0)),
    options: { first, end, node: Int16Array.from(node), cost: Float64Array.from(cost) },
  };
}
