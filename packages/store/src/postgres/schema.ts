/**
 * The tables on PostgreSQL: the same as on SQLite, texts as text and sorted by code point. Triggers refuse to change,
 * remove or truncate; the owner of the tables can still switch them off: `verify --against` is for that.
 *
 * Unique keys of `entry` and of the derived tables contain the subject, so they can be partitioned or sharded by it.
 */
import type { ClientBase } from 'pg';
import { derivedTableDefinitions } from '../derived-rows.ts';
import { beforeTheFirst } from '../digest.ts';
import { StoreProblem } from '../store-problem.ts';

const text = 'text collate "C"';

const onlyAdded = (table: string): string[] => [
  `create trigger never_changes before update on ${table} for each row execute function refuse_change()`,
  `create trigger never_emptied before truncate on ${table} for each statement execute function refuse_change()`,
];
const neverRemoved = (table: string): string =>
  `create trigger never_removed before delete on ${table} for each row execute function refuse_change()`;
const checkedFunction = (name: string, unless: string, says: string, then: 'new' | 'old'): string =>
  `create function ${name}() returns trigger language plpgsql as $$ begin
    if ${unless} then raise exception '${says}' using errcode = 'restrict_violation'; end if; return ${then}; end $$`;

export type Migration = { readonly version: number; readonly statements: readonly string[] };

export const migrations: readonly Migration[] = [
  {
    version: 1,
    statements: [
      `create table entry (
        subject ${text} not null, seq integer not null, id ${text} not null, act ${text} not null, kind ${text} not null, shape integer not null,
        body ${text} not null, effective_at ${text} not null, zone ${text} not null, amends ${text}, device_at ${text}, recorded_at ${text} not null,
        staff ${text} not null, role ${text} not null, previous_hash ${text} not null, hash ${text} not null,
        primary key (subject, seq), unique (subject, id))`,
      `create table act (
        commit_number bigint not null, position integer not null, id ${text} not null unique, content_hash ${text} not null, wrote ${text} not null,
        primary key (commit_number, position))`,
      `create table commit_log (number bigint primary key, hash ${text} not null)`,
      `create table commit_tail (only_one boolean primary key default true check (only_one), number bigint not null, hash ${text} not null)`,
      `insert into commit_tail (number, hash) values (0, '${beforeTheFirst}')`,
      `create table tombstone (
        subject ${text} primary key, commit_number bigint not null, by_first ${text} not null, by_second ${text} not null, body ${text} not null,
        check (by_first <> by_second))`,
      `create table restore_accepted (commit_number bigint primary key, body ${text} not null)`,
      `create function refuse_change() returns trigger language plpgsql as $$ begin
        raise exception 'rows of % are only added', tg_table_name using errcode = 'restrict_violation'; end $$`,
      // The tombstone's row must have been made by this very transaction.
      checkedFunction(
        'refuse_removal',
        'not exists (select 1 from tombstone t where t.subject = old.subject and t.xmin::text = pg_current_xact_id()::xid::text)',
        'rows of entry are only added',
        'old',
      ),
      checkedFunction(
        'entry_at_the_end',
        `new.seq <> 1 + (select coalesce(max(e.seq), 0) from entry e where e.subject = new.subject) or exists (select 1 from tombstone t where t.subject = new.subject)`,
        'an entry goes at the end of its ledger',
        'new',
      ),
      checkedFunction(
        'act_in_an_open_commit',
        'new.commit_number <= (select coalesce(max(c.number), 0) from commit_log c)',
        'a closed commit takes no more acts',
        'new',
      ),
      checkedFunction(
        'commit_without_gaps',
        `new.number <> 1 + (select coalesce(max(c.number), 0) from commit_log c)
         or exists (select 1 from tombstone t join entry e on e.subject = t.subject where t.commit_number = new.number)`,
        'commits are numbered without gaps, and a ledger goes as a whole or not at all',
        'new',
      ),
      ...['entry', 'act', 'commit_log', 'tombstone', 'restore_accepted'].flatMap(onlyAdded),
      ...['act', 'commit_log', 'tombstone', 'restore_accepted'].map(neverRemoved),
      'create trigger never_removed before delete on entry for each row execute function refuse_removal()',
      'create trigger at_the_end before insert on entry for each row execute function entry_at_the_end()',
      'create trigger in_an_open_commit before insert on act for each row execute function act_in_an_open_commit()',
      'create trigger without_gaps before insert on commit_log for each row execute function commit_without_gaps()',
      ...derivedTableDefinitions(text, 'integer'),
    ],
  },
];

/** Brings the tables to the newest form in one transaction, however many servers start at once. */
export async function migrate(client: ClientBase, known: readonly Migration[]): Promise<void> {
  await client.query('begin isolation level read committed');
  try {
    await client.query(`select pg_advisory_xact_lock(hashtextextended('twelvemonth schema', 0))`);
    await client.query(`create table if not exists setting (name ${text} primary key, value ${text} not null)`);
    const stored = await client.query<{ value: string }>(`select value from setting where name = 'schema version'`);
    const version = Number(stored.rows[0]?.value ?? 0);
    const newest = known.at(-1)?.version ?? 0;
    if (version > newest) {
      throw new StoreProblem(
        'newer-software',
        `These notes were written by a newer version of the software (their form is number ${version}, this software knows up to ${newest}). Start the newer version.`,
      );
    }
    for (const step of known.filter((each) => each.version > version))
      for (const statement of step.statements) await client.query(statement);
    if (version < newest) {
      await client.query(
        `insert into setting (name, value) values ('schema version', $1) on conflict (name) do update set value = excluded.value`,
        [String(newest)],
      );
    }
    await client.query('commit');
  } catch (cause) {
    await client.query('rollback').catch(() => undefined);
    throw cause;
  }
}
