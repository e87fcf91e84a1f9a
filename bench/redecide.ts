/**
 * A large register decided again from the store, as after an adoption, by the command that does it, while a server of its own
 * answers a nurse's list. The store is made first and not counted. Processor time and memory are those of the command's process.
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Draft, type Entry, projection, teachingSheet } from '../packages/clinical/src/index.ts';
import { type Store, entryId, openSqliteStore } from '../packages/store/src/index.ts';
import type { Bench, Figure } from './figure.ts';
import { inventedLedger } from './invented-register.ts';
import { type Served, serveDemo } from './served-demo.ts';
import { usedBy } from './used-by.ts';

const people = 100_000;
const peopleInAnAct = 50;
const command = fileURLToPath(new URL('../apps/cli/src/main.ts', import.meta.url));
const by = { staff: 'rn-1', role: 'nurse' } as const;

const actId = (number: number): string => `00000000-0000-4000-8000-${String(number).padStart(12, '0')}`;

async function write(store: Store, number: number, at: string, drafts: readonly Draft[]): Promise<void> {
  const subjects = [...new Set(drafts.map(({ subject }) => subject))];
  const id = actId(number);
  const outcome = await store.act({ id, content: id, by, at, subjects, decide: () => ({ drafts }) });
  if (outcome.outcome !== 'recorded') throw new Error(`the bench's act was ${outcome.outcome}`);
}

/** Ids are the store's to give: what is signed is named by the id it will get. */
function draftsOf(act: string, from: number, entries: readonly Entry[]): Draft[] {
  const named = new Map(entries.map(({ id }, index) => [id, entryId(act, from + index)]));
  return entries.map(({ subject, kind, shape, body, effectiveAt, zone }) => ({
    subject,
    kind,
    shape,
    body:
      kind === 'results-signed'
        ? { results: (body as { readonly results: readonly string[] }).results.map((id) => named.get(id) ?? id) }
        : body,
    effectiveAt,
    zone,
  }));
}

async function unitWithProtocol(store: Store): Promise<void> {
  const on = { effectiveAt: '2026-01-05', zone: 'Europe/London', shape: 1 };
  const unit = {
    name: 'Thornbeck Day Unit',
    zone: 'Europe/London',
    chairs: 6,
    opensAt: '08:30',
    closesAt: '17:00',
    sessionWeekdays: [2, 4],
    bloodWeekdays: [1, 2, 3, 4, 5],
    closedDays: [],
    minutesBetweenArrivals: 20,
    telephone: '01632 960100',
    demo: false,
  };
  await write(store, 1, '2026-01-05T09:00:00.000Z', [
    { ...on, subject: 'unit/thornbeck', kind: 'unit-settings', body: unit },
  ]);
  const version = { version: 'thornbeck-1', contentHash: 'h' };
  const content = JSON.stringify({ ...teachingSheet, version: version.version, teachingOnly: false });
  await write(store, 2, '2026-01-05T09:00:01.000Z', [
    { ...on, subject: 'protocol/thornbeck', kind: 'protocol-written', body: { ...version, content } },
  ]);
  for (const [index, as] of (['clinician', 'pharmacist'] as const).entries()) {
    const id = actId(3 + index);
    const outcome = await store.act({
      id,
      content: id,
      by: { staff: as, role: as === 'clinician' ? 'prescriber' : 'pharmacist' },
      at: `2026-01-05T09:00:0${2 + index}.000Z`,
      subjects: ['protocol/thornbeck'],
      decide: () => ({
        drafts: [
          {
            ...on,
            subject: 'protocol/thornbeck',
            kind: 'protocol-signed',
            body: { ...version, as, inForceFrom: '2026-01-05' },
          },
        ],
      }),
    });
    if (outcome.outcome !== 'recorded') throw new Error(`the bench's signature was ${outcome.outcome}`);
  }
}

