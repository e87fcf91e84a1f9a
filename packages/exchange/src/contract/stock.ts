/** The packs a unit keeps, what lies on its shelf, the batches that are not to be used, and whom a batch went to. */
import { packProducts } from '@twelvemonth/clinical';
import { z } from 'zod';
import { date } from './basics.ts';

/** The batch was stopped after the pack was prepared. */
export const stoppedPack = z.object({
  state: z.enum(['prepared', 'runs', 'stands still', 'given']),
  since: date,
  says: z.string(),
  whatNow: z.string(),
});

/** One receipt, as it was written down. */
const receipt = z.object({ entry: z.string(), on: date, by: z.string(), says: z.string() });

/** One reason why no pack of it may be used; each is lifted by itself. */
const batchStop = z.object({
  entry: z.string(),
  why: z.enum(['quarantine', 'batch recall']),
  since: date,
  by: z.string(),
  reason: z.string(),
  actWithin: z.string().optional(),
  toldBy: z.string().optional(),
  /** Only packs with this number; absent: every pack of the batch. */
  productNumber: z.string().optional(),
});
export type BatchStopView = z.infer<typeof batchStop>;

export const batchRow = z.object({
  batch: z.string(),
  /** As received; absent: nobody received packs of it. */
  product: z.string().optional(),
  productNumber: z.string().optional(),
  /** A pack may be used through this day. */
  expiresOn: date.optional(),
  expired: z.boolean(),
  /** At the unit asked about. `packs` is what the sum says; below nought: more were opened than came in. */
  packs: z.number().int(),
  opened: z.number().int(),
  counted: z.object({ packs: z.number().int(), on: date, saidThen: z.number().int() }).optional(),
  /** People of the whole service in whose notes the batch stands. */
  people: z.number().int(),
  /** What came to the unit asked about, as it was written down. */
  receipts: z.array(receipt),
  /** Every stop that stands, the newest first; none: its packs may be used. */
  stops: z.array(batchStop),
  /** Since it was stopped: how many of the people have been told, and how many of them have died untold. */
  told: z.number().int(),
  diedUntold: z.number().int(),
  /** Packs of it that are prepared or run now, anywhere in the service. */
  inUse: z.number().int(),
});
export type BatchRow = z.infer<typeof batchRow>;

/** One product over the coming weeks: packs that may be used, against doses that are booked and due. */
export const stockForecast = z.object({
  product: z.enum(packProducts),
  /** Packs of it were received or ordered here. */
  kept: z.boolean(),
  /** Packs for all that is booked and due until the last day looked at. */
  needed: z.number().int(),
  until: date,
  /** Packs that may be used today; the others lie there and may not. */
  usable: z.number().int(),
  expired: z.number().int(),
  stopped: z.number().int(),
  /** Ordered, expected on a day that is past, not here: not counted. */
  late: z.number().int(),
  weeks: z.array(
    z.object({
      /** Monday. */
      from: date,
      booked: z.number().int(),
      due: z.number().int(),
      incoming: z.number().int(),
      expire: z.number().int(),
      left: z.number().int(),
      short: z.number().int(),
    }),
  ),
  runsOutOn: date.optional(),
  /** Absent: no lead time is set, or nothing is missing. */
  orderBy: date.optional(),
  missing: z.number().int(),
  says: z.array(z.string()),
});
export type StockForecast = z.infer<typeof stockForecast>;

export const packOrderRow = z.object({
  order: z.string(),
  product: z.enum(packProducts),
  packs: z.number().int(),
  received: z.number().int(),
  /** Still to come. */
  open: z.number().int(),
  on: date,
  by: z.string(),
  expectedOn: date,
  from: z.string().optional(),
  reference: z.string().optional(),
  /** Why nothing more comes of it. */
  closed: z.string().optional(),
});
export type PackOrderRow = z.infer<typeof packOrderRow>;

export const stockView = z.object({
  unit: z.string(),
  unitName: z.string(),
  today: date,
  formulary: z.object({
    packs: z.array(z.object({ productNumber: z.string(), product: z.enum(packProducts) })),
    separatorSentAs: z.string().optional(),
    packsCarrySerial: z.boolean(),
  }),
  batches: z.array(batchRow),
  /** As the unit has set them. */
  settings: z.object({ leadDays: z.number().int(), reservePacks: z.number().int() }).optional(),
  forecasts: z.array(stockForecast),
  /** The newest first; those long settled are left out. */
  orders: z.array(packOrderRow),
});
export type StockView = z.infer<typeof stockView>;

const hadBatch = z.object({ on: date, what: z.string(), where: z.string() });

export const traceQuery = z.object({ batch: z.string().min(1).max(200) });
/** Everybody in whose notes a batch stands, the newest first. */
export const traceView = z.object({
  batch: z.string(),
  /** What is said about the batch, in order of writing. */
  said: z.array(z.object({ on: date, by: z.string(), text: z.string() })),
  stopped: z.boolean(),
  people: z.array(
    z.object({
      patient: z.string(),
      name: z.string(),
      number: z.string(),
      born: z.string(),
      telephone: z.string().optional(),
      standing: z.string(),
      on: date,
      /** "whole dose, 32 minutes", "part dose of 40 mL", "opened for them, no dose in the notes" */
      what: z.string(),
      where: z.string(),
      /** Had it more than once: the other times, the newest first. */
      also: z.array(hadBatch),
      died: date.optional(),
      /** `before`: before the batch was stopped as it is now, so of something else. */
      told: z
        .object({ on: date, by: z.string(), how: z.string(), note: z.string().optional(), before: z.boolean() })
        .optional(),
    }),
  ),
  /** Packs prepared now whose batch is told to nobody before their second check: any of them may be of it. */
  waitForCheck: z.number().int(),
  /** The same number with other signs (a hyphen more or less), as it stands somewhere in the notes: not in this trace. */
  alike: z.array(z.string()),
  /** Doses of the same medicine, in the time of the batch, of which the notes have no batch: they may be of it. */
  withoutBatch: z.array(z.object({ patient: z.string(), name: z.string(), number: z.string(), ...hadBatch.shape })),
});
export type TraceView = z.infer<typeof traceView>;

/** The batches a person had, the newest first. */
export const batchesOfPersonView = z.object({
  patient: z.string(),
  name: z.string(),
  number: z.string(),
  batches: z.array(z.object({ batch: z.string(), ...hadBatch.shape, stopped: z.string().optional() })),
  /** Doses of which no batch is in the notes. */
  withoutBatch: z.array(hadBatch),
});
export type BatchesOfPersonView = z.infer<typeof batchesOfPersonView>;
