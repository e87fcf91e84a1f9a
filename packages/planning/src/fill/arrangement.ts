/**
 * Whole visits in sessions. Each kind of visit has its own transportation problem, always at its optimum for the room it is
 * given. The less common kinds are given room by count; the most common kind has what they leave. What remains to be found is
 * the counts.
 */
import { type Places, roomFor } from './places.ts';
import { settle } from './settle.ts';
import { NOWHERE, type Options, type Transport, putIn, takeOut, transportOver } from './transport.ts';

export type Arrangement = {
  readonly places: Places;
  readonly options: Options;
  readonly kind: Uint8Array;
  /** The kind that has what the others leave. */
  readonly common: number;
  /** By kind and session: the room of the less common kinds. Those of the common kind are not used. */
  readonly given: readonly Int32Array[];
  readonly transports: readonly Transport[];
};

export const costOf = ({ transports }: Arrangement): number => {
  let cost = 0;
  for (const transport of transports) cost += transport.cost;
  return cost;
};

/** The option a visit stands in. */
export const cellOf = ({ kind, transports }: Arrangement, visit: number): number =>
  transports[kind[visit]!]!.at[visit]!;

export function emptyArrangement(places: Places, options: Options, kind: Uint8Array, common: number): Arrangement {
  const given = places.use.map(() => new Int32Array(places.sessions + 1));
  const rooms = Int32Array.from({ length: places.sessions }, (_, session) => roomFor(places, given, common, session));
  return {
    places,
    options,
    kind,
    common,
    given,
    transports: places.use.map((_, own) =>
      transportOver(places.sessions + 1, kind.length, options, own === common ? rooms : given[own]!),
    ),
  };
}

/** Whether a kind may be given room for one more in a session, if need be by the common kind giving up its own. */
export function mayGive({ places, given, common }: Arrangement, kind: number, session: number): boolean {
  given[kind]![session]! += 1;
  const room = roomFor(places, given, common, session);
  given[kind]![session]! -= 1;
  return room >= 0;
}

/** The room of the common kind after a kind is given one more or one less. */
export function commonRoomAfter(
  { places, given, common }: Arrangement,
  kind: number,
  session: number,
  by: 1 | -1,
): number {
  given[kind]![session]! += by;
  const room = roomFor(places, given, common, session);
  given[kind]![session]! -= by;
  return Math.max(0, room);
}

/** Gives a kind room for one more or one less; nobody moves yet. */
export function give(
  { places, given, common, transports }: Arrangement,
  kind: number,
  session: number,
  by: 1 | -1,
): void {
  given[kind]![session]! += by;
  transports[kind]!.room[session] = given[kind]![session]!;
  transports[common]!.room[session] = Math.max(0, roomFor(places, given, common, session));
}

/** Brings a session to the optimum of every kind. */
export function settleSession({ transports }: Arrangement, session: number): void {
  for (const transport of transports) settle(transport, session);
}

export function settleAll({ transports }: Arrangement): void {
  for (const transport of transports) {
    const { nodes, load, room, price } = transport;
    for (let isOff = true; isOff;) {
      isOff = false;
      for (let node = 0; node < nodes; node += 1) {
        if (load[node] === room[node] || (load[node]! < room[node]! && price[node] === 0)) continue;
        isOff = true;
        settle(transport, node);
      }
    }
  }
}

/** A state to come back to, prices included. */
export type Mark = {
  readonly journal: readonly number[];
  readonly price: readonly Float64Array[];
  readonly cost: number;
};

export const markOf = (arrangement: Arrangement): Mark => ({
  journal: arrangement.transports.map(({ journal }) => journal.length),
  price: arrangement.transports.map(({ price }) => price.slice()),
  cost: costOf(arrangement),
});

/** Takes back every move since the mark; the room given is the caller's to take back. */
export function takeBack({ transports }: Arrangement, mark: Mark): void {
  transports.forEach((transport, kind) => {
    const { journal } = transport;
    while (journal.length > mark.journal[kind]!) {
      const cell = journal.pop()!;
      const item = journal.pop()!;
      takeOut(transport, item);
      if (cell !== NOWHERE) putIn(transport, item, cell);
    }
    transport.price.set(mark.price[kind]!);
  });
}
