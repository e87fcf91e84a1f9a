import { expect, test } from 'vitest';
import type { ActRequest } from '../../src/index.ts';
import { draft, weighing, writing } from '../support/ward.ts';
import { missedIds } from './acts.ts';
import type { OnBench } from './on-bench.ts';

/** Gives a dose if a weight is known: it read weights, and saw the notes up to `seen`. */
const dosing = (id: string, seen: number, more: Partial<ActRequest> = {}): ActRequest => ({
  ...writing(id, [draft('patient/p1', 'dose', { mg: 5 })]),
  seen: { 'patient/p1': seen },
  readKinds: ['weight', 'result'],
  decide: (ledgers) =>
    (ledgers.get('patient/p1') ?? []).some((entry) => entry.kind === 'weight')
      ? { drafts: [draft('patient/p1', 'dose', { mg: 5 })] }
      : { refusals: [{ name: 'no-weight', says: 'There is no weight.' }] },
  ...more,
});

const phoneCall = (id: string) => writing(id, [draft('patient/p1', 'call', { said: 'will come' })]);

export function conflicts(on: OnBench): void {
  test(
    'an act that saw everything is written',
    on(async ({ store }) => {
      await store.act(weighing('w1', 'p1'));
      expect((await store.act(dosing('d1', 1))).outcome).toBe('recorded');
    }),
  );

  test(
    'an act that missed an entry of a kind it read is not written, and both sides can be shown',
    on(async ({ store }) => {
      await store.act(weighing('w1', 'p1'));
      await store.act(weighing('w2', 'p1', 41));
      const outcome = await store.act(dosing('d1', 1));
      expect(outcome.outcome === 'ledger-moved-on' && missedIds(outcome.missed)).toEqual(['w2']);
      expect(await store.ledger('patient/p1')).toHaveLength(2);
      // The person looks at both and sends a new act that saw them.
      expect((await store.act(dosing('d2', 2))).outcome).toBe('recorded');
    }),
  );

  test(
    'an act that missed something it did not read is written if it would have decided the same',
    on(async ({ store }) => {
      await store.act(weighing('w1', 'p1'));
      await store.act(phoneCall('c1'));
      expect((await store.act(dosing('d1', 1))).outcome).toBe('recorded');
    }),
  );

  test(
    'an act whose decision changed is not written, even if the missed kind is none it said it read',
    on(async ({ store }) => {
      await store.act(phoneCall('c1'));
      await store.act(weighing('w1', 'p1'));
      const outcome = await store.act(dosing('d1', 1, { readKinds: ['result'] }));
      expect(outcome.outcome === 'ledger-moved-on' && missedIds(outcome.missed)).toEqual(['w1']);
    }),
  );

  test(
    'a refusal that stands either way is answered as a refusal',
    on(async ({ store }) => {
      await store.act(phoneCall('c1'));
      await store.act(phoneCall('c2'));
      expect(await store.act(dosing('d1', 1))).toEqual({
        outcome: 'refused',
        refusals: [{ name: 'no-weight', says: 'There is no weight.' }],
      });
    }),
  );

  test(
    'an act that names no kinds is taken to have read them all',
    on(async ({ store }) => {
      await store.act(weighing('w1', 'p1'));
      await store.act(phoneCall('c1'));
      const { readKinds: _, ...request } = dosing('d1', 1);
      expect((await store.act(request)).outcome).toBe('ledger-moved-on');
    }),
  );

  test(
    'an act that saw more than there is was decided on notes that are gone',
    on(async ({ store }) => {
      await store.act(weighing('w1', 'p1'));
      expect(await store.act(dosing('d1', 5))).toEqual({ outcome: 'ledger-moved-on', missed: [] });
    }),
  );

  test(
    'of two who saw the same notes and both read them, one is written and the other is told',
    on(async ({ store, second }) => {
      await store.act(weighing('w1', 'p1'));
      const kinds = { readKinds: ['weight', 'dose'] };
      const outcomes = await Promise.all([
        store.act(dosing('d1', 1, kinds)),
        (second ?? store).act(dosing('d2', 1, kinds)),
      ]);
      expect(outcomes.map(({ outcome }) => outcome).toSorted()).toEqual(['ledger-moved-on', 'recorded']);
    }),
  );

  test(
    'an act sent again is recognised before it is judged stale',
    on(async ({ store }) => {
      await store.act(weighing('w1', 'p1'));
      await store.act(dosing('d1', 1));
      await store.act(weighing('w2', 'p1', 41));
      expect((await store.act(dosing('d1', 1))).outcome).toBe('already-recorded');
    }),
  );

  test(
    'who is decided on stale notes is decided on the notes as they were seen and as they are',
    on(async ({ store }) => {
      await store.act(weighing('w1', 'p1'));
      await store.act(phoneCall('c1'));
      const lengths: number[] = [];
      await store.act({
        ...dosing('d1', 1),
        decide: (ledgers) => {
          lengths.push(ledgers.get('patient/p1')?.length ?? 0);
          return { drafts: [] };
        },
      });
      expect(lengths.toSorted((a, b) => a - b)).toEqual([1, 2]);
    }),
  );
}
