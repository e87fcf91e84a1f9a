/** Stock of a unit: the packs it keeps and scans, every batch with how many packs lie there, and what is not to be used. */
import {
  type Day,
  type PackOrder,
  type PackUsed,
  type SubjectRecord,
  batchesOf,
  day,
  entryText,
  factsOf,
  isBatch,
  isToldBefore,
  latest,
  onHand,
  packInUse,
  packsUsedFor,
  plainDate,
  receivedAs,
  sameBatch,
  standingStops,
  toTellOf,
  toldOf,
} from '@twelvemonth/clinical';
import type { BatchRow, PackOrderRow, StockView } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import type { Person } from '../register/people.ts';
import type { UnitNow } from '../register/units.ts';
import { stockAheadOf } from './stock-forecast.ts';
import { everySession } from './sessions.ts';

export async function stockOf(atHand: AtHand, unitNow: UnitNow): Promise<StockView> {
  const { unit, today } = unitNow;
  const { packs, packsCarrySerial, separatorSentAs } = unit.formulary;
  const records = await atHand.notes.all('batch');
  const had = await whoHadWhat(atHand, unit.id);
  const rows = records.flatMap((record) => rowOf(record, unit.id, today, had, atHand.accounts.nameOf) ?? []);
  const unitRecord = await atHand.notes.of('unit', unit.id);
  const { forecasts, orders } = stockAheadOf(unitNow, unitRecord, records, had, await atHand.people.all());
  return {
    unit: unit.id,
    unitName: unit.name,
    today: plainDate(today),
    formulary: {
      packs: packs.map((pack) => ({ ...pack })),
      packsCarrySerial,
      ...(separatorSentAs === undefined ? {} : { separatorSentAs }),
    },
    batches: rows.toSorted(byUrgency),
    ...(unit.stock === undefined ? {} : { settings: unit.stock }),
    forecasts,
    orders: orders.filter((one, index) => one.open > 0 || index < settledShown).map((one) => orderRowOf(one, atHand)),
  };
}

/** What is stopped first, then what expires first. */
const byUrgency = (a: BatchRow, b: BatchRow): number =>
  Number(b.stops.length > 0) - Number(a.stops.length > 0) || ((a.expiresOn ?? '') < (b.expiresOn ?? '') ? -1 : 1);

/** So many of the newest orders are shown though nothing is open of them. */
const settledShown = 5;

function orderRowOf({ order, received, open, closed }: PackOrder, { accounts }: AtHand): PackOrderRow {
  const { product, packs, expectedOn, from, reference } = order.body;
  return {
    order: order.id,
    product,
    packs,
    received,
    open,
    on: plainDate(order.on),
    by: accounts.nameOf(order.author.staff),
    expectedOn,
    ...(from === undefined ? {} : { from }),
    ...(reference === undefined ? {} : { reference }),
    ...(closed === undefined ? {} : { closed: closed.body.reason }),
  };
}

export type Had = {
  readonly people: ReadonlyMap<string, readonly Person[]>;
  readonly used: ReadonlyMap<string, readonly PackUsed[]>;
};

type PacksOfPerson = { readonly batches: ReadonlySet<string>; readonly uses: readonly PackUsed[] };
/** Kept as long as the notes are the same: a session never changes its unit. */
const packsKnown = new WeakMap<SubjectRecord, PacksOfPerson>();

function packsOf(record: SubjectRecord, unitOf: ReadonlyMap<string, string>): PacksOfPerson {
  const known = packsKnown.get(record);
  if (known !== undefined) return known;
  const found = {
    batches: new Set(batchesOf(record).map((one) => sameBatch(one.batch))),
    uses: packsUsedFor(record, (session) => unitOf.get(session)),
  };
  packsKnown.set(record, found);
  return found;
}

