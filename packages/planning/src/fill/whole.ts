/** The first whole filling: every visit where the relaxed one has it, spread ones in one of their sessions, then settled. */
import { type Arrangement, emptyArrangement, give, mayGive, settleAll } from './arrangement.ts';
import type { Places } from './places.ts';
import { type Relaxed, cellOfUnit } from './relaxed.ts';
import { type Options, putIn } from './transport.ts';

/** Cells in which a visit may stand, as the relaxed filling has it: most units first. */
function cellsFor(relaxed: Relaxed, options: Options, visit: number): number[] {
  const units = relaxed.firstUnit[visit + 1]! - relaxed.firstUnit[visit]!;
  const count = new Map<number, number>();
  for (let unit = 0; unit < units; unit += 1) {
    const cell = cellOfUnit(relaxed, options, visit, unit);
    count.set(cell, (count.get(cell) ?? 0) + 1);
  }
  return [...count.keys()].toSorted((a, b) => count.get(b)! - count.get(a)!);
}

export function wholeFrom(
  relaxed: Relaxed,
  places: Places,
  options: Options,
  kind: Uint8Array,
  common: number,
): Arrangement {
  const arrangement = emptyArrangement(places, options, kind, common);
  const { transports } = arrangement;
  const outside = places.sessions;
  const unitsOfKind = new Int32Array(transports.length);
  kind.forEach((own, visit) => (unitsOfKind[own] = relaxed.firstUnit[visit + 1]! - relaxed.firstUnit[visit]!));
  transports.forEach((transport, own) => {
    for (let node = 0; node < transport.nodes; node += 1)
      transport.price[node] = (relaxed.transport.price[node]! * unitsOfKind[own]!) / relaxed.scale;
  });
  const spread: number[] = [];
  const stand = (visit: number, cell: number): void => {
    const own = kind[visit]!;
    putIn(transports[own]!, visit, cell);
    if (own !== common && options.node[cell] !== outside) give(arrangement, own, options.node[cell]!, 1);
  };
  const isAllowed = (visit: number, cell: number): boolean =>
    kind[visit] === common || options.node[cell] === outside || mayGive(arrangement, kind[visit]!, options.node[cell]!);
  for (let visit = 0; visit < kind.length; visit += 1) {
    const [only, ...others] = cellsFor(relaxed, options, visit);
    if (only === undefined || others.length > 0 || !isAllowed(visit, only)) spread.push(visit);
    else stand(visit, only);
  }
  for (const visit of spread) {
    const cells = [...cellsFor(relaxed, options, visit), ...cheapestFirst(options, visit)];
    stand(
      visit,
      cells.find((cell) => isAllowed(visit, cell))!,
    );
  }
  settleAll(arrangement);
  return arrangement;
}

/** Every option of a visit, the one outside last. */
const cheapestFirst = ({ first, end, cost }: Options, visit: number): number[] =>
  Array.from({ length: end[visit]! - first[visit]! }, (_, index) => first[visit]! + index).toSorted(
    (a, b) => cost[a]! - cost[b]!,
  );
