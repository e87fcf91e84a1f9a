/**
 * The tables on SQLite. `entry`, `act` and `commit_log` are the truth; triggers refuse to change or remove a row however
 * it is asked for, `insert or replace` included. Somebody with the file in hand can still remove the triggers: `verify`
 * and the anchor are for that.
 */
import type { DatabaseSync } from 'node:sqlite';
import { derivedTableDefinitions } from '../derived-rows.ts';
import { StoreProblem } from '../store-problem.ts';

/** Refuses a row's change and removal, and a second row in its place. */
const onlyAdded = (table: string, key: string, says: string): string[] => [
  `create trigger ${table}_never_changes before update on ${table} begin select raise(abort, '${says}'); end`,
  `create trigger ${table}_never_replaced before insert on ${table} when exists (select 1 from ${table} where ${key}) begin select raise(abort, '${says}'); end`,
];
const neverRemoved = (table: string, says: string): string =>
  `create trigger ${table}_never_removed before delete on ${table} begin select raise(abort, '${says}'); end`;

/** True inside the transaction that expires the ledger: its tombstone is there and its commit is not closed yet. */
const beingExpired =
  'exists (select 1 from tombstone t where t.subject = old.subject and t.commit_number > (select coalesce(max(number), 0) from commit_log))';

export type Migration = { readonly version: number; readonly statements: readonly string[] };

export const migrations: readonly Migration[] = [
  {
    version: 1,
    statements: [
      `create table entry (
        subject text not null, seq integer not null, id text not null, act text not null, kind text not null, shape integer not null,
        body text not null, effective_at text not null, zone text not null, amends text, device_at text, recorded_at text not null,
        staff text not null, role text not null, previous_hash text not null, hash text not null,
        primary key (subject, seq), unique (subject, id)) strict, without rowid`,
      `create table act (
        commit_number integer not null, position integer not null, id text not null unique, content_hash text not null, wrote text not null,
        primary key (commit_number, position)) strict, without rowid`,
      'create table commit_log (number integer primary key, hash text not null) strict',
      `create table tombstone (
        subject text primary key, commit_number integer not null, by_first text not null, by_second text not null, body text not null,
        check (by_first <> by_second)) strict, without rowid`,
      'create table restore_accepted (commit_number integer primary key, body text not null) strict',
      'create table setting (name text primary key, value text not null) strict, without rowid',
      ...onlyAdded(
        'entry',
        '(subject = new.subject and seq = new.seq) or (subject = new.subject and id = new.id)',
        'entries are only added',
      ),
      `create trigger entry_never_removed before delete on entry when not ${beingExpired} begin select raise(abort, 'entries are only added'); end`,
      `create trigger entry_at_the_end before insert on entry
        when new.seq <> 1 + (select coalesce(max(seq), 0) from entry where subject = new.subject) or exists (select 1 from tombstone where subject = new.subject)
        begin select raise(abort, 'an entry goes at the end of its ledger'); end`,
      ...onlyAdded(
        'act',
        'id = new.id or (commit_number = new.commit_number and position = new.position)',
        'acts are only added',
      ),
      neverRemoved('act', 'acts are only added'),
      `create trigger act_in_an_open_commit before insert on act when new.commit_number <= (select coalesce(max(number), 0) from commit_log)
        begin select raise(abort, 'a closed commit takes no more acts'); end`,
      ...onlyAdded('commit_log', 'number = new.number', 'commits are only added'),
      neverRemoved('commit_log', 'commits are only added'),
      `create trigger commit_log_without_gaps before insert on commit_log when new.number <> 1 + (select coalesce(max(number), 0) from commit_log)
        begin select raise(abort, 'commits are numbered without gaps'); end`,
      `create trigger commit_log_whole_ledgers before insert on commit_log
        when exists (select 1 from tombstone t where t.commit_number = new.number and exists (select 1 from entry e where e.subject = t.subject))
        begin select raise(abort, 'a ledger goes as a whole or not at all'); end`,
      ...onlyAdded('tombstone', 'subject = new.subject', 'tombstones are only added'),
      neverRemoved('tombstone', 'tombstones are only added'),
      ...onlyAdded('restore_accepted', 'commit_number = new.commit_number', 'acceptances are only added'),
      neverRemoved('restore_accepted', 'acceptances are only added'),
      ...derivedTableDefinitions('text', 'integer', ' strict, without rowid'),
    ],
  },
];

export const versionOf = (database: DatabaseSync): number =>
  Number(database.prepare('pragma user_version').get()?.['user_version'] ?? 0);

export function refuseNewer(version: number, known: readonly Migration[] = migrations): void {
  const newest = known.at(-1)?.version ?? 0;
  if (version > newest) {
    throw new StoreProblem(
      'newer-software',
      `These notes were written by a newer version of the software (their form is number ${version}, this software knows up to ${newest}). Start the newer version.`,
    );
  }
}

/** Brings the tables to the newest form, one transaction a step: old or new, never between. */
export function migrate(database: DatabaseSync, known: readonly Migration[]): void {
  for (const step of known.filter(({ version }) => version > versionOf(database))) {
    database.exec('begin immediate');
    try {
      for (const statement of step.statements) database.exec(statement);
      database.exec(`pragma user_version = ${step.version}`);
      database
        .prepare(
          `insert into setting (name, value) values ('schema version', ?) on conflict (name) do update set value = excluded.value`,
        )
        .run(String(step.version));
      database.exec('commit');
    } catch (cause) {
      if (database.isTransaction) database.exec('rollback');
      throw cause;
    }
  }
}
