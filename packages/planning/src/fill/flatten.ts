/** A request as the flat arrays of the filling. Urgent people of a kind are a kind of their own: the reserve is theirs. */
import { daysFor, daysWithoutPlace, tierWeight, whyNotOffered } from './cost.ts';
import type { FillProblem } from './filling.ts';
import type { FillRequest, FillSession, Waiting } from './request.ts';

const percent = 100;

/** Cells for later changes: so many options a person, for one person in so many. */
const spareCells = 4_096;

export const kindIndex = (person: Waiting): number => person.kind * 2 + (person.tier === 0 ? 0 : 1);

/**
 * A part of a day, whatever the tier, for a place that was told and is moved: where two fillings count the same days, the one
 * in which more people keep what they were told goes first. A power of two, so that sums of it stay exact.
 */
export const keepsOnTie = 2 ** -6;

/** Options of one person: sessions and costs, the last to have no place; `forMoving` is added where a told place is moved. */
export function optionsOf(
  request: FillRequest,
  person: Waiting,
  forMoving = 0,
): { readonly node: number[]; readonly cost: number[] } {
  const node: number[] = [];
  const cost: number[] = [];
  const weight = tierWeight(person.tier);
  const add = (session: number, days: number): void => {
    const isMoved = person.told !== null && person.told !== session;
    node.push(session);
    cost.push(weight * days + (isMoved ? forMoving : 0));
  };
  request.sessions.forEach((session, index) => {
    if (whyNotOffered(person, session) === undefined) add(index, daysFor(person, session, index, request.weights));
  });
  add(request.sessions.length, daysWithoutPlace(person, request.weights));
  return { node, cost };
}

/**
 * Resources in this order: nurse minutes, those not reserved, chair minutes, those not reserved, first visits; and visits, where
 * a session has only so many places.
 */
export function problemFor(request: FillRequest, forMoving = 0): FillProblem {
  const { kinds, sessions, people } = request;
  const visits = sessions.some(({ mostVisits }) => mostVisits !== undefined) ? [1] : [];
  const use = kinds.flatMap(({ nurseMinutes, chairMinutes, isFirst }) => [
    [nurseMinutes, 0, chairMinutes, 0, isFirst ? 1 : 0, ...visits],
    [nurseMinutes, nurseMinutes, chairMinutes, chairMinutes, isFirst ? 1 : 0, ...visits],
  ]);
  const column = (of: (session: FillSession) => number): Int32Array => Int32Array.from(sessions, of);
  const open = (minutes: number, { reservedPercent }: FillSession): number =>
    Math.floor((minutes * (percent - reservedPercent)) / percent);
  const has = [
    column(({ nurseMinutes }) => nurseMinutes),
    column((session) => open(session.nurseMinutes, session)),
    column(({ chairMinutes }) => chairMinutes),
    column((session) => open(session.chairMinutes, session)),
    column(({ mostFirstVisits }) => mostFirstVisits),
    ...visits.map(() => column(({ mostVisits }) => mostVisits ?? people.length)),
  ];
  const first = new Int32Array(people.length);
  const end = new Int32Array(people.length);
  const nodes: number[] = [];
  const costs: number[] = [];
  people.forEach((person, visit) => {
    first[visit] = nodes.length;
    const { node, cost } = optionsOf(request, person, forMoving);
    for (const one of node) nodes.push(one);
    for (const one of cost) costs.push(one);
    end[visit] = nodes.length;
  });
  const node = new Int16Array(nodes.length + spareCells);
  const cost = new Float64Array(nodes.length + spareCells);
  node.set(nodes);
  cost.set(costs);
  return {
    places: { sessions: sessions.length, use, has },
    kind: Uint8Array.from(people, kindIndex),
    options: { first, end, node, cost },
  };
}
