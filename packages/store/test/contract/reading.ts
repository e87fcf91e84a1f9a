import { expect, test } from 'vitest';
import type { Subject } from '@twelvemonth/clinical';
import { booking, draft, weighing, writing } from '../support/ward.ts';
import type { OnBench } from './on-bench.ts';

export function readingNotes(on: OnBench): void {
  test(
    'ledgers are read together in the order asked for; one that is not there is empty',
    on(async ({ store }) => {
      await store.act(weighing('w1', 'p1'));
      await store.act(weighing('w2', 'p2'));
      const ledgers = await store.ledgers(['patient/p2', 'patient/none', 'patient/p1']);
      expect([...ledgers].map(([subject, entries]) => [subject, entries.length])).toEqual([
        ['patient/p2', 1],
        ['patient/none', 0],
        ['patient/p1', 1],
      ]);
    }),
  );

  test(
    'every ledger of a kind is visited once, in order, whatever the batch',
    on(async ({ store }) => {
      const names = ['p10', 'p2', 'P3', 'p-1', 'p_9', 'p.5', 'p1'];
      for (const name of names)
        await store.act(
          writing(`w-${name}`, [draft(`patient/${name}`, 'weight', {}), draft(`patient/${name}`, 'height', {})]),
        );
      await store.act(writing('s', [draft('session/s1', 'session-planned', {})]));
      const inOrder = names.map((name): Subject => `patient/${name}`).toSorted();
      expect(await store.subjects('patient')).toEqual(inOrder);
      expect(await store.subjects('session')).toEqual(['session/s1']);
      expect(await store.subjects('batch')).toEqual([]);
      for (const batch of [1, 2, 7, 100]) {
        const visited: string[] = [];
        await store.everyLedger('patient', (subject, entries) => visited.push(`${subject} ${entries.length}`), batch);
        expect(visited).toEqual(inOrder.map((subject) => `${subject} 2`));
      }
    }),
  );

  test(
    'settings can be changed and survive a restart',
    on(async ({ store, bench }) => {
      expect(await store.setting('service name')).toBeUndefined();
      await store.setSetting('service name', 'Thornbeck');
      await store.setSetting('service name', 'Marlowe Vale');
      expect(await store.setting('schema version')).toBe('1');
      await store.close();
      const reopened = await bench.open();
      expect(await reopened.setting('service name')).toBe('Marlowe Vale');
      await reopened.close();
    }),
  );

  test(
    'a reading command works beside the running server and cannot write',
    on(async ({ store, bench }) => {
      await store.act(booking('b1', 's1', 'p1', 7));
      const reader = bench.openReader();
      await store.act(weighing('w1', 'p1'));
      expect(await reader.ledger('patient/p1')).toEqual(await store.ledger('patient/p1'));
      expect(await reader.tail()).toEqual(await store.tail());
      expect(await reader.verify()).toEqual({ ok: true, entries: 3, ledgers: 2, commit: 2 });
      expect('act' in reader).toBe(false);
      await reader.close();
    }),
  );

  test(
    'notes written by a newer version of the software are not opened',
    on(async ({ store, bench }) => {
      await store.setSetting('schema version', '2');
      if (store.kind === 'sqlite') await bench.sql('pragma user_version = 2');
      await expect(bench.open()).rejects.toMatchObject({ problem: 'newer-software' });
    }),
  );

  test(
    'the sign-in library has its own tables in the same database, and its transactions and acts take turns',
    on(async ({ store }) => {
      const { db, type } = store.kyselyHandle();
      expect(type).toBe(store.kind === 'sqlite' ? 'sqlite' : 'postgres');
      await db.schema.createTable('account').addColumn('name', 'text').execute();
      const undone = db.transaction().execute(async (open) => {
        await open.insertInto('account').values({ name: 'undone' }).execute();
        // An act begun while the transaction is open is answered after it, not mixed into it.
        void store.act(weighing('w1', 'p1'));
        await new Promise((then) => setTimeout(then, 20));
        throw new Error('thought better of it');
      });
      const done = db.transaction().execute(async (open) => {
        await open.insertInto('account').values({ name: 'done' }).execute();
        return open.selectFrom('account').selectAll().execute();
      });
      const acts = Array.from({ length: 20 }, (_, index) => store.act(weighing(`x${index}`, 'p1')));
      await expect(undone).rejects.toThrow('thought better');
      expect(await done).toMatchObject([{ name: 'done' }]);
      expect(new Set((await Promise.all(acts)).map(({ outcome }) => outcome))).toEqual(new Set(['recorded']));
      expect((await store.act(weighing('w1', 'p1'))).outcome).toBe('already-recorded');
      expect(await db.selectFrom('account').selectAll().execute()).toMatchObject([{ name: 'done' }]);
      expect((await store.verify()).ok).toBe(true);
    }),
  );
}
