/** The packs of Marlowe Vale: one batch a quarter, scanned since a year and a bit; one older batch is recalled. All invented. */
import {
  type Act,
  type BodyOfKind,
  type Day,
  type PlainDate,
  addDays,
  addMonths,
  civilFromDay,
  dayFromCivil,
  daysInMonth,
  plainDate,
} from '@twelvemonth/clinical';
import { at } from './clock.ts';
import type { Life, Me } from './life.ts';
import { type UnitId, inRole } from './staff.ts';
import { unitIds } from './units.ts';
import type { World } from './world.ts';

const product = 'zoledronic acid 5 mg in 100 mL';
/** The standard's own example number, and two made by its check digit rule: no such packs exist. */
const productNumber = '09506000134352';
const lookAlikes = [
  { productNumber: '09506000140445', product: 'zoledronic acid 4 mg in 100 mL' },
  { productNumber: '05012345678900', product: 'paracetamol 1 g in 100 mL' },
] as const;

const MONTHS_A_QUARTER = 3;
const quarterOf = (on: Day): Day => {
  const { year, month } = civilFromDay(on);
  return dayFromCivil(year, month - ((month - 1) % MONTHS_A_QUARTER), 1);
};

const SHELF_MONTHS = 22;

/** The batch in use that quarter, and the last day on which it may be used. */
function batchIn(on: Day): { readonly batch: string; readonly expiresOn: PlainDate } {
  const begins = quarterOf(on);
  const { year, month } = civilFromDay(begins);
  const quarter = year * 4 + Math.floor((month - 1) / MONTHS_A_QUARTER);
  const last = civilFromDay(addMonths(begins, SHELF_MONTHS));
  return {
    batch: `PA-${1000 + ((quarter * 37) % 9000)}`,
    expiresOn: plainDate(dayFromCivil(last.year, last.month, daysInMonth(last.year, last.month))),
  };
}

/** Before that day packs were typed. */
const scannedSince = (world: World): Day => quarterOf(addMonths(world.today, -15));

/** What the preparer reads off a pack: typed in the old days, scanned since. */
export function packFor(me: Me): Pick<BodyOfKind<'preparation'>, 'product' | 'batch' | 'expiresOn' | 'scan'> {
  const { batch, expiresOn } = batchIn(me.today);
  if (me.today < scannedSince(me.world)) return { product, batch, expiresOn };
  const serial = `S${me.person.number.replaceAll(/\D/g, '').slice(-7)}${me.today}`;
  const expiry = expiresOn.slice(2).replaceAll('-', '');
  const code = `01${productNumber}17${expiry}10${batch}\u241D21${serial}`;
  return { product, batch, expiresOn, scan: { code, productNumber, serial } };
}

const packsAQuarter: Readonly<Record<UnitId, number>> = { thornbeck: 96, saltmere: 48 };

/** A pharmacist lists the packs, and receives the batch of each quarter before the first session of it. */
export function* keepsPacks(unit: UnitId, world: World): Life {
  const by = inRole('pharmacist', unit, 0);
  const since = scannedSince(world);
  const list: Act = {
    name: 'set formulary',
    unit,
    body: { packs: [{ productNumber, product }, ...lookAlikes], packsCarrySerial: true },
  };
  yield { at: at(since, 7, 30), act: list, by };
  for (let on = since; on <= world.today; on = addMonths(on, MONTHS_A_QUARTER)) {
    const body = { unit, ...batchIn(on), product, productNumber, packs: packsAQuarter[unit], from: 'Plant A' } as const;
    yield { at: at(on, 7, 40), act: { name: 'receive packs', body }, by };
  }
  yield {
    at: at(addDays(world.today, -3), 16),
    act: {
      name: 'order packs',
      unit,
      body: {
        product,
        packs: packsAQuarter[unit] / 2,
        expectedOn: plainDate(addDays(world.today, 4)),
        from: 'hospital pharmacy',
        reference: 'MV-2206',
      },
    },
    by,
  };
  if (unit === unitIds[0]) yield* recallsOne(world);
}

/** The batch of half a year ago is called back a few days before the demo's day: who had it is still to be told. */
function* recallsOne(world: World): Life {
  const { batch } = batchIn(addMonths(world.today, -2 * MONTHS_A_QUARTER));
  yield {
    at: at(addDays(world.today, -6), 15),
    act: {
      name: 'stop batch',
      body: {
        batch,
        why: 'batch recall',
        actWithin: '5 days',
        reason: 'labels of some bottles come off',
        toldBy: 'notice of the maker, Plant A',
      },
    },
    by: inRole('pharmacist', 'thornbeck', 0),
  };
}
