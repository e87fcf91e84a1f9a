import { expect, test } from 'vitest';
import type { Store } from '../../src/index.ts';
import { booking, nine, weighing } from '../support/ward.ts';
import type { OnBench } from './on-bench.ts';

async function fill(store: Store): Promise<void> {
  for (let index = 1; index <= 3; index += 1) await store.act(booking(`b${index}`, 's1', `p${index}`, index));
  for (let index = 1; index <= 6; index += 1) await store.act(weighing(`w${index}`, `p${(index % 3) + 1}`));
}

/** A change made behind the store's back, and where verify must point. */
const tamperings: readonly (readonly [what: string, sql: string, firstBad: object])[] = [
  [
    'a body',
    `update entry set body = replace(body, '56.2', '65.2') where subject = 'patient/p2' and seq = 2`,
    { subject: 'patient/p2', seq: 2 },
  ],
  [
    'an author',
    `update entry set staff = 'somebody-else' where subject = 'patient/p1' and seq = 1`,
    { subject: 'patient/p1', seq: 1 },
  ],
  [
    'an entry in the middle removed',
    `delete from entry where subject = 'patient/p1' and seq = 2`,
    { subject: 'patient/p1', seq: 3 },
  ],
  [
    'the last entry of a ledger removed',
    `delete from entry where subject = 'patient/p3' and seq = 3; delete from standing; insert into standing (subject, key, standing, owner, on_day) values ('patient/p1','','booked','clerk',3),('patient/p2','','booked','clerk',3),('patient/p3','','booked','clerk',2)`,
    { subject: 'patient/p3', seq: 3 },
  ],
  [
    'two entries swapped',
    `update entry set seq = -2 where subject = 'patient/p1' and seq = 2; update entry set seq = 2 where subject = 'patient/p1' and seq = 3; update entry set seq = 3 where subject = 'patient/p1' and seq = -2`,
    { subject: 'patient/p1', seq: 2 },
  ],
  [
    'a whole ledger removed',
    `delete from entry where subject = 'patient/p2'; delete from standing where subject = 'patient/p2'; delete from place where subject = 'patient/p2'`,
    { subject: 'patient/p2', seq: 1 },
  ],
  ['an act removed', `delete from act where id = 'w2'`, { commit: 5 }],
  ['an act renamed', `update act set id = 'other' where id = 'w2'`, { commit: 5 }],
  ['the content of an act', `update act set content_hash = 'x' where id = 'b2'`, { commit: 2 }],
  ['a commit', `update commit_log set hash = 'x' where number = 4`, { commit: 4 }],
  ['a commit in the middle removed', `delete from commit_log where number = 4`, { commit: 4 }],
  ['a derived row', `update place set place = 9 where subject = 'patient/p2'`, { subject: 'patient/p2' }],
  ['a derived row removed', `delete from session`, { subject: 'session/s1' }],
];

const columns = [
  'id',
  'act',
  'kind',
  'shape',
  'body',
  'effective_at',
  'zone',
  'amends',
  'device_at',
  'recorded_at',
  'staff',
  'role',
  'previous_hash',
  'hash',
];

export function verifying(on: OnBench): void {
  test.each(tamperings)('verify names the first bad one: %s', (_, sql, firstBad) =>
    on(async ({ store, bench }) => {
      await fill(store);
      expect(await store.verify()).toEqual({ ok: true, entries: 12, ledgers: 4, commit: 9 });
      await bench.tamper(sql);
      const found = await store.verify();
      expect(found).toMatchObject({ ok: false, firstBad });
      expect(found.ok || found.firstBad.says.length).toBeGreaterThan(10);
    })(),
  );

  test(
    'one character changed in any column of an entry is found and named',
    on(async ({ store, bench }) => {
      await fill(store);
      const [whole] = await bench.sql(`select * from entry where subject = 'patient/p3' and seq = 2`);
      for (const column of columns) {
        const spoilt =
          column === 'shape'
            ? 'shape + 1'
            : column === 'body'
              ? `replace(body, '{', '{ ')`
              : `coalesce(${column}, '') || '.'`;
        await bench.tamper(`update entry set ${column} = ${spoilt} where subject = 'patient/p3' and seq = 2`);
        expect({ column, found: await store.verify() }).toMatchObject({
          column,
          found: { ok: false, firstBad: { subject: 'patient/p3', seq: 2 } },
        });
        const before = whole?.[column];
        const written = typeof before === 'string' ? `'${before.replaceAll("'", "''")}'` : String(before);
        await bench.tamper(`update entry set ${column} = ${written} where subject = 'patient/p3' and seq = 2`);
        expect({ column, found: await store.verify() }).toMatchObject({ column, found: { ok: true } });
      }
    }),
  );

  test(
    'a place in the session without its mirror in the patient is found, unless the notes were expired',
    on(async ({ store }) => {
      await fill(store);
      await store.expireLedger('patient/p3', { by: ['one', 'two'], reason: 'end of retention', at: nine });
      expect((await store.verify()).ok).toBe(true);
      const { decide, ...lonely } = booking('b9', 's1', 'p1', 9);
      await store.act({
        ...lonely,
        decide: (ledgers) => {
          const decision = decide(ledgers);
          return 'drafts' in decision ? { drafts: decision.drafts.slice(0, 1) } : decision;
        },
      });
      expect(await store.verify()).toMatchObject({
        ok: false,
        firstBad: { subject: 'session/s1', seq: 4, says: "A place was taken, but the patient's notes do not say so." },
      });
    }),
  );

  test(
    'a digest kept elsewhere vouches for everything before it, and later growth does no harm',
    on(async ({ store, bench }) => {
      await fill(store);
      const kept = await store.tailsDigest();
      await store.act(weighing('w9', 'p1'));
      await store.expireLedger('patient/p2', { by: ['one', 'two'], reason: 'end of retention', at: nine });
      expect((await store.verify(undefined, kept)).ok).toBe(true);
      expect(await store.verify(undefined, 'something else')).toMatchObject({ ok: false });
      const later = await store.tailsDigest();
      // The end cut off as a whole, with every chain left intact: only what is kept elsewhere can notice.
      await bench.tamper(`delete from act where commit_number > 8; delete from commit_log where number > 8; delete from tombstone; delete from entry where act in ('w6', 'w9');
      ${store.kind === 'postgresql' ? 'update commit_tail set number = 8, hash = (select hash from commit_log where number = 8);' : ''} select 1`);
      await store.close();
      const reader = bench.openReader(() => []);
      expect(await reader.verify(undefined, later)).toMatchObject({ ok: false });
      await reader.close();
    }),
  );

  test(
    'verify tells how far it is',
    on(async ({ store }) => {
      await fill(store);
      const progress: [number, number][] = [];
      await store.verify((done, of) => progress.push([done, of]));
      expect(progress.at(-1)).toEqual([21, 21]);
    }),
  );
}
