/** Stock of a unit: the packs it keeps and scans, and every batch something was said about. */
import { factsOf, plainDate, stopOf } from '@twelvemonth/clinical';
import type { SubjectRecord } from '@twelvemonth/clinical';
import type { BatchRow, StockView } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import type { UnitNow } from '../register/units.ts';

export async function stockOf(atHand: AtHand, { unit }: UnitNow): Promise<StockView> {
  const { packs, packsCarrySerial, separatorSentAs } = unit.formulary;
  const records = await atHand.notes.all('batch');
  return {
    unit: unit.id,
    unitName: unit.name,
    formulary: {
      packs: packs.map((pack) => ({ ...pack })),
      packsCarrySerial,
      ...(separatorSentAs === undefined ? {} : { separatorSentAs }),
    },
    batches: records.flatMap((record) => rowOf(record, atHand.accounts.nameOf) ?? []),
  };
}

function rowOf(record: SubjectRecord, nameOf: (staff: string) => string): BatchRow | undefined {
  const batch = factsOf(record, 'batch-stopped')[0]?.body.batch;
  if (batch === undefined) return undefined;
  const stop = stopOf(record);
  return {
    batch,
    ...(stop === undefined
      ? {}
      : {
          stopped: {
            why: stop.body.why,
            since: plainDate(stop.on),
            by: nameOf(stop.author.staff),
            reason: stop.body.reason,
            ...(stop.body.actWithin === undefined ? {} : { actWithin: stop.body.actWithin }),
            ...(stop.body.toldBy === undefined ? {} : { toldBy: stop.body.toldBy }),
            ...(stop.body.productNumber === undefined ? {} : { productNumber: stop.body.productNumber }),
          },
        }),
  };
}
