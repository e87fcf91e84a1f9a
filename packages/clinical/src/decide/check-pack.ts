/** The pack in the hand: the right product, scanned or typed with a reason, in date, whole, of a batch nobody stopped, used once. */
import { type Day, day, shortDate } from '../calendar/day.ts';
import type { PackProduct } from '../kinds/products.ts';
import { batchSubject, packSubject, sameBatch } from '../ledger/batch-subject.ts';
import type { Draft } from '../ledger/entry.ts';
import { subjectId } from '../ledger/subject.ts';
import type { BodyOfKind } from '../kinds/index.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { alikeBatches } from '../stock/alike-batch.ts';
import { stopOf } from '../stock/batch-stop.ts';
import { type Visit, productOf, visitOn } from '../visit/visit.ts';
import type { Formulary } from '../unit/formulary.ts';
import { draftNow } from './draft.ts';
import { recordIn } from './ledgers.ts';
import type { Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';
import type { Surroundings } from './surroundings.ts';

type Pack = BodyOfKind<'preparation'>;
/** What a scan or a typing says of one pack, before anything else is known about the dose. */
export type PackInHand = Pick<Pack, 'product' | 'batch' | 'expiresOn' | 'scan'>;

/** What stops a pack: not the product it has to be, expiry, batch. `on` is the day of the dose. */
export function checkPackMayBeUsed(
  pack: PackInHand,
  { on, product }: { readonly on: Day; readonly product: PackProduct },
  batch: SubjectRecord,
  path: string,
  /** The same number written with other signs. */
  alike: readonly SubjectRecord[] = [],
): readonly Refusal[] {
  return [
    ...checkProduct(pack.product, product, path),
    ...checkExpiry(pack.expiresOn, on, path),
    ...checkBatch(pack, [batch, ...alike], path),
    ...checkAsReceived({ ...pack, productNumber: pack.scan?.productNumber }, batch, path),
  ];
}

function checkProduct(product: PackProduct, ordered: PackProduct, path: string): readonly Refusal[] {
  if (product === ordered) return [];
  return [
    refusal('wrong-product', `The pack reads "${product}"; the order is ${ordered}.`, {
      field: `${path}.product`,
      remedy: 'put it back; fetch the right pack; tell the nurse in charge',
    }),
  ];
}

/** A pack may be used through the date on it. */
function checkExpiry(expiresOn: string, on: Day, path: string): readonly Refusal[] {
  if (day(expiresOn) >= on) return [];
  return [
    refusal('pack-expired', `The pack could be used until ${shortDate(day(expiresOn))}.`, {
      field: `${path}.expiresOn`,
      remedy: 'take another; quarantine this one',
    }),
  ];
}

function checkBatch({ batch, scan }: PackInHand, records: readonly SubjectRecord[], path: string): readonly Refusal[] {
  const [stop] = records.flatMap((record) => stopOf(record, scan?.productNumber) ?? []);
  if (stop === undefined) return [];
  const { why, reason, batch: written } = stop.body;
  const other = sameBatch(written) === sameBatch(batch) ? '' : `, and this one reads ${batch}`;
  return [
    refusal(
      'batch-stopped',
      `Batch ${other === '' ? batch : written} is ${why === 'quarantine' ? 'in quarantine' : 'recalled'} since ${shortDate(stop.on)}: ${reason}${other}.`,
      {
        field: `${path}.batch`,
        remedy: 'put the pack with the others of its batch; take one of another batch; tell the pharmacist',
      },
    ),
  ];
}

/** What else the notes have of the batch under another spelling. */
export const alikeIn = (batch: string, now: Surroundings): readonly SubjectRecord[] =>
  alikeBatches(batch, now.ledgers.keys(), (of) => recordIn(now, of));

/**
 * A pack is like the others of its batch that were received: the same product, the same month on it. Where one differs, one
 * of them was misread or is not what it seems. A batch nobody received tells nothing.
 */
export function checkAsReceived(
  pack: Pick<Pack, 'product' | 'batch' | 'expiresOn'> & { readonly productNumber?: string | undefined },
  record: SubjectRecord,
  path: string,
): readonly Refusal[] {
  const received = factsOf(record, 'batch-received').findLast(
    ({ body }) =>
      body.productNumber === undefined || pack.productNumber === undefined || body.productNumber === pack.productNumber,
  );
  if (received === undefined) return [];
  const { product, expiresOn } = received.body;
  const differs = (field: 'product' | 'expiresOn', says: string): Refusal =>
    refusal('pack-differs-from-stock', `${says}, received on ${shortDate(received.on)}.`, {
      field: `${path}.${field}`,
      remedy: 'read pack and batch again; if both are right, put the pack aside for the pharmacist',
    });
  return [
    ...(product === pack.product ? [] : [differs('product', `Batch ${pack.batch} is ${product}`)]),
    ...(expiresOn.slice(0, MONTH) === pack.expiresOn.slice(0, MONTH)
      ? []
      : [differs('expiresOn', `Packs of batch ${pack.batch} may be used until ${shortDate(day(expiresOn))}`)]),
  ];
}

/** YYYY-MM: a pack may print a month where its code gives a day. */
const MONTH = 7;

/** A serial that was scanned for somebody, or on another day, is a pack that was opened: never again. */
export function checkNotOpened(
  opened: SubjectRecord,
  { patient, on }: { readonly patient: string; readonly on: Day },
  path: string,
): readonly Refusal[] {
  const before = factsOf(opened, 'pack-opened').find((one) => one.body.patient !== patient || one.on !== on);
  if (before === undefined) return [];
  const whose = before.body.patient === patient ? 'this person' : 'somebody else';
  return [
    refusal(
      'pack-used-before',
      `The pack with serial ${before.body.serial} was scanned for ${whose} on ${shortDate(before.on)}.`,
      { field: `${path}.scan`, remedy: 'put it aside and take another; tell the nurse in charge' },
    ),
  ];
}

/** A pack the unit knows by its product number is what the list says it is. */
export function checkListed(productNumber: string, product: string | undefined, formulary: Formulary, path: string) {
  const listed = formulary.packs.find((pack) => pack.productNumber === productNumber);
  if (listed === undefined) {
    return [
      refusal('not-in-the-formulary', `No pack of this unit has the product number ${productNumber}.`, {
        field: `${path}.scan`,
        remedy: 'do not use it; ask the pharmacist, who lists the packs the unit keeps',
      }),
    ];
  }
  if (product === undefined || listed.product === product) return [];
  return [
    refusal('wrong-product', `The code is that of ${listed.product}, not of ${product}.`, {
      field: `${path}.product`,
      remedy: 'read the pack again; if pack and code differ, put it aside for the pharmacist',
    }),
  ];
}

/** Where the unit lists its packs they are scanned; who types says why. */
function checkScannedOrWhyNot(
  { scan, typedBecause, product }: Pack,
  formulary: Formulary,
  path: string,
): readonly Refusal[] {
  if (scan !== undefined) return checkListed(scan.productNumber, product, formulary, path);
  if (typedBecause !== undefined || formulary.packs.length === 0) return [];
  return [
    refusal('pack-not-scanned', 'The pack was not scanned.', {
      field: `${path}.scan`,
      remedy: 'scan the square code on the pack, or type what it says and why it was not scanned',
    }),
  ];
}

/** A new preparation. */
export function checkPack(
  { body, on }: Fact<'preparation'>,
  patient: SubjectRecord,
  now: Surroundings,
): readonly Refusal[] {
  const path = 'line.body';
  const { batch, scan } = body;
  const opened = scan?.serial === undefined ? undefined : recordIn(now, packSubject(scan.productNumber, scan.serial));
  return [
    ...checkPackMayBeUsed(
      body,
      { on, product: productOf(visitOn(patient, on)) },
      recordIn(now, batchSubject(batch)),
      path,
      alikeIn(batch, now),
    ),
    ...checkClear(body, path),
    ...checkScannedOrWhyNot(body, now.formulary, path),
    ...(opened === undefined ? [] : checkNotOpened(opened, { patient: subjectId(patient.subject), on }, path)),
  ];
}

const checkClear = ({ clearAndColourless }: Pack, path: string): readonly Refusal[] =>
  clearAndColourless
    ? []
    : [
        refusal('wrong-product', 'The solution is not clear, or not of its colour.', {
          field: `${path}.clearAndColourless`,
          remedy: 'do not use it; keep it for the pharmacist',
        }),
      ];

/** A correction says the same pack better; another pack is another preparation. */
export function checkPackCorrected(
  before: Fact<'preparation'>,
  after: Fact<'preparation'>,
  patient: SubjectRecord,
  now: Surroundings,
): readonly Refusal[] {
  const same = JSON.stringify(before.body.scan ?? null) === JSON.stringify(after.body.scan ?? null);
  return [
    ...checkPack(after, patient, now),
    ...(same
      ? []
      : [
          refusal('part-of-a-finished-step', 'What was scanned is not corrected.', {
            field: 'line.body.scan',
            remedy: 'withdraw the preparation with the reason and scan the pack again',
          }),
        ]),
  ];
}

/** When the medicine is about to run, what was prepared must still be fit: a batch may have been stopped meanwhile. */
export const checkPreparedStillGood = (
  { body, on }: Fact<'preparation'>,
  visit: Visit,
  now: Surroundings,
): readonly Refusal[] => [
  ...checkPackMayBeUsed(
    body,
    { on, product: productOf(visit) },
    recordIn(now, batchSubject(body.batch)),
    'preparation',
    alikeIn(body.batch, now),
  ),
  ...checkClear(body, 'preparation'),
];

/** The pack's own notes: it was opened for this person. Nothing to write where the code has no serial. */
export function packOpened(patient: SubjectRecord, draft: Draft, now: Surroundings): readonly Draft[] {
  if (draft.kind !== 'preparation' || draft.amends !== undefined) return [];
  const { batch, scan } = draft.body as Pack;
  if (scan?.serial === undefined) return [];
  const { productNumber, serial } = scan;
  const opened = { productNumber, serial, batch, patient: subjectId(patient.subject) };
  return [
    { ...draftNow(packSubject(productNumber, serial), 'pack-opened', opened, now), effectiveAt: draft.effectiveAt },
  ];
}

/** A recalled or quarantined pack does not run again, whatever of it has run; nobody takes another for the rest. */
export const checkRunsAgain = (visit: Visit, now: Surroundings): readonly Refusal[] =>
  visit.preparation === undefined
    ? []
    : checkPreparedStillGood(visit.preparation, visit, now).map((found) => ({
        ...found,
        remedy: 'stop it for good and say how much was given; a prescriber decides about the rest',
      }));
