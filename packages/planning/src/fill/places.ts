/**
 * What visits of each kind take of a session and what a session has: nurse minutes, chair minutes, first visits, whatever a
 * unit counts. Kinds are few, so that what stands in a session is said by one count a kind.
 */
export type Places = {
  readonly sessions: number;
  /** By kind: what one visit takes of each resource. */
  readonly use: readonly (readonly number[])[];
  /** By resource: what each session has. */
  readonly has: readonly Int32Array[];
};

export type Counts = readonly Int32Array[];

/** What all kinds but one leave of a resource in a session. */
function leftFor({ use, has }: Places, counts: Counts, except: number, resource: number, session: number): number {
  let left = has[resource]![session]!;
  for (let kind = 0; kind < use.length; kind += 1)
    if (kind !== except) left -= counts[kind]![session]! * use[kind]![resource]!;
  return left;
}

/** How many visits of a kind there is room for beside those of the other kinds; negative when even the others are too many. */
export function roomFor(places: Places, counts: Counts, kind: number, session: number): number {
  let room = Number.POSITIVE_INFINITY;
  for (let resource = 0; resource < places.has.length; resource += 1) {
    const left = leftFor(places, counts, kind, resource, session);
    if (left < 0) return -1;
    const each = places.use[kind]![resource]!;
    if (each > 0) room = Math.min(room, Math.floor(left / each));
  }
  return room;
}
