// A register brought in by the command line: suggested, tried out, and written through a running server.
import { type ChildProcess, spawn } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { RegisterMapping } from '@twelvemonth/exchange';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Service } from './a-service.ts';
import { asProcess, fileIn, ownFolder, twelvemonth } from './run-command.ts';

const folder = ownFolder();
const data = join(folder, 'data');
const register = (name: string): string =>
  fileURLToPath(new URL(`../../../packages/exchange/test/registers/${name}`, import.meta.url));
const clinic = register('two-rows-a-patient.csv');

beforeAll(async () => {
  const service = await (await (await Service.begin(data)).unit()).protocol();
  await service.store.close();
});

/** The suggested mapping, as a file. */
async function mappingOf(
  path: string,
  name: string,
  change: (mapping: RegisterMapping) => void = () => undefined,
): Promise<string> {
  const mapping = JSON.parse((await twelvemonth(['import', path, '--suggest-mapping'])).out) as RegisterMapping;
  change(mapping);
  return fileIn(folder, name, JSON.stringify(mapping));
}

describe('a suggested mapping', () => {
  it('is printed, and what it only supposed stands beside it', async () => {
    const ran = await twelvemonth(['import', clinic, '--suggest-mapping']);
    expect(ran.code).toBe(0);
    expect(JSON.parse(ran.out)).toMatchObject({
      version: 1,
      separator: ',',
      dateOrder: 'day month year',
      rowsPerPerson: 'several',
    });
    expect(ran.aside).toContain('Adj Ca: no unit is written; from the values mmol/L is supposed');
  });
});

describe('trying out', () => {
  const tryOut = async (mapping: string, more: readonly string[] = []) =>
    twelvemonth([
      'import',
      clinic,
      '--mapping',
      mapping,
      '--dry-run',
      '--today',
      '2026-11-25',
      '--data',
      data,
      ...more,
    ]);

  it('says what would be written and what would wait, and ends with 1 while a row waits', async () => {
    const ran = await tryOut(await mappingOf(clinic, 'm1.json'));
    expect(ran.code).toBe(1);
    expect(ran.out).toContain('9 rows: 3 new people, 0 known');
    expect(ran.out).toMatch(/^8 +Creatinine \(umol\/L\) +1O2 +waits +"1O2" holds a letter/m);
    expect(ran.out).toContain('PELLING, Rosamund (999 630 2001), new\n');
  });

  it('writes nothing', async () => {
    const before = (await twelvemonth(['verify', '--data', data])).out;
    await tryOut(await mappingOf(clinic, 'm2.json'));
    expect((await twelvemonth(['verify', '--data', data])).out).toBe(before);
  });

  it('ends with 1 where the mapping lacks a unit, and names the column', async () => {
    const mapping = await mappingOf(clinic, 'm3.json', ({ columns }) => {
      for (const column of columns) if (column.meaning === 'vitamin D') delete column.unit;
    });
    const ran = await tryOut(mapping, ['--json']);
    expect(ran.code).toBe(1);
    expect(JSON.parse(ran.out)).toMatchObject({
      mappingProblems: [{ column: 'Vitamin D (nmol/L)' }],
      counts: { newPeople: 0 },
    });
  });

  it('reads letters of an older office program, and says so', async () => {
    const path = join(folder, 'latin.csv');
    writeFileSync(path, Buffer.from('MRN;Surname;Forename;DOB\n999 1;Lind\xf6;Sol\xe8ne;13.06.1941\n', 'latin1'));
    const ran = await twelvemonth([
      'import',
      path,
      '--mapping',
      await mappingOf(path, 'latin.json'),
      '--dry-run',
      '--data',
      data,
    ]);
    expect(ran).toMatchObject({
      code: 0,
      out: expect.stringContaining('Lindö, Solène'),
      aside: expect.stringContaining('Windows-1252'),
    });
  });

  it.each([
    [['--mapping', 'nowhere.json', '--dry-run'], 3],
    [['--dry-run'], 2],
    [['--mapping', clinic, '--dry-run'], 2],
  ])('%j ends with %i', async (args, code) => {
    expect(await twelvemonth(['import', clinic, '--data', data, ...args])).toMatchObject({ code, out: '' });
  });

  it('a file that is no register ends with 1 and the remedy', async () => {
    const path = fileIn(folder, 'letter.csv', 'Dear Sir\n\nthank you\n');
    expect(await twelvemonth(['import', path, '--suggest-mapping'])).toMatchObject({
      code: 1,
      aside: expect.stringContaining('name its columns'),
    });
  });
});

