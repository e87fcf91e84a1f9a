// Commands that read notes on disk, judged by what they print and how they end.
import { copyFileSync, existsSync, mkdirSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { DatabaseSync } from 'node:sqlite';
import { join } from 'node:path';
import { day, demoSheet, projection } from '@twelvemonth/clinical';
import { openSqliteReader, openSqliteStore } from '@twelvemonth/store';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { redecide } from '../src/redecide.ts';
import { Service, ready, waiting } from './a-service.ts';
import { asProcess, fileIn, jsonOf, ownFolder, twelvemonth } from './run-command.ts';

const folder = ownFolder();
const data = join(folder, 'data');
const notes = join(data, 'service', 'notes.db');

beforeAll(async () => {
  const service = await (await (await Service.begin(data)).unit()).protocol();
  await service.plan();
  await service.person(ready, true);
  await service.person(waiting, false);
  await service.book(ready.patient, 1);
  service.now = '2026-11-26T09:00:00.000Z';
  await service.go(ready.patient);
  await service.store.close();
});

/** A copy of the data folder for a test that changes it. */
function copied(name: string): string {
  const to = join(folder, name);
  rmSync(to, { recursive: true, force: true });
  const service = join(to, 'service');
  fileIn(folder, `${name}.mark`, '');
  mkdirSync(service, { recursive: true });
  for (const file of readdirSync(join(data, 'service'))) copyFileSync(join(data, 'service', file), join(service, file));
  return to;
}

describe('the lists beside the notes', () => {
  it('made by other rules they do not fit; made again from the notes they do, and no entry has changed', async () => {
    const place = join(folder, 'made-by-other-rules');
    const service = await (await (await Service.begin(place, 'own', () => [])).unit()).protocol();
    await service.person(ready, true);
    const { commit } = await service.store.tail();
    await service.store.close();
    const before = await twelvemonth(['verify', '--data', place]);
    expect(before).toMatchObject({ code: 1, out: expect.stringContaining('"rebuild" makes it again') });
    expect(await twelvemonth(['rebuild', '--data', place])).toMatchObject({ code: 0 });
    const after = await twelvemonth(['verify', '--data', place]);
    expect(after).toMatchObject({ code: 0, out: expect.stringContaining(`commit ${commit}`) });
  });
});

describe('everyone decided again', () => {
  const asked = ['redecide', '--today', '2026-11-25', '--data', data];

  it('counts verdicts and windows, and tells how far it is', async () => {
    const found = await jsonOf(asked);
    expect(found).toMatchObject({ people: 2, done: 2, leftOut: 0, withWindow: expect.any(Number), code: 0 });
    expect((await twelvemonth(asked)).aside).toContain('2 of 2');
  });

  it('the counts are those of everyone’s own readiness', async () => {
    const { verdicts, withWindow } = await jsonOf<{ verdicts: Record<string, number>; withWindow: number }>(asked);
    const all = await twelvemonth(['readiness', '--all', '--today', '2026-11-25', '--data', data, '--json']);
    const answers = JSON.parse(all.out) as { readonly verdict: string; readonly window?: unknown }[];
    for (const [verdict, count] of Object.entries(verdicts))
      expect(answers.filter((answer) => answer.verdict === verdict)).toHaveLength(count);
    expect(answers.filter(({ window }) => window !== undefined && window !== null)).toHaveLength(withWindow);
  });

  it('beside another version of the protocol, it says how many that would decide otherwise', async () => {
    const found = await jsonOf([...asked, '--against', 'thornbeck-1']);
    expect(found).toMatchObject({ otherwise: { verdict: 0, window: 0 } });
    expect((await twelvemonth([...asked, '--against', 'nobody-wrote-it'])).code).toBe(2);
  });

  it('stops when asked to, and says how far it came', async () => {
    const reader = openSqliteReader({ path: notes, projection });
    const found = await redecide(reader, {
      today: day('2026-11-25'),
      against: undefined,
      told: () => undefined,
      isStopped: () => true,
    });
    await reader.close();
    expect(found).toMatchObject({ people: 2, done: 0 });
  });
});

describe('readiness of people in the notes', () => {
  const on = ['--today', '2026-11-25', '--on', '2026-11-26', '--data', data];

  it('one person, by number, however it is spaced', async () => {
    const ran = await twelvemonth(['readiness', '999', '204', '7701', ...on]);
    expect(ran).toMatchObject({
      code: 0,
      out: expect.stringMatching(/booked: 26 Nov 2026, 08:40\ntoday, 2026-11-25: ready/),
    });
    expect(await twelvemonth(['readiness', '9992047701', ...on])).toEqual(ran);
  });

  it('says on standard error which notes it reads', async () => {
    expect((await twelvemonth(['readiness', ready.number, ...on])).aside).toMatch(
      /^reading service: a real service, commit \d+$/m,
    );
  });

  it('by id, as JSON', async () => {
    const answer = await jsonOf<{
      number: string;
      verdict: string;
      window: unknown;
      place: string;
      requirements: { id: string; verdict: string; working: { thresholds: unknown[] } }[];
    }>(['readiness', ready.patient, ...on]);
    expect(answer).toMatchObject({
      code: 0,
      number: ready.number,
      verdict: 'ready',
      window: { from: '2026-11-25', until: '2027-01-19', certain: true },
      place: '2026-11-26',
    });
    expect(answer.requirements.find(({ id }) => id === 'kidney-function')?.working.thresholds).not.toEqual([]);
  });

  it('everyone: a line each, and the code says that not everyone is ready', async () => {
    const ran = await twelvemonth(['readiness', '--all', ...on]);
    expect(ran.code).toBe(1);
    expect(
      ran.out
        .split('\n')
        .slice(0, 3)
        .map((line) => line.replaceAll(/ {2,}/g, ' | ').split(' | ').slice(0, 3)),
    ).toEqual([
      ['number', 'on', 'verdict'],
      [ready.number, '2026-11-26', 'ready'],
      [waiting.number, '2026-11-26', 'cannot say'],
    ]);
    expect(ran.aside).toContain('2 under care, 1 ready on the date');
  });

  it('everyone, as JSON, agrees with one by one', async () => {
    const all = JSON.parse((await twelvemonth(['readiness', '--all', '--json', ...on])).out) as unknown[];
    const each = await Promise.all(
      [ready, waiting].map(
        async ({ patient }) => JSON.parse((await twelvemonth(['readiness', patient, '--json', ...on])).out) as unknown,
      ),
    );
    expect(all).toEqual(each);
  });

  it.each([
    [['readiness', '--all', '--unit', 'elsewhere'], 2, 'no unit "elsewhere"'],
    [['readiness', '999 000 0000'], 1, 'Nobody here'],
    [['readiness'], 2, 'Say one of'],
    [['readiness', '--all', ready.patient], 2, 'Say one of'],
    [['readiness', ready.patient, '--on', '26/11/2026'], 2, 'is not a date'],
    [['readiness', ready.patient, '--today', '2026-11-25', '--on', '2026-11-24'], 2, 'lies before'],
    [['readiness', ready.patient, '--today', '2020-01-01'], 1, 'No protocol is in force'],
  ])('%j ends with %i', async (args, code, says) => {
    expect(await twelvemonth([...args, '--data', data])).toMatchObject({
      code,
      out: '',
      aside: expect.stringContaining(says),
    });
  });
});

describe('showing notes', () => {
  it('as text that reads like notes', async () => {
    const ran = await twelvemonth(['show', ready.number, '--data', data]);
    expect(ran.code).toBe(0);
    expect(ran.out).toContain('person female, born 1941-06-02, named Wilhelmina Arkwright-p1');
    expect(ran.out).toMatch(/24 Nov 2026 +weight 56\.2 kg measured/);
  });

  it('as they were known at a moment', async () => {
    const ran = await twelvemonth(['show', ready.patient, '--known-at', '2026-11-25T00:00Z', '--data', data]);
    expect(ran.out).not.toContain('26 Nov 2026   weight');
    expect(ran.aside).toMatch(/later entries are left out/);
    expect(await twelvemonth(['show', ready.patient, '--known-at', '2026-01-01T00:00Z', '--data', data])).toMatchObject(
      { code: 1 },
    );
    expect(await twelvemonth(['show', ready.patient, '--known-at', 'yesterday', '--data', data])).toMatchObject({
      code: 2,
    });
  });
});

describe('which notes', () => {
  it('a folder with one service is that service; with several, one must be chosen', async () => {
    const two = copied('two');
    mkdirSync(join(two, 'demo-1-2026-11-25'), { recursive: true });
    copyFileSync(notes, join(two, 'demo-1-2026-11-25', 'notes.db'));
    expect(await twelvemonth(['verify', '--data', two])).toMatchObject({
      code: 2,
      aside: expect.stringContaining('demo-1-2026-11-25, service'),
    });
    expect(await twelvemonth(['verify', '--data', two, '--service', 'service'])).toMatchObject({ code: 0 });
  });
  it('none there ends with 3', async () => {
    expect(await twelvemonth(['verify', '--data', join(folder, 'empty')])).toMatchObject({ code: 3 });
  });
});

describe('review', () => {
  const asked = ['--today', '2026-11-25', '--data', data];
  it('nobody with no dose is asked for one; what is missing is said all the same', async () => {
    const ran = await twelvemonth(['review', '999', '204', '7701', ...asked]);
    expect(ran).toMatchObject({
      code: 0,
      out: expect.stringMatching(/^Review of the course, asked on 25 Nov 2026: No review is asked for now\./),
    });
    expect(ran.out).toContain('Never scanned.');
    expect(ran.out).toContain('No bone density scan since the first dose. (bone-density)');
  });
  it('as JSON, with the criteria and their sources', async () => {
    const sheet = await jsonOf<{ failure: { criteria: { source: string }[] }; carryingOn: { is: string }[] }>([
      'review',
      ready.number,
      ...asked,
    ]);
    expect(sheet.failure.criteria[1]?.source).toContain('IOF 2012');
    expect(sheet.carryingOn.map(({ is }) => is)).toContain('cannot say');
  });
});

describe('verify', () => {
  it('says how much was whole', async () => {
    expect(await twelvemonth(['verify', '--data', data])).toMatchObject({
      code: 0,
      out: expect.stringMatching(/^whole: \d+ entries in \d+ ledgers, commit \d+\n$/),
    });
  });

  it('ends with 1 at an entry changed behind its back', async () => {
    const changed = copied('changed');
    const database = new DatabaseSync(join(changed, 'service', 'notes.db'));
    const table = (
      database
        .prepare(
          "select name from sqlite_master where type = 'table' and sql like '%body%' and sql like '%recorded_at%'",
        )
        .get() as { name: string }
    ).name;
    for (const { name } of database.prepare("select name from sqlite_master where type = 'trigger'").all())
      database.exec(`drop trigger ${String(name)}`);
    database.exec(`update ${table} set body = replace(body, '56.2', '65.2')`);
    database.close();
    expect(await twelvemonth(['verify', '--data', changed])).toMatchObject({
      code: 1,
      out: expect.stringMatching(/^not whole: patient\/p1/),
    });
  });

  it('holds the notes against a digest kept elsewhere', async () => {
    const digest = join(folder, 'digest.txt');
    expect(await twelvemonth(['verify', '--data', data, '--digest', digest])).toMatchObject({ code: 0 });
    expect(await twelvemonth(['verify', '--data', data, '--against', digest])).toMatchObject({ code: 0 });
    fileIn(folder, 'other.txt', readFileSync(digest, 'utf8').replace(/hash .{8}/, 'hash 00000000'));
    expect(await twelvemonth(['verify', '--data', data, '--against', join(folder, 'other.txt')])).toMatchObject({
      code: 1,
    });
    expect(await twelvemonth(['verify', '--data', data, '--against', join(folder, 'none.txt')])).toMatchObject({
      code: 3,
    });
  });
});

describe('replay', () => {
  it('comes to the same verdict as the signed decision', async () => {
    expect(await twelvemonth(['replay', '--data', data])).toMatchObject({
      code: 0,
      out: '',
      aside: expect.stringContaining('1 signed decisions, 0 come out differently'),
    });
  });

  describe('where a decision comes out differently', () => {
    let different: string;
    let decision: string;
    beforeAll(async () => {
      // A decision signed as ready by a protocol version that never was: written past the rules.
      different = copied('different');
      const store = await openSqliteStore({ path: join(different, 'service', 'notes.db'), projection });
      const outcome = await store.act({
        id: '00000000-0000-4000-8000-00000000ffff',
        content: 'x',
        by: { staff: 'nurse', role: 'nurse' },
        at: '2026-11-26T12:00:00.000Z',
        subjects: ['patient/p2'],
        decide: () => ({
          drafts: [
            {
              subject: 'patient/p2',
              kind: 'go-decision',
              shape: 1,
              body: {
                decision: 'go',
                basis: {
                  on: '2026-11-26',
                  knownSeq: 3,
                  protocolVersion: 'thornbeck-1',
                  ruleSet: '1',
                  verdict: 'ready',
                },
              },
              effectiveAt: '2026-11-26',
              zone: 'Europe/London',
            },
          ],
        }),
      });
      decision = outcome.outcome === 'recorded' ? (outcome.entries[0]?.id ?? '') : '';
      await store.close();
    });

    it('names it and ends with 1', async () => {
      const ran = await twelvemonth(['replay', '--data', different]);
      expect(ran).toMatchObject({
        code: 1,
        out: expect.stringMatching(new RegExp(`${decision}.*patient/p2.*2026-11-26.*ready.*cannot say`)),
      });
    });
    it('lets it pass with a reason', async () => {
      const allow = fileIn(folder, 'allow.json', JSON.stringify([{ decision, reason: 'written by hand for a test' }]));
      expect(await twelvemonth(['replay', '--data', different, '--allow', allow])).toMatchObject({
        code: 0,
        out: expect.stringContaining('written by hand for a test'),
      });
      expect((await twelvemonth(['replay', '--data', data, '--allow', allow])).aside).toContain('take it off the list');
    });
    it('does not take a list without reasons', async () => {
      expect(
        await twelvemonth([
          'replay',
          '--data',
          different,
          '--allow',
          fileIn(folder, 'bare.json', JSON.stringify([{ decision }])),
        ]),
      ).toMatchObject({ code: 2 });
    });
  });
});

describe('what-if', () => {
  const sheetWith = (name: string, numbers: Record<string, string>): string => {
    const sheet = demoSheet(name);
    const decided = Object.fromEntries(
      Object.entries(sheet.numbers).map(([key, number]) => [key, { ...number, value: numbers[key] ?? number.value }]),
    );
    return fileIn(folder, `${name}.json`, JSON.stringify({ ...sheet, numbers: decided }));
  };
  const ask = async (...args: string[]) =>
    twelvemonth(['what-if', '--data', data, '--today', '2026-11-30', '--months', '3', ...args]);

  it('counts nothing under a sheet that says the same, and a dose put off under a stricter one', async () => {
    const same = await ask('--version', 'thornbeck-1', '--json');
    expect(same.code).toBe(0);
    const before = JSON.parse(same.out) as { decisions: number; putOff: number; others: unknown[] };
    expect(before).toMatchObject({ putOff: 0, others: [] });
    expect(before.decisions).toBeGreaterThan(0);
    const stricter = await ask('--sheet', sheetWith('stricter', { clearanceFloor: '90' }), '--list');
    expect(stricter).toMatchObject({ code: 0, out: expect.stringMatching(/would have been put off +[0-9]/) });
  });

  it('asks for one sheet, whole, and for a stretch that can be counted', async () => {
    expect((await ask()).code).toBe(2);
    expect((await ask('--version', 'starter-us')).aside).toContain('empty numbers');
    expect((await ask('--version', 'nowhere')).code).toBe(2);
    expect((await twelvemonth(['what-if', '--data', data, '--version', 'thornbeck-1', '--months', '0'])).code).toBe(2);
  });
});

describe('backup and restore', () => {
  const copy = join(folder, 'backups', 'one');
  it('a backup, restored into an empty folder, verifies and reads the same', async () => {
    const backup = await twelvemonth(['backup', '--to', copy, '--data', data]);
    expect(backup).toMatchObject({ code: 0, out: expect.stringMatching(/^copied and whole: \d+ entries, commit \d+/) });
    const proof = join(folder, 'proof');
    expect(await twelvemonth(['restore', '--from', copy, '--data', proof])).toMatchObject({
      code: 0,
      out: expect.stringMatching(
        /^restored: \d+ entries, commit \d+\. There were no notes in this place before; what was written elsewhere after this copy was made is not in it\.\n$/,
      ),
    });
    expect(await twelvemonth(['verify', '--data', proof])).toMatchObject({ code: 0 });
    const shown = async (place: string) => (await twelvemonth(['show', ready.patient, '--data', place])).out;
    expect(await shown(proof)).toBe(await shown(data));
  });

  it('never replaces another copy', async () => {
    expect(await twelvemonth(['backup', '--to', copy, '--data', data])).toMatchObject({
      code: 3,
      aside: expect.stringContaining('never replaces'),
    });
  });

  it('over notes that are there: only with a name and a reason, and the replaced notes are kept', async () => {
    const over = copied('over');
    expect(await twelvemonth(['restore', '--from', copy, '--data', over])).toMatchObject({
      code: 2,
      aside: expect.stringContaining('--by'),
    });
    const ran = await twelvemonth([
      'restore',
      '--from',
      copy,
      '--data',
      over,
      '--by',
      'Margit Hale',
      '--reason',
      'drill',
    ]);
    expect(ran).toMatchObject({ code: 0, out: expect.stringContaining('what was there is kept as') });
    expect(readdirSync(join(over, 'service')).some((name) => name.includes('.replaced-'))).toBe(true);
    expect(await twelvemonth(['verify', '--data', over])).toMatchObject({ code: 0 });
  });

  it('notes put back by hand are accepted by name and reason only', async () => {
    const byHand = copied('by-hand');
    const older = join(byHand, 'service', 'notes.db');
    const store = await openSqliteStore({ path: older, projection });
    await store.act({
      id: '00000000-0000-4000-8000-00000000eeee',
      content: 'x',
      by: { staff: 'n', role: 'nurse' },
      at: '2026-11-27T12:00:00.000Z',
      subjects: ['patient/p2'],
      decide: () => ({
        drafts: [
          {
            subject: 'patient/p2',
            kind: 'weight',
            shape: 1,
            body: { quantity: { comparator: '', value: '60', unit: 'kg' }, method: 'measured' },
            effectiveAt: '2026-11-27',
            zone: 'Europe/London',
          },
        ],
      }),
    });
    await store.close();
    copyFileSync(copy, older);
    expect(await twelvemonth(['restore', '--accept', '--data', byHand])).toMatchObject({ code: 2 });
    expect(
      await twelvemonth(['restore', '--accept', '--by', 'Margit Hale', '--reason', 'disk lost', '--data', byHand]),
    ).toMatchObject({ code: 0, out: expect.stringMatching(/1 (?:commit|entry|entries)/) });
  });

  it('is refused while another process holds the notes', async () => {
    const held = copied('held');
    const store = await openSqliteStore({ path: join(held, 'service', 'notes.db'), projection });
    afterAll(() => store.close());
    expect(await twelvemonth(['restore', '--from', copy, '--data', held, '--by', 'x', '--reason', 'y'])).toMatchObject({
      code: 3,
      aside: expect.stringContaining('in use by'),
    });
    expect(await twelvemonth(['show', ready.patient, '--data', held])).toMatchObject({ code: 0 });
    expect(await twelvemonth(['backup', '--to', join(folder, 'backups', 'while-held'), '--data', held])).toMatchObject({
      code: 0,
    });
    expect(existsSync(join(folder, 'backups', 'while-held'))).toBe(true);
  });
});

describe('as a process of its own', () => {
  it('prints the same and ends with the same code', async () => {
    for (const args of [
      ['readiness', '--all', '--today', '2026-11-25', '--data', data],
      ['show', '999', '--data', data],
      ['verify', '--data', join(folder, 'empty')],
      ['fly'],
    ])
      expect(await asProcess(args)).toEqual(await twelvemonth(args));
  });
  it('starts the server and ends as it ends', async () => {
    expect(await asProcess(['serve', '--help'])).toMatchObject({ code: 0, out: expect.stringContaining('--port') });
    expect((await asProcess(['serve', '--port', 'none'])).code).toBe(1);
  });
  it('means paths from the folder npm was called in', async () => {
    const called = { npm_lifecycle_event: 'twelvemonth', INIT_CWD: folder };
    expect(await asProcess(['verify', '--data', 'data'], called)).toMatchObject({ code: 0 });
  });
});

describe('the command line itself', () => {
  it.each([
    [[], 2],
    [['--help'], 0],
    [['fly'], 2],
    [['constructor'], 2],
    [['show', '--frob'], 2],
    [['verify', 'something'], 2],
    [['backup'], 2],
    [['restore'], 2],
    [['restore', '--from', 'a', '--accept'], 2],
    ...['import', 'readiness', 'show', 'verify', 'replay', 'what-if', 'backup', 'restore'].map(
      (name) => [[name, '--help'], 0] as const,
    ),
  ] as const)('%j ends with %i', async (args, code) => {
    expect((await twelvemonth(args)).code).toBe(code);
  });

  it('every command is in the list, every option in its help', async () => {
    const { out } = await twelvemonth(['--help']);
    for (const name of ['import', 'readiness', 'show', 'verify', 'replay', 'what-if', 'backup', 'restore', 'serve'])
      expect(out).toContain(`  ${name} `);
  });
});
