/** The group directions of a unit: who signed which, and under which of them an order may be recorded on a day. */
import { type Day, day, shortDate } from '../calendar/day.ts';
import type { BodyOfKind } from '../kinds/index.ts';
import type { StaffId, Uuid } from '../ledger/entry.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';

type Signature = { readonly by: StaffId; readonly on: Day };

export type GroupDirection = {
  readonly entry: Uuid;
  readonly body: BodyOfKind<'group-direction'>;
  readonly written: Signature;
  /** Undefined: no pharmacist has signed it. */
  readonly signed: Signature | undefined;
  readonly ended: (Signature & { readonly reason: string }) | undefined;
  /** A later version of the same name is signed and has begun by then. */
  readonly replacedFrom: Day | undefined;
};

export function directionsOf(unit: SubjectRecord): readonly GroupDirection[] {
  const written = factsOf(unit, 'group-direction');
  const signatures = factsOf(unit, 'group-direction-signed');
  const ends = factsOf(unit, 'group-direction-ended');
  const signedOf = ({ id }: Fact): Fact<'group-direction-signed'> | undefined =>
    signatures.find(({ body }) => body.direction === id);
  return written.map((one) => {
    const signed = signedOf(one);
    const end = ends.find(({ body }) => body.direction === one.id);
    const later = written.filter(
      (other) => other.seq > one.seq && other.body.name === one.body.name && signedOf(other) !== undefined,
    );
    const begins = later.map(({ body }) => day(body.validFrom));
    return {
      entry: one.id,
      body: one.body,
      written: { by: one.author.staff, on: one.on },
      signed: signed === undefined ? undefined : { by: signed.author.staff, on: signed.on },
      ended: end === undefined ? undefined : { by: end.author.staff, on: end.on, reason: end.body.reason },
      replacedFrom: begins.length === 0 ? undefined : (Math.min(...begins) as Day),
    };
  });
}

/** Why nobody orders or gives under it on a day; undefined: it is in force. */
export function notInForce(direction: GroupDirection, on: Day): string | undefined {
  const { body, signed, ended, replacedFrom } = direction;
  if (ended !== undefined) return `ended on ${shortDate(ended.on)}: ${ended.reason}`;
  if (signed === undefined) return 'no pharmacist has signed it';
  if (on < day(body.validFrom)) return `in force from ${shortDate(day(body.validFrom))}`;
  if (on > day(body.validUntil)) return `its last day was ${shortDate(day(body.validUntil))}`;
  return replacedFrom !== undefined && replacedFrom <= on
    ? `replaced by a later version from ${shortDate(replacedFrom)}`
    : undefined;
}

export const directionTitle = ({ body }: Pick<GroupDirection, 'body'>): string =>
  `${body.name}, version ${body.version}`;
