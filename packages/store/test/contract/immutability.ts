import { expect, test } from 'vitest';
import { booking, nine, weighing } from '../support/ward.ts';
import type { OnBench } from './on-bench.ts';

const expiry = { by: ['records-officer', 'service-lead'], reason: 'eight years after death', at: nine } as const;

const refusal = /only added|end of its ledger|without gaps|closed commit|check|unique/i;

export function immutability(on: OnBench): void {
  test(
    'no row of the truth can be changed, removed, replaced or put in between',
    on(async ({ store, bench }) => {
      await store.act(booking('a1', 's1', 'p1', 7));
      await store.act(weighing('a2', 'p1'));
      await store.expireLedger('session/s1', expiry);
      const before = await store.ledger('patient/p1');
      const columns =
        'subject, seq, id, act, kind, shape, body, effective_at, zone, amends, device_at, recorded_at, staff, role, previous_hash, hash';
      const copyOf = (changes: Record<string, string>): string =>
        `insert into entry (${columns}) select ${columns
          .split(', ')
          .map((name) => changes[name] ?? name)
          .join(', ')} from entry where subject = 'patient/p1' and seq = 1`;
      const attempts = [
        `update entry set body = '{}'`,
        `update entry set seq = seq + 10`,
        `update entry set hash = hash`,
        'delete from entry',
        `delete from entry where subject = 'patient/p1' and seq = 2`,
        ...(store.kind === 'sqlite'
          ? [
              copyOf({ body: `'{}'` }).replace('insert', 'insert or replace'),
              `update or replace entry set seq = 1 where seq = 2`,
              copyOf({ seq: '2', body: `'{}'` }).replace('insert', 'insert or replace'),
            ]
          : [
              'truncate entry',
              'truncate act, commit_log',
              'truncate tombstone',
              `${copyOf({ body: `'{}'` })} on conflict (subject, seq) do update set body = excluded.body`,
            ]),
        copyOf({ seq: '9', id: `'other'` }),
        copyOf({ seq: '3' }),
        copyOf({ subject: `'session/s1'`, id: `'other'` }),
        'update act set wrote = wrote',
        'delete from act',
        `insert into act (commit_number, position, id, content_hash, wrote) values (1, 9, 'x', 'x', '[]')`,
        'update commit_log set hash = hash',
        'delete from commit_log',
        `insert into commit_log (number, hash) values (99, 'x')`,
        'update tombstone set body = body',
        'delete from tombstone',
        `insert into tombstone (subject, commit_number, by_first, by_second, body) values ('patient/p1', 4, 'one', 'one', '{}')`,
      ];
      for (const attempt of attempts) {
        const answer = await bench.sql(attempt).then(
          () => 'accepted',
          (cause: Error) => cause.message,
        );
        expect({ attempt, answer }).toEqual({ attempt, answer: expect.stringMatching(refusal) });
      }
      expect(await store.ledger('patient/p1')).toEqual(before);
      expect((await store.verify()).ok).toBe(true);
    }),
  );

  test(
    'a whole ledger goes at the end of its retention, by two people, and its tombstone stays',
    on(async ({ store, bench }) => {
      await store.act(booking('a1', 's1', 'p1', 7));
      await store.act(weighing('a2', 'p1'));
      await store.act(weighing('a3', 'p2'));
      expect(await store.expireLedger('patient/p1', { ...expiry, by: ['service-lead', 'service-lead'] })).toMatchObject(
        { outcome: 'refused', refusals: [{ name: 'one-person' }] },
      );
      expect(await store.expireLedger('patient/p1', { ...expiry, reason: ' ' })).toMatchObject({
        outcome: 'refused',
        refusals: [{ name: 'no-reason' }],
      });
      expect(await store.expireLedger('patient/nobody', expiry)).toMatchObject({
        outcome: 'refused',
        refusals: [{ name: 'no-such-ledger' }],
      });
      expect(await store.expireLedger('patient/p1', expiry)).toMatchObject({ outcome: 'expired', entries: 2 });

      expect(await store.ledger('patient/p1')).toEqual([]);
      expect(await store.subjects('patient')).toEqual(['patient/p2']);
      expect(await store.rows({ table: 'standing', where: { subject: 'patient/p1' } })).toEqual([]);
      const [tombstone] = await bench.sql('select body from tombstone');
      expect(JSON.parse(String(tombstone?.['body']))).toMatchObject({
        subject: 'patient/p1',
        entries: 2,
        by: expiry.by,
        reason: expiry.reason,
        at: nine,
      });
      expect(await store.verify()).toMatchObject({ ok: true, entries: 2 });
      expect((await store.act(weighing('a4', 'p1'))).outcome).toBe('ledger-expired');
      expect(await store.expireLedger('patient/p1', expiry)).toMatchObject({ outcome: 'refused' });
    }),
  );

  test(
    'a tombstone written by hand is found',
    on(async ({ store, bench }) => {
      await store.act(weighing('a1', 'p1'));
      await bench.sql(
        `insert into tombstone (subject, commit_number, by_first, by_second, body) values ('patient/p1', 2, 'one', 'two', '{}')`,
      );
      expect(await store.verify()).toMatchObject({ ok: false });
    }),
  );
}
