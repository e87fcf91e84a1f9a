/** The packs a unit keeps: which they are, and which batches are not to be used. */
import { day, shortDate } from '../calendar/day.ts';
import { batchSubject } from '../ledger/batch-subject.ts';
import { counted, plural } from '../kinds-texts/words.ts';
import { subject } from '../ledger/subject.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { batchWritten } from '../stock/alike-batch.ts';
import { standingStops } from '../stock/batch-stop.ts';
import { onHand } from '../stock/on-hand.ts';
import { unitOf } from '../unit/unit.ts';
import type { ActNamed } from './act.ts';
import { fieldWrong } from './check-fields.ts';
import { alikeIn, checkAsReceived, checkListed } from './check-pack.ts';
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
export function decideReceivePacks({ body, confirms }: ActNamed<'receive packs'>, now: Surroundings): Decided {
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
  if (refusals.length === 0) refusals.push(...checkSpelling(body.batch, confirms, now));
  return decided(refusals, () => [draftNow(of, 'batch-received', body, now)]);
}

/** "PA2391" beside a "PA-2391": one batch in two spellings would be traced, counted and stopped in halves. */
function checkSpelling(batch: string, confirmed: readonly string[] = [], now: Surroundings): readonly Refusal[] {
  return alikeIn(batch, now)
    .flatMap((record) => batchWritten(record) ?? [])
    .map((other) => `You typed batch ${batch}; there is a batch ${other} here: is it the same one?`)
    .filter((says) => !confirmed.includes(says))
    .map((says) =>
      refusal('is-it-right', says, {
        field: 'body.batch',
        remedy: 'read the pack or the notice again and type it as it is written here, or say that it is right as typed',
      }),
    );
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

/** What is counted may differ from the sum; more than ever came in is said with a word about it. */
export function decideCountPacks({ body }: ActNamed<'count packs'>, now: Surroundings): Decided {
  const of = batchSubject(body.batch);
  const tooMany = body.note === undefined ? checkNotMore(body, now, 'count again; if it stays, say what is known') : [];
  return decided([...checkUnit(body.unit, now), ...checkKnownBatch(recordIn(now, of), body.batch), ...tooMany], () => [
    draftNow(of, 'batch-counted', body, now),
  ]);
}

export function decideTakeOutPacks({ body }: ActNamed<'take out packs'>, now: Surroundings): Decided {
  const of = batchSubject(body.batch);
  const tooMany = checkNotMore(body, now, 'read the number again; if more lie there, count them first');
  return decided([...checkUnit(body.unit, now), ...checkKnownBatch(recordIn(now, of), body.batch), ...tooMany], () => [
    draftNow(of, 'batch-taken-out', body, now),
  ]);
}

/** Not even with nobody given any: a figure too many. Those that were opened for people are left out, so it is the most there can be. */
function checkNotMore(
  { unit, batch, packs }: { readonly unit: string; readonly batch: string; readonly packs: number },
  now: Surroundings,
  remedy: string,
): readonly Refusal[] {
  const record = recordIn(now, batchSubject(batch));
  const most = onHand(record, unit, []).packs;
  return record.lastSeq === 0 || packs <= most
    ? []
    : [
        refusal(
          'does-not-add-up',
          `By the sum ${counted(Math.max(0, most), 'pack')} of batch ${batch} at most lie here.`,
          {
            field: 'body.packs',
            remedy,
          },
        ),
      ];
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

/**
 * A batch in quarantine may turn out to be recalled, and a stop of one maker's packs may have to hold every pack with the
 * number; what is stopped so already is not stopped twice.
 */
export function decideStopBatch({ body, confirms }: ActNamed<'stop batch'>, now: Surroundings): Decided {
  const of = batchSubject(body.batch);
  const same = standingStops(recordIn(now, of)).findLast(
    (stop) =>
      (stop.body.why === 'batch recall' || body.why === 'quarantine') &&
      (stop.body.productNumber === undefined || stop.body.productNumber === body.productNumber),
  );
  const refusals =
    same === undefined
      ? checkSpelling(body.batch, confirms, now)
      : [
          refusal(
            'already-stopped',
            `Batch ${same.body.batch} is stopped since ${shortDate(same.on)} (${same.body.why}): ${same.body.reason}.`,
            { field: 'body.batch' },
          ),
        ];
  return decided(refusals, () => [draftNow(of, 'batch-stopped', body, now)]);
}

/** Of several stops the one is lifted that the pharmacist has read: another may have been written since. */
export function decideReleaseBatch({ body }: ActNamed<'release batch'>, now: Surroundings): Decided {
  const of = batchSubject(body.batch);
  const standing = standingStops(recordIn(now, of));
  const refusals =
    standing.length === 0
      ? [refusal('not-stopped', `Batch ${body.batch} is not stopped.`, { field: 'body.batch' })]
      : body.stop === undefined
        ? checkOnlyOne(standing)
        : standing.some(({ id }) => id === body.stop)
          ? []
          : [refusal('not-stopped', 'That stop was lifted already.', { field: 'body.stop' })];
  return decided(refusals, () => [draftNow(of, 'batch-released', body, now)]);
}

const checkOnlyOne = (standing: readonly Fact<'batch-stopped'>[]): readonly Refusal[] =>
  standing.length === 1
    ? []
    : [
        fieldWrong(
          'body.stop',
          `it is stopped ${standing.length} times: ${plural(
            standing.map(({ body, on }) => `${body.why} of ${shortDate(on)} (${body.reason})`),
            'and',
          )}`,
          'say which stop is lifted; the others stay',
        ),
      ];

/** What was received was written down wrongly: it is withdrawn with the reason, then received as it is. */
export function decideWithdrawReceipt(act: ActNamed<'withdraw receipt'>, now: Surroundings): Decided {
  const of = batchSubject(act.batch);
  const receipt = factsOf(recordIn(now, of), 'batch-received').find(({ id }) => id === act.entry);
  return decided(
    receipt === undefined
      ? [
          refusal('no-such-entry', `No such receipt of batch ${act.batch} stands: it may be withdrawn already.`, {
            field: 'entry',
          }),
        ]
      : [],
    () => [draftNow(of, 'withdrawal', { entry: act.entry, reason: act.reason }, now)],
  );
}
