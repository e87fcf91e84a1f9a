/**
 * What the store's promises cost: an act with hashes, chain, derived rows and anchor, beside a bare INSERT of the very same
 * entry that is committed just as durably (write-ahead log, synchronous=FULL). Both in the same run, in turns, because the
 * same disk may sync in 0.05 ms and, an hour later, in 4 ms.
 */
import { closeSync, fdatasyncSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync, type SQLInputValue } from 'node:sqlite';
import type { Draft, Entry, Subject } from '../packages/clinical/src/index.ts';
import { openSqliteStore, type DerivedRow, type Store } from '../packages/store/src/index.ts';
import type { Bench, Figure } from './figure.ts';

const warmUpBlocks = 20;
const writers = 32;
const patients = 100;

/** About what a real projection makes: who it is, where they are (changes with every act), what is to do. */
function project(subject: Subject, entries: readonly Entry[]): DerivedRow[] {
  return [
    {
      table: 'person',
      key: '',
      columns: {
        family: 'Okafor',
        given: 'Ada',
        number: subject,
        born: '1941-06-02',
        sex: 'female',
        unit: 'thornbeck',
        search: `ada okafor ${subject}`,
      },
    },
    {
      table: 'standing',
      key: '',
      columns: {
        standing: 'in work-up',
        owner: 'nurse',
        unit: 'thornbeck',
        on_day: 20_000 + entries.length,
        since_day: 20_000,
      },
    },
    {
      table: 'task',
      key: 'bloods',
      columns: { task: 'take bloods', owner: 'nurse', unit: 'thornbeck', due_day: 20_010 },
    },
  ];
}

const draftOf = (subject: Subject): Draft => ({
  subject,
  kind: 'result',
  shape: 1,
  body: {
    analyte: 'creatinine',
    value: '88',
    unit: 'umol/L',
    sampledOn: '2026-11-25',
    laboratory: 'Marlowe Vale pathology',
    status: 'final',
  },
  effectiveAt: '2026-11-25',
  zone: 'Europe/London',
});

let made = 0;
async function act(store: Store): Promise<void> {
  made += 1;
  const subject: Subject = `patient/p${made % patients}`;
  const outcome = await store.act({
    id: `bench-${made}`,
    content: `bench-${made}`,
    by: { staff: 'nurse-adeyemi', role: 'nurse' },
    at: '2026-11-25T09:00:00.000Z',
    subjects: [subject],
    decide: () => ({ drafts: [draftOf(subject)] }),
  });
  if (outcome.outcome !== 'recorded') throw new Error(`the bench's act was ${outcome.outcome}`);
}

function bareTable(path: string) {
  const database = new DatabaseSync(path);
  database.exec(`pragma journal_mode = wal; pragma synchronous = full;
    create table entry (subject text not null, seq integer not null, id text not null, act text not null, kind text not null, shape integer not null,
      body text not null, effective_at text not null, zone text not null, amends text, device_at text, recorded_at text not null,
      staff text not null, role text not null, previous_hash text not null, hash text not null,
      primary key (subject, seq), unique (subject, id)) strict, without rowid`);
  const insert = database.prepare(`insert into entry values (${Array.from({ length: 16 }, () => '?').join(', ')})`);
  let seq = 0;
  const body = JSON.stringify(draftOf('patient/p1').body);
  const hash = 'f'.repeat(64);
  return {
    insert: (): void => {
      seq += 1;
      const id = `${seq.toString(16).padStart(8, '0')}-b765-8941-950a-61e21f664f67`;
      const row: SQLInputValue[] = [
        `patient/p${seq % patients}`,
        seq,
        id,
        `bench-${seq}`,
        'result',
        1,
        body,
        '2026-11-25',
        'Europe/London',
        null,
        null,
        '2026-11-25T09:00:00.000Z',
        'nurse-adeyemi',
        'nurse',
        hash,
        hash,
      ];
      insert.run(...row);
    },
    close: () => database.close(),
  };
}

