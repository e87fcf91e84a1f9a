/** A scan of a pack, read for the preparer: what the code says, and what speaks against using this pack for this person. */
import {
  batchSubject,
  batchWritten,
  checkListed,
  checkNotOpened,
  checkPackMayBeUsed,
  civilFromDay,
  isAlikeBatch,
  noFormulary,
  packSubject,
  plainDate,
  productOf,
  receivedAs,
  recordOf,
  subjectId,
  visitOn,
} from '@twelvemonth/clinical';
import { type PackReadingView, readPack, scanAsKept } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import type { Person } from '../register/people.ts';
import { whereTheyAre } from './where-they-are.ts';

export async function packReadingOf(atHand: AtHand, person: Person, code: string): Promise<PackReadingView> {
  const { unit } = await whereTheyAre(atHand, person);
  const formulary = unit?.unit.formulary ?? noFormulary;
  const { separatorSentAs, packsCarrySerial } = formulary;
  const read = readPack(code, {
    ...(separatorSentAs === undefined ? {} : { separatorSentAs }),
    expectsSerial: packsCarrySerial,
    year: civilFromDay(person.today).year,
  });
  if ('trouble' in read) return { troubles: [{ name: read.trouble.name, says: read.trouble.says, field: 'scan' }] };
  const { productNumber, batch, serial, lookAt } = read.pack;
  const expiresOn = read.pack.expiresOn === undefined ? undefined : plainDate(read.pack.expiresOn);
  const product = formulary.packs.find((pack) => pack.productNumber === productNumber)?.product;
  const of = batch === undefined ? undefined : await atHand.notes.of('batch', subjectId(batchSubject(batch)));
  const record = of ?? recordOf(batchSubject('none'), []);
  const alike = (await atHand.notes.all('batch')).filter((one) => isAlikeBatch(batchWritten(one) ?? '', batch ?? ''));
  const received = receivedAs(record);
  const ordered = productOf(visitOn(person.record, person.today));
  // What the code does not say is asked on the form and judged there: here it stands for what speaks against nothing.
  const inHand = {
    product: product ?? received?.product ?? ordered,
    batch: batch ?? '',
    expiresOn: expiresOn ?? received?.expiresOn ?? plainDate(person.today),
    scan: { code, productNumber },
  };
  return {
    pack: {
      code: scanAsKept(code, separatorSentAs),
      productNumber,
      ...(product === undefined ? {} : { product }),
      ...(batch === undefined ? {} : { batch }),
      ...(expiresOn === undefined ? {} : { expiresOn }),
      ...(serial === undefined ? {} : { serial }),
      lookAt: [
        ...lookAt,
        ...(batch === undefined || received !== undefined
          ? []
          : [`No packs of batch ${batch} were received here: read the batch on the pack.`]),
      ],
    },
    troubles: [
      ...checkListed(productNumber, product, formulary, 'scan'),
      ...checkPackMayBeUsed(inHand, { on: person.today, product: ordered }, record, 'scan', alike),
      ...(serial === undefined ? [] : await openedBefore(atHand, person, productNumber, serial)),
    ],
  };
}

/** Notes of single packs are many and read once: they are not kept in memory. */
async function openedBefore({ store }: AtHand, { patient, today }: Person, productNumber: string, serial: string) {
  const of = packSubject(productNumber, serial);
  const ledgers = await store.ledgers([of]);
  return checkNotOpened(recordOf(of, ledgers.get(of) ?? []), { patient, on: today }, 'scan');
}
