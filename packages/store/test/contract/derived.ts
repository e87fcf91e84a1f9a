import { expect, test } from 'vitest';
import type { StoredRow } from '../../src/index.ts';
import { booking, draft, weighing, writing } from '../support/ward.ts';
import type { OnBench } from './on-bench.ts';

const named = (id: string, patient: string, family: string) =>
  writing(id, [draft(`patient/${patient}`, 'identity', { family })]);
const subjectsOf = (rows: readonly StoredRow[]): string[] => rows.map(({ subject }) => subject);

export function derived(on: OnBench): void {
  test(
    "a subject's rows are those its whole ledger asks for, after every act",
    on(async ({ store }) => {
      await store.act(named('n1', 'p1', 'Okafor'));
      await store.act(booking('b1', 's1', 'p1', 3));
      await store.act(named('n2', 'p1', "O'Kafor"));
      expect(await store.rows({ table: 'person' })).toMatchObject([
        { subject: 'patient/p1', key: '', family: "O'Kafor", born: null },
      ]);
      expect(await store.rows({ table: 'place' })).toMatchObject([{ subject: 'patient/p1', session: 's1', place: 3 }]);
      expect(await store.rows({ table: 'standing' })).toMatchObject([{ on_day: 3 }]);
    }),
  );

  test(
    'rows are found by value, by nothing, by range and by part of a text, in order, up to a limit',
    on(async ({ store }) => {
      const families = ['Zhao', 'Adeyemi', 'Émile', 'adair', "100% O'Neil"];
      for (const [index, family] of families.entries()) {
        await store.act(named(`n${index}`, `p${index}`, family));
        for (let more = 0; more < index; more += 1) await store.act(weighing(`w${index}-${more}`, `p${index}`));
      }
      // Order is by code point on both databases, not by the server's language.
      expect((await store.rows({ table: 'person', orderBy: ['family'] })).map((row) => row['family'])).toEqual([
        "100% O'Neil",
        'Adeyemi',
        'Zhao',
        'adair',
        'Émile',
      ]);
      expect(subjectsOf(await store.rows({ table: 'person', contains: { column: 'search', text: 'ad' } }))).toEqual([
        'patient/p1',
        'patient/p3',
      ]);
      expect(subjectsOf(await store.rows({ table: 'person', contains: { column: 'search', text: "% o'" } }))).toEqual([
        'patient/p4',
      ]);
      expect(await store.rows({ table: 'person', contains: { column: 'search', text: '' }, limit: 2 })).toHaveLength(2);
      expect(
        subjectsOf(await store.rows({ table: 'standing', between: { column: 'on_day', from: 2, until: 4 } })),
      ).toEqual(['patient/p1', 'patient/p2', 'patient/p3']);
      expect(
        subjectsOf(await store.rows({ table: 'standing', where: { owner: 'clerk', detail: null, on_day: 5 } })),
      ).toEqual(['patient/p4']);
      expect(subjectsOf(await store.rows({ table: 'standing', where: { subject: 'patient/p2' } }))).toEqual([
        'patient/p2',
      ]);
      expect(await store.count({ table: 'standing' })).toBe(5);
      expect(await store.count({ table: 'standing', where: { on_day: 1 } })).toBe(1);
      await expect(store.rows({ table: 'person', where: { 'family" = family or "family': 1 } })).rejects.toThrow(
        'no column',
      );
    }),
  );

  test(
    'rebuild makes the rows again from the entries, removes strangers, and verify agrees',
    on(async ({ store, bench }) => {
      await store.act(named('n1', 'p1', 'Okafor'));
      await store.act(booking('b1', 's1', 'p1', 3));
      const whole = await store.rows({ table: 'person' });
      for (const spoil of [
        `update person set family = 'Other'`,
        'delete from standing',
        `insert into task (subject, key, task) values ('patient/stranger', 'x', 'call')`,
        `insert into task (subject, key, task) values ('patient/p1', 'x', 'call')`,
      ]) {
        await bench.sql(spoil);
        expect({ spoil, found: await store.verify() }).toMatchObject({ spoil, found: { ok: false } });
        const progress: string[] = [];
        await store.rebuild((done, of) => progress.push(`${done}/${of}`));
        expect(progress).toEqual(['2/2']);
        expect({ spoil, found: await store.verify() }).toMatchObject({ spoil, found: { ok: true } });
      }
      expect(await store.rows({ table: 'person' })).toEqual(whole);
      expect(await store.count({ table: 'task' })).toBe(0);
    }),
  );

  test(
    'a projection that names an unknown column or the same row twice is a defect, and nothing is written',
    on(async ({ bench }) => {
      const store = await bench.open((subject) => {
        if (subject === 'patient/p1') return [{ table: 'task', key: '', columns: { colour: 'red' } }];
        return [
          { table: 'task', key: '', columns: {} },
          { table: 'task', key: '', columns: {} },
        ];
      });
      await expect(store.act(weighing('w1', 'p1'))).rejects.toThrow('no column colour');
      await expect(store.act(weighing('w2', 'p2'))).rejects.toThrow('same table and key');
      expect((await store.tail()).commit).toBe(0);
      await store.close();
    }),
  );
}