/** The days by which something has to be ordered that are come. */
export async function toOrderBy(atHand: AtHand, unit: UnitNow): Promise<Day[]> {
  if (unit.unit.stock === undefined) return [];
  const { forecasts } = stockAheadOf(
    unit,
    await atHand.notes.of('unit', unit.unit.id),
    await atHand.notes.all('batch'),
    await whoHadWhat(atHand, unit.unit.id),
    await atHand.people.all(),
  );
  return forecasts.flatMap(({ orderBy }) =>
    orderBy !== undefined && day(orderBy) <= unit.today ? [day(orderBy)] : [],
  );
}

/** By batch: the people of the service who had it, and the packs opened at this unit. */
export async function whoHadWhat(atHand: AtHand, unit: string): Promise<Had> {
  const unitOf = new Map((await everySession(atHand)).map((session) => [session.id, session.unit]));
  const people = new Map<string, Person[]>();
  const used = new Map<string, PackUsed[]>();
  for (const person of await atHand.people.all()) {
    const { batches, uses } = packsOf(person.record, unitOf);
    for (const batch of batches) people.set(batch, [...(people.get(batch) ?? []), person]);
    for (const use of uses) if (use.unit === unit) used.set(use.batch, [...(used.get(use.batch) ?? []), use]);
  }
  return { people, used };
}

/** The batch as it is written: by whoever received it, else by whoever stopped it. */
const numberOf = (record: SubjectRecord): string | undefined =>
  receivedAs(record)?.batch ?? factsOf(record, 'batch-stopped').at(-1)?.body.batch;

function rowOf(
  record: SubjectRecord,
  unit: string,
  today: Day,
  { people, used }: Had,
  nameOf: (staff: string) => string,
): BatchRow | undefined {
  const batch = numberOf(record);
  if (batch === undefined) return undefined;
  const received = receivedAs(record);
  const key = sameBatch(batch);
  const { packs, opened, counted } = onHand(record, unit, used.get(key) ?? []);
  const whoHadIt = people.get(key) ?? [];
  return {
    batch,
    ...(received === undefined
      ? {}
      : {
          product: received.product,
          expiresOn: received.expiresOn,
          ...(received.productNumber === undefined ? {} : { productNumber: received.productNumber }),
        }),
    expired: received !== undefined && day(received.expiresOn) < today,
    packs,
    opened,
    ...(counted === undefined ? {} : { counted: { ...counted, on: plainDate(counted.on) } }),
    people: whoHadIt.length,
    receipts: factsOf(record, 'batch-received')
      .filter(({ body }) => body.unit === unit)
      .map((fact) => ({
        entry: fact.id,
        on: plainDate(fact.on),
        by: nameOf(fact.author.staff),
        says: entryText(fact),
      })),
    stops: stopsOf(record, nameOf),
    ...toldSince(record, whoHadIt, batch),
    inUse: inUseOf(whoHadIt, batch),
  };
}

const stopsOf = (record: SubjectRecord, nameOf: (staff: string) => string): BatchRow['stops'] =>
  standingStops(record)
    .toReversed()
    .map(({ id, on, author, body: { why, reason, actWithin, toldBy, productNumber } }) => ({
      entry: id,
      why,
      since: plainDate(on),
      by: nameOf(author.staff),
      reason,
      ...(actWithin === undefined ? {} : { actWithin }),
      ...(toldBy === undefined ? {} : { toldBy }),
      ...(productNumber === undefined ? {} : { productNumber }),
    }));

/** Whoever was told since it was stopped. */
function toldSince(
  record: SubjectRecord,
  whoHadIt: readonly Person[],
  batch: string,
): Pick<BatchRow, 'told' | 'diedUntold'> {
  const stop = toTellOf(record);
  const untold = whoHadIt.filter((person) => {
    const told = toldOf(person.record, batch);
    return told === undefined || isToldBefore(told, stop);
  });
  return {
    told: whoHadIt.length - untold.length,
    diedUntold: untold.filter((person) => latest(person.record, 'died') !== undefined).length,
  };
}

const inUseOf = (whoHadIt: readonly Person[], batch: string): number =>
  whoHadIt.filter(({ record, today }) => {
    const inUse = packInUse(record, today);
    return inUse !== undefined && inUse.state !== 'given' && isBatch(inUse.preparation.body.batch, batch);
  }).length;
