/** The coming weeks of a unit's packs: what lies there and may be used, what is ordered, who is booked and who falls due. */
import {
  type Day,
  type ForecastInput,
  type Need,
  type PackOrder,
  type PackProduct,
  type SubjectRecord,
  day,
  dripProduct,
  factsOf,
  forecastOf,
  forecastSays,
  injectionOf,
  onHand,
  ordersOf,
  plainDate,
  protocolFor,
  receivedAs,
  sameBatch,
  stopOf,
} from '@twelvemonth/clinical';
import type { StockView } from '@twelvemonth/exchange';
import type { Person } from '../register/people.ts';
import type { UnitNow } from '../register/units.ts';
import type { Had } from './stock.ts';

/** Half a year: longer than any lead time, short enough that who falls due is known. */
const weeksAhead = 26;

/** A dose of theirs is still to come. */
const standsForADose: ReadonlySet<string> = new Set([
  'waiting for a place',
  'in work-up',
  'between doses',
  'overdue',
  'booked',
  'put off',
]);

/** What a person's next dose takes off the shelf, by what is ordered for them, else by the protocol's first regimen. */
function packsFor({ record, today, unit }: Person): { product: PackProduct; packs: number } | undefined {
  if (unit?.protocol === undefined) return undefined;
  const { medicine } = protocolFor(unit.protocol, record, today).regimen;
  if (medicine === 'zoledronic acid 5 mg') return { product: dripProduct, packs: 1 };
  const injected = injectionOf(medicine);
  return injected === undefined ? undefined : { product: injected.product, packs: injected.packs };
}

/** Booked on the day of the place; who has none on the day from which a dose is due, or first possible. */
function needOf(person: Person): (Need & { readonly product: PackProduct }) | undefined {
  const { place, standing, course, today } = person;
  if (!standsForADose.has(standing.standing) && place === undefined) return undefined;
  const taken = packsFor(person);
  if (taken === undefined) return undefined;
  if (place !== undefined) {
    const opened = factsOf(person.record, 'preparation').some(({ on }) => on === place.on);
    return opened ? undefined : { ...taken, on: place.on, why: 'booked' };
  }
  const from = course.due ?? person.readiness()?.window?.first;
  return from === undefined ? undefined : { ...taken, on: Math.max(from, today) as Day, why: 'due' };
}

export function stockAheadOf(
  { unit, today }: UnitNow,
  unitRecord: SubjectRecord,
  batches: readonly SubjectRecord[],
  had: Had,
  everyone: readonly Person[],
): { readonly forecasts: StockView['forecasts']; readonly orders: readonly PackOrder[] } {
  const orders = ordersOf(unitRecord, batches);
  const needs = everyone.flatMap((person) => {
    const at = person.place?.unit ?? person.unitId;
    const need = at === unit.id ? needOf(person) : undefined;
    return need === undefined ? [] : [need];
  });
  const lots = batches.flatMap((record) => {
    const received = receivedAs(record);
    if (received === undefined) return [];
    const { packs } = onHand(record, unit.id, had.used.get(sameBatch(received.batch)) ?? []);
    if (packs <= 0) return [];
    const expiresOn = day(received.expiresOn);
    const state = stopOf(record) !== undefined ? 'stopped' : expiresOn < today ? 'expired' : 'usable';
    return [{ product: received.product, packs, expiresOn, state } as const];
  });
  const open = orders.filter(({ open: packs }) => packs > 0);
  const products = new Set<PackProduct>([
    ...needs.map(({ product }) => product),
    ...lots.map(({ product }) => product),
    ...open.map(({ order }) => order.body.product),
  ]);
  const kept = new Set<string>([
    ...batches.flatMap((record) =>
      factsOf(record, 'batch-received').flatMap(({ body }) => (body.unit === unit.id ? [body.product] : [])),
    ),
    ...orders.map(({ order }) => order.body.product),
  ]);
  const wanted = (product: PackProduct): number =>
    needs.reduce((sum, need) => (need.product === product ? sum + need.packs : sum), 0);
  // What is kept here first, then what is needed most.
  const inOrder = [...products].toSorted(
    (a, b) => Number(kept.has(b)) - Number(kept.has(a)) || wanted(b) - wanted(a) || (a < b ? -1 : 1),
  );
  const forecasts = inOrder.map((product): StockView['forecasts'][number] => {
    const of = <One extends { readonly product: string }>(all: readonly One[]): One[] =>
      all.filter((one) => one.product === product);
    const coming = open.filter(({ order }) => order.body.product === product);
    const input: ForecastInput = {
      today,
      weeks: weeksAhead,
      lots: of(lots).filter(({ state }) => state === 'usable'),
      needs: of(needs),
      incoming: coming
        .filter(({ expectedOn }) => expectedOn >= today)
        .map(({ expectedOn, open: packs }) => ({ on: expectedOn, packs })),
      settings: kept.has(product) ? unit.stock : undefined,
    };
    const forecast = forecastOf(input);
    const packsIn = (state: 'stopped' | 'expired'): number =>
      of(lots).reduce((sum, lot) => (lot.state === state ? sum + lot.packs : sum), 0);
    const shown = (on: Day | undefined) => (on === undefined ? undefined : plainDate(on));
    return {
      product,
      kept: kept.has(product),
      needed: of(needs).reduce((sum, need) => (need.on <= forecast.until ? sum + need.packs : sum), 0),
      until: plainDate(forecast.until),
      usable: forecast.usable,
      expired: packsIn('expired'),
      stopped: packsIn('stopped'),
      late: coming.filter(({ expectedOn }) => expectedOn < today).reduce((sum, { open: packs }) => sum + packs, 0),
      weeks: forecast.weeks.map(({ from, ...week }) => ({ ...week, from: plainDate(from) })),
      runsOutOn: shown(forecast.runsOutOn),
      orderBy: shown(forecast.orderBy),
      missing: forecast.missing,
      says: [...forecastSays(forecast, input)],
    };
  });
  return { forecasts, orders };
}