describe('bringing in through a server', () => {
  let server: ChildProcess;
  let url = '';
  const password = 'quite a long password';

  beforeAll(async () => {
    server = spawn(
      process.execPath,
      [fileURLToPath(new URL('../../server/src/main.ts', import.meta.url)), '--empty', '--data', data, '--port', '0'],
      { stdio: ['ignore', 'pipe', 'pipe'], env: { ...process.env, NODE_NO_WARNINGS: '1' } },
    );
    let said = '';
    url = await new Promise<string>((resolve, reject) => {
      const listen = (text: string): void => {
        said += text;
        const found = /answers at (http:\S+)/.exec(said)?.[1];
        if (found !== undefined) resolve(found);
      };
      server.stdout?.setEncoding('utf8').on('data', listen);
      server.stderr?.setEncoding('utf8').on('data', listen);
      server.on('exit', () => reject(new Error(said)));
    });
    const post = async (path: string, body: unknown, cookie = ''): Promise<Response> => {
      const answered = await fetch(`${url}/api/${path}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json', cookie },
        body: JSON.stringify(body),
      });
      if (!answered.ok) throw new Error(`${path}: ${await answered.text()}`);
      return answered;
    };
    const administrator = { name: 'Margit Hale', username: 'margit', password };
    await post('first-administrator', { ...administrator, service: 'Thornbeck' });
    const cookie = (await post('sign-in', { username: 'margit', password })).headers
      .getSetCookie()
      .map((one) => one.split(';')[0])
      .join('; ');
    await post('staff', { name: 'Imre Vance', username: 'imre', password, roles: ['nurse in charge'] }, cookie);
  });
  afterAll(() => server.kill());

  const bringIn = async (mapping: string, more: readonly string[] = [], secret = password) =>
    asProcess(['import', clinic, '--mapping', mapping, '--server', url, '--username', 'imre', ...more], {
      TWELVEMONTH_PASSWORD: secret,
    });

  it('is refused to someone with the wrong password', async () => {
    expect(await bringIn(await mappingOf(clinic, 's1.json'), [], 'not the password')).toMatchObject({
      code: 1,
      out: '',
    });
  });

  it('writes the people, keeps the rows that wait, and adds nothing the second time', async () => {
    const mapping = await mappingOf(clinic, 's2.json');
    expect(await bringIn(mapping)).toMatchObject({
      code: 1,
      out: expect.stringMatching(/^taken in: 6 rows, 3 people, \d+ facts; already here: 0; waiting: 3 rows\n$/),
    });
    expect(await bringIn(mapping)).toMatchObject({
      code: 1,
      out: expect.stringMatching(/^taken in: 0 rows, 0 people, 0 facts; already here: \d+; waiting: 3 rows\n$/),
    });
    const shown = await twelvemonth(['show', '999 630 2001', '--data', data]);
    expect(shown.out).toMatch(/21 Mar 2024 +dose zoledronic acid 5 mg, this service, batch PA-1180/);
    expect(shown.out).toContain('by nurse in charge');
    expect(await twelvemonth(['verify', '--data', data])).toMatchObject({ code: 0 });
  });

  it('shows results that count for nothing until somebody has signed them', async () => {
    const ran = await twelvemonth(['readiness', '999 630 2003', '--today', '2026-11-25', '--data', data]);
    expect(ran.code).toBe(1);
    expect(ran.out).toMatch(/cannot say +Kidney function/);
  });

  it('writes what was tried out and nothing else', async () => {
    const tried = JSON.parse(
      (
        await twelvemonth([
          'import',
          clinic,
          '--mapping',
          await mappingOf(clinic, 's3.json'),
          '--dry-run',
          '--today',
          '2026-11-25',
          '--json',
          '--data',
          data,
        ])
      ).out,
    ) as { counts: { newPeople: number; newFacts: number; knownPeople: number } };
    expect(tried.counts).toMatchObject({ newPeople: 0, newFacts: 0, knownPeople: 3 });
  });

  it('ends with 3 where no server answers', async () => {
    const mapping = await mappingOf(clinic, 's4.json');
    expect(
      await asProcess(
        ['import', clinic, '--mapping', mapping, '--server', 'http://127.0.0.1:9', '--username', 'imre'],
        { TWELVEMONTH_PASSWORD: password },
      ),
    ).toMatchObject({ code: 3 });
  });
});
