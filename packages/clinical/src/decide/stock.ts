/** The packs a unit keeps: which they are, and which batches are not to be used. */
import { day, shortDate } from '../calendar/day.ts';
import { batchSubject } from '../ledger/batch-subject.ts';
import { subject } from '../ledger/subject.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { stopOf } from '../stock/batch-stop.ts';
import { unitOf } from '../unit/unit.ts';
import type { ActNamed } from './act.ts';
import { fieldWrong } from './check-fields.ts';
import { checkAsReceived, checkListed } from './check-pack.ts';
import { draftNow } from './draft.ts';
import { recordIn } from './ledgers.ts';
import type { Refusal } from './refusal.ts';
import { decided, refusal } from './refuse.ts';
import type { Decided, Surroundings } from './surroundings.ts';

export function decideSetFormulary(act: ActNamed<'set formulary'>, now: Surroundings): Decided {
  const refusals: Refusal[] = [...checkUnit(act.unit, now)];
  const seen = new Set<string>();
  act.body.packs.forEach(({ productNumber }, index) => {
    if (seen.has(productNumber))
      refusals.push(
        fieldWrong(`body.packs.${index}.productNumber`, `${productNumber} stands there twice`, 'each pack once'),
      );
    seen.add(productNumber);
  });
  return decided(refusals, () => [draftNow(subject('unit', act.unit), 'formulary', act.body, now)]);
}

const checkUnit = (unit: string, now: Surroundings): readonly Refusal[] =>
  unitOf(recordIn(now, subject('unit', unit))) === undefined
    ? [
        refusal('unknown-unit', `No unit is called "${unit}".`, {
          field: 'unit',
          remedy: 'describe the unit in the settings first',
        }),
      ]
    : [];

/** What is received is what the batch was before, is not past its date, and is what its product number says. */
export function decideReceivePacks({ body }: ActNamed<'receive packs'>, now: Surroundings): Decided {
  const of = batchSubject(body.batch);
  const refusals: Refusal[] = [...checkUnit(body.unit, now), ...checkAsReceived(body, recordIn(now, of), 'body')];
  if (day(body.expiresOn) < now.today)
    refusals.push(
      refusal('pack-expired', `The packs could be used until ${shortDate(day(body.expiresOn))}.`, {
        field: 'body.expiresOn',
        remedy: 'do not put them on the shelf; send them back',
      }),
    );
  refusals.push(...checkOfOrder(body, now));
  if (body.productNumber !== undefined && now.formulary.packs.length > 0)
    refusals.push(...checkListed(body.productNumber, body.product, now.formulary, 'body'));
  return decided(refusals, () => [draftNow(of, 'batch-received', body, now)]);
}

/** Packs that are said to be of an order are of its product, and the order is one of this unit. */
function checkOfOrder({ order, unit, product }: ActNamed<'receive packs'>['body'], now: Surroundings): Refusal[] {
  if (order === undefined) return [];
  const found = orderNamed(order, unit, now);
  if ('refusal' in found) return [{ ...found.refusal, field: 'body.order' }];
  return found.body.product === product
    ? []
    : [
        refusal('wrong-product', `Ordered was ${found.body.product}.`, {
          field: 'body.product',
          remedy: 'read the pack again; if it is another product, receive it without the order and tell the pharmacist',
        }),
      ];
}

function orderNamed(
  id: string,
  unit: string,
  now: Surroundings,
): Fact<'packs-ordered'> | { readonly refusal: Refusal } {
  const record = recordIn(now, subject('unit', unit));
  const order = factsOf(record, 'packs-ordered').find((one) => one.id === id);
  if (order === undefined)
    return { refusal: refusal('no-such-entry', 'This unit has no such order, or it was withdrawn.') };
  const closed = factsOf(record, 'packs-order-closed').find(({ body }) => body.order === id);
  return closed === undefined
    ? order
    : { refusal: refusal('order-closed', `That order was closed on ${shortDate(closed.on)}: ${closed.body.reason}.`) };
}

export function decideOrderPacks({ unit, body }: ActNamed<'order packs'>, now: Surroundings): Decided {
  const refusals: Refusal[] = [...checkUnit(unit, now)];
  if (day(body.expectedOn) < now.today)
    refusals.push(fieldWrong('body.expectedOn', 'that day is past', 'the day on which the packs are expected'));
  return decided(refusals, () => [draftNow(subject('unit', unit), 'packs-ordered', body, now)]);
}

export function decideCloseOrder({ unit, body }: ActNamed<'close order'>, now: Surroundings): Decided {
  const found = orderNamed(body.order, unit, now);
  const refusals = 'refusal' in found ? [{ ...found.refusal, field: 'body.order' }] : [];
  return decided(refusals, () => [draftNow(subject('unit', unit), 'packs-order-closed', body, now)]);
}

export function decideCountPacks({ body }: ActNamed<'count packs'>, now: Surroundings): Decided {
  const of = batchSubject(body.batch);
  return decided([...checkUnit(body.unit, now), ...checkKnownBatch(recordIn(now, of), body.batch)], () => [
    draftNow(of, 'batch-counted', body, now),
  ]);
}

export function decideTakeOutPacks({ body }: ActNamed<'take out packs'>, now: Surroundings): Decided {
  const of = batchSubject(body.batch);
  return decided([...checkUnit(body.unit, now), ...checkKnownBatch(recordIn(now, of), body.batch)], () => [
    draftNow(of, 'batch-taken-out', body, now),
  ]);
}

/** A number misread would begin a batch of its own. */
const checkKnownBatch = (record: SubjectRecord, batch: string): readonly Refusal[] =>
  record.lastSeq > 0
    ? []
    : [
        refusal('unknown-batch', `No packs of batch ${batch} were ever received.`, {
          field: 'body.batch',
          remedy: 'read the number again, or receive the packs first',
        }),
      ];

/** A batch in quarantine may turn out to be recalled; said twice it is said already. */
export function decideStopBatch({ body }: ActNamed<'stop batch'>, now: Surroundings): Decided {
  const of = batchSubject(body.batch);
  const stop = stopOf(recordIn(now, of), body.productNumber);
  const refusals =
    stop !== undefined && (stop.body.why === 'batch recall' || body.why === 'quarantine')
      ? [
          refusal(
            'already-stopped',
            `Batch ${stop.body.batch} is stopped since ${shortDate(stop.on)} (${stop.body.why}): ${stop.body.reason}.`,
            { field: 'body.batch' },
          ),
        ]
      : [];
  return decided(refusals, () => [draftNow(of, 'batch-stopped', body, now)]);
}

export function decideReleaseBatch({ body }: ActNamed<'release batch'>, now: Surroundings): Decided {
  const of = batchSubject(body.batch);
  const refusals =
    stopOf(recordIn(now, of)) === undefined
      ? [refusal('not-stopped', `Batch ${body.batch} is not stopped.`, { field: 'body.batch' })]
      : [];
  return decided(refusals, () => [draftNow(of, 'batch-released', body, now)]);
}
