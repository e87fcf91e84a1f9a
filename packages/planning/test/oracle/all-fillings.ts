/** The best filling of a few people by trying all of them. Written for plainness, not speed. */
import type { FillProblem } from '../../src/index.ts';

export function leastCost({ places, kind, options }: FillProblem): number {
  const left = places.has.map((has) => [...has]);
  let least = Number.POSITIVE_INFINITY;
  const place = (visit: number, cost: number): void => {
    if (visit === kind.length) {
      least = Math.min(least, cost);
      return;
    }
    for (let cell = options.first[visit] ?? 0; cell < (options.end[visit] ?? 0); cell += 1) {
      const session = options.node[cell] ?? places.sessions;
      const own = session === places.sessions ? [] : (places.use[kind[visit] ?? 0] ?? []);
      own.forEach((amount, resource) => (left[resource]![session]! -= amount));
      if (own.every((_, resource) => left[resource]![session]! >= 0))
        place(visit + 1, cost + (options.cost[cell] ?? 0));
      own.forEach((amount, resource) => (left[resource]![session]! += amount));
    }
  };
  place(0, 0);
  return least;
}

/** Whether no session holds more than it has. */
export function isWithin({ places, kind }: FillProblem, session: ArrayLike<number>): boolean {
  return places.has.every((has, resource) => {
    const used = new Int32Array(places.sessions + 1);
    kind.forEach((own, visit) => (used[session[visit] ?? 0]! += places.use[own]?.[resource] ?? 0));
    return has.every((amount, index) => used[index]! <= amount);
  });
}