function syncMilliseconds(folder: string): number {
  const file = openSync(join(folder, 'probe'), 'w');
  const times = Array.from({ length: 100 }, () => {
    writeSync(file, 'x'.repeat(4096));
    const began = performance.now();
    fdatasyncSync(file);
    return performance.now() - began;
  });
  closeSync(file);
  return median(times);
}

const median = (values: readonly number[]): number =>
  values.toSorted((left, right) => left - right)[values.length >> 1] ?? Number.NaN;

type Times = { readonly total: number; readonly acts: number; readonly each: number[] };

/** Runs blocks of both in turns, so that a disk that is slow for a second is slow for both. */
async function inTurns(
  blocks: number,
  ours: () => Promise<number>,
  theirs: () => Promise<number>,
): Promise<{ ours: Times; theirs: Times }> {
  const times = { ours: [] as number[], theirs: [] as number[] };
  let acts = 0;
  for (let block = -warmUpBlocks; block < blocks; block += 1) {
    for (const [name, run] of [
      ['ours', ours],
      ['theirs', theirs],
    ] as const) {
      const began = performance.now();
      acts = await run();
      if (block >= 0) times[name].push((performance.now() - began) / acts);
    }
  }
  const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value * acts, 0);
  return {
    ours: { total: sum(times.ours), acts: blocks * acts, each: times.ours },
    theirs: { total: sum(times.theirs), acts: blocks * acts, each: times.theirs },
  };
}

export const bench: Bench = async () => {
  const folder = mkdtempSync(join(tmpdir(), 'tm-bench-'));
  const store = await openSqliteStore({ path: join(folder, 'notes.db'), projection: project });
  const bare = bareTable(join(folder, 'bare.db'));
  const writer = async (acts: number): Promise<number> => {
    for (let index = 0; index < acts; index += 1) await act(store);
    return acts;
  };
  const bareInserts = async (acts: number): Promise<number> => {
    for (let index = 0; index < acts; index += 1) bare.insert();
    return acts;
  };
  try {
    const sync = syncMilliseconds(folder);
    const one = await inTurns(
      400,
      () => writer(4),
      () => bareInserts(4),
    );
    const many = await inTurns(
      40,
      async () => (await Promise.all(Array.from({ length: writers }, () => writer(5)))).length * 5,
      () => bareInserts(writers * 5),
    );
    return [
      { what: 'one sync of 4 kB, before', value: sync, unit: 'ms', beside: 'median' },
      { what: 'one sync of 4 kB, after', value: syncMilliseconds(folder), unit: 'ms', beside: 'median' },
      ...figures('one writer', one, 'goal: at most 2.5'),
      ...figures(`${writers} writers`, many, 'goal: at most 1'),
    ];
  } finally {
    await store.close();
    bare.close();
    rmSync(folder, { recursive: true });
  }
};

/** Totals hold everything, checkpoints and a disk that stalls too; medians say what one act usually costs. */
function figures(who: string, { ours, theirs }: { ours: Times; theirs: Times }, goal: string): Figure[] {
  return [
    {
      what: `bare INSERT, committed row by row, ${who}`,
      value: theirs.total / theirs.acts,
      unit: 'ms each',
      beside: `median ${median(theirs.each).toPrecision(3)}`,
    },
    {
      what: `append with chain, derived rows and anchor, ${who}`,
      value: ours.total / ours.acts,
      unit: 'ms each',
      beside: `median ${median(ours.each).toPrecision(3)}`,
    },
    {
      what: `append / bare INSERT, ${who}`,
      value: ours.total / theirs.total,
      unit: 'times',
      beside: `${goal}; by medians ${(median(ours.each) / median(theirs.each)).toPrecision(3)}`,
    },
  ];
}

if (import.meta.main) {
  for (const { what, value, unit, beside } of await bench()) {
    console.log(
      `${value.toPrecision(3).padStart(10)} ${unit.padEnd(8)} ${what}${beside === undefined ? '' : ` (${beside})`}`,
    );
  }
}