async function makeStore(path: string): Promise<void> {
  const store = await openSqliteStore({ path, projection });
  try {
    await unitWithProtocol(store);
    for (let from = 0; from < people; from += peopleInAnAct) {
      const number = 10 + from / peopleInAnAct;
      const drafts: Draft[] = [];
      for (let index = from; index < Math.min(people, from + peopleInAnAct); index += 1)
        drafts.push(...draftsOf(actId(number), drafts.length, inventedLedger(index)));
      await write(store, number, '2026-11-24T09:00:00.000Z', drafts);
    }
  } finally {
    await store.close();
  }
}

type Watched = {
  readonly out: string;
  readonly wallSeconds: number;
  readonly cpuSeconds: number;
  readonly peakMegabytes: number;
};

/** Runs the command; what it used is read from the system while it runs (Linux). */
async function redecided(data: string): Promise<Watched> {
  const began = performance.now();
  const child = spawn(process.execPath, [command, 'redecide', '--data', data, '--today', '2026-11-25', '--json'], {
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  let out = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => (out += text));
  const used = { cpuSeconds: 0, peakMegabytes: 0 };
  const look = setInterval(() => Object.assign(used, usedBy(child.pid) ?? {}), 100);
  const code = await new Promise<number | null>((resolve) => child.once('close', resolve));
  clearInterval(look);
  if (code !== 0) throw new Error(`redecide ended with ${code}`);
  return { out, wallSeconds: (performance.now() - began) / 1_000, ...used };
}

/** How long the server takes to answer the list of its demo, asked again and again until told to stop. */
function asking(served: Served): { readonly stop: () => Promise<number[]> } {
  const stopping = new AbortController();
  const times: number[] = [];
  const done = (async () => {
    while (!stopping.signal.aborted) {
      const began = performance.now();
      const answer = await fetch(`${served.url}/api/today`, { headers: { cookie: served.cookie } });
      await answer.arrayBuffer();
      if (!answer.ok) throw new Error(`the server answered ${answer.status}`);
      times.push(performance.now() - began);
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
    return times;
  })();
  return {
    stop: () => {
      stopping.abort();
      return done;
    },
  };
}

const at = (sorted: readonly number[], share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;

export const bench: Bench = async (): Promise<readonly Figure[]> => {
  const data = mkdtempSync(join(tmpdir(), 'twelvemonth-redecide-'));
  try {
    await makeStore(join(data, 'notes.db'));
    const served = await serveDemo();
    try {
      const alone = asking(served);
      await new Promise((resolve) => setTimeout(resolve, 5_000));
      const quiet = (await alone.stop()).toSorted((a, b) => a - b);
      const meanwhile = asking(served);
      const { out, wallSeconds, cpuSeconds, peakMegabytes } = await redecided(data);
      const busy = (await meanwhile.stop()).toSorted((a, b) => a - b);
      const { done, verdicts } = JSON.parse(out) as { readonly done: number; readonly verdicts: object };
      if (done !== people) throw new Error(`${done} of ${people} were decided`);
      const beside = `goal: under 100; before it began ${at(quiet, 0.5).toFixed(0)} and ${at(quiet, 0.95).toFixed(0)}`;
      return [
        {
          what: `${people} people of 30 entries decided again from the store`,
          value: wallSeconds,
          unit: 's',
          beside: `goal: under 60; ${JSON.stringify(verdicts)}`,
        },
        { what: 'the same, processor time of its process', value: cpuSeconds, unit: 's' },
        { what: 'the same, most memory of its process', value: peakMegabytes, unit: 'MB', beside: 'goal: under 1000' },
        { what: "meanwhile a server answers Today's list, median", value: at(busy, 0.5), unit: 'ms', beside },
        { what: "meanwhile a server answers Today's list, 95 of 100", value: at(busy, 0.95), unit: 'ms', beside },
      ];
    } finally {
      await served.stop();
    }
  } finally {
    rmSync(data, { recursive: true });
  }
};
