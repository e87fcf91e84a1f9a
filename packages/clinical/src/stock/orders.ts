/** Orders of a unit: what was ordered, what of it has come, and what is still to come. */
import { type Day, day } from '../calendar/day.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';

export type PackOrder = {
  readonly order: Fact<'packs-ordered'>;
  readonly received: number;
  /** Packs still to come; 0 once all have come or it was closed. */
  readonly open: number;
  readonly expectedOn: Day;
  readonly closed: Fact<'packs-order-closed'> | undefined;
};

/** The orders of a unit, the newest first. `batches`: the notes of every batch, where receiving names the order. */
export function ordersOf(unit: SubjectRecord, batches: readonly SubjectRecord[]): readonly PackOrder[] {
  const received = new Map<string, number>();
  for (const batch of batches)
    for (const { body } of factsOf(batch, 'batch-received'))
      if (body.order !== undefined) received.set(body.order, (received.get(body.order) ?? 0) + body.packs);
  return factsOf(unit, 'packs-ordered')
    .map((order): PackOrder => {
      const had = (received.get(order.id) ?? 0) + (order.id === order.first ? 0 : (received.get(order.first) ?? 0));
      const closed = factsOf(unit, 'packs-order-closed').find(
        ({ body }) => body.order === order.id || body.order === order.first,
      );
      return {
        order,
        received: had,
        open: closed === undefined ? Math.max(0, order.body.packs - had) : 0,
        expectedOn: day(order.body.expectedOn),
        closed,
      };
    })
    .toSorted((a, b) => b.order.seq - a.order.seq);
}
