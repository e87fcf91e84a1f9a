import { type PlainDate, type ProtocolSheet, RULE_SET, starterUk } from '@twelvemonth/clinical';
import type { FlipsAnswer, ProtocolView, ReplayAnswer, WhatIfAnswer } from '@twelvemonth/exchange';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type OwnServer, ownServer, problemOf, referralOf, setUp, workUp } from './support/own-server.ts';

let server: OwnServer;
beforeAll(async () => {
  server = await ownServer();
  await setUp(server);
  await server.done('clerk', referralOf('p1'));
  await workUp(server, 'p1');
});
afterAll(async () => server.close());

const protocols = async (): Promise<ProtocolView> => server.read<ProtocolView>('/api/protocols?unit=thornbeck');
const named = { title: 'Thornbeck 2', reviewBy: '2027-11-30' as PlainDate };
const draft = async (from: string, sheet: object) =>
  server.ask('/api/protocols/draft?unit=thornbeck', { method: 'POST', as: 'pharmacist', body: { from, sheet } });
const inForce = async (): Promise<ProtocolSheet> => {
  const found = (await protocols()).versions.find(({ version }) => version === 'thornbeck-1');
  if (found === undefined) throw new Error('nothing in force');
  return found.sheet;
};
/** The sheet in force with one number decided otherwise. */
const withNumber = async (version: string, value: string, source?: string): Promise<ProtocolSheet> => {
  const sheet = await inForce();
  const clearanceFloor = { ...sheet.numbers.clearanceFloor, value, ...(source === undefined ? {} : { source }) };
  return { ...sheet, ...named, version, numbers: { ...sheet.numbers, clearanceFloor } };
};
const flipsOf = async (body: object): Promise<FlipsAnswer> => {
  const answer = await server.ask('/api/protocols/flips?unit=thornbeck', { method: 'POST', as: 'nurse', body });
  expect(answer.statusCode).toBe(200);
  return answer.json<FlipsAnswer>();
};

describe('a version of the protocol', () => {
  test('may begin from any starter; the one chosen when the service was set up is offered first', async () => {
    await server.atHand.store.setSetting('starter', 'starter-us');
    const { starters } = await protocols();
    expect(starters.map(({ version, chosen }) => [version, chosen])).toEqual([
      ['starter-us', true],
      ['starter-uk', false],
      ['starter-label-eu', false],
    ]);
  });

  test('begun from the starter keeps the starter’s empty numbers, and cannot be signed with them', async () => {
    const sheet = { ...starterUk, ...named, version: 'from-starter' };
    expect((await draft('starter-uk', sheet)).statusCode).toBe(200);
    const written = (await protocols()).versions.find(({ version }) => version === 'from-starter');
    expect(written).toMatchObject({ state: 'written', signatures: [] });
    expect(written?.empty.length).toBeGreaterThan(0);
    const signed = await server.act('prescriber', {
      name: 'sign protocol',
      unit: 'thornbeck',
      version: 'from-starter',
      contentHash: written?.contentHash,
      as: 'clinician',
      inForceFrom: '2026-11-26',
    });
    expect(problemOf(signed).refusals?.[0]?.name).toBe('empty-numbers');
  });

  test('begun from another with a number changed needs its source and names who decided it', async () => {
    const silent = await draft('thornbeck-1', await withNumber('thornbeck-2', '70'));
    expect(silent.statusCode).toBe(422);
    expect(problemOf(silent).refusals?.map(({ field }) => field)).toEqual(['numbers.clearanceFloor.source']);
    expect((await draft('thornbeck-1', await withNumber('thornbeck-2', '70', 'our nephrologists'))).statusCode).toBe(
      200,
    );
    const written = (await protocols()).versions.find(({ version }) => version === 'thornbeck-2');
    expect(written?.numbers.find(({ key }) => key === 'clearanceFloor')).toMatchObject({
      value: '70',
      source: 'decided by Phil Farm: our nephrologists',
      status: 'local decision',
    });
  });

  test('shows who would flip, before it is written and after, and changes nothing by asking', async () => {
    const before = (await protocols()).versions.length;
    const unsaid = await flipsOf({ sheet: await withNumber('not-written', '70') });
    expect(unsaid).toMatchObject({
      compared: 1,
      of: 1,
      flips: [
        {
          patient: 'p1',
          from: expect.stringContaining('ready'),
          to: expect.stringContaining('not ready'),
          verdictChanges: true,
          windowTo: 'no date',
        },
      ],
    });
    expect(unsaid.next).toBeUndefined();
    expect(await flipsOf({ version: 'thornbeck-2' })).toEqual(unsaid);
    expect((await flipsOf({ version: 'thornbeck-1' })).flips).toEqual([]);
    expect((await protocols()).versions).toHaveLength(before);
  });

  test('with a number that is empty nobody can be compared, and the number is named', async () => {
    const answer = await server.ask('/api/protocols/flips?unit=thornbeck', {
      method: 'POST',
      as: 'nurse',
      body: { version: 'starter-uk' },
    });
    expect([answer.statusCode, problemOf(answer).refusals?.[0]?.name]).toEqual([422, 'empty-numbers']);
  });

  test('names every field that cannot be read, and is then not written', async () => {
    const sheet = await withNumber('thornbeck-3', 'about 35');
    const answer = await draft('thornbeck-1', { ...sheet, numbers: { ...sheet.numbers, courage: {} } });
    expect(answer.statusCode).toBe(422);
    expect(
      problemOf(answer)
        .refusals?.map(({ field }) => field)
        .toSorted(),
    ).toEqual(['numbers.clearanceFloor', 'numbers.courage']);
    expect((await protocols()).versions.map(({ version }) => version)).not.toContain('thornbeck-3');
  });

  test('is never changed once written: the same name again is refused', async () => {
    const again = await draft('thornbeck-1', await withNumber('thornbeck-2', '60', 'second thoughts'));
    expect(problemOf(again).refusals?.[0]).toMatchObject({ name: 'field-wrong', field: 'sheet.version' });
  });

  test('is hashed by the server over its text, whatever the sender says', async () => {
    for (const { contentHash } of (await protocols()).versions) expect(contentHash).toMatch(/^sha256:[0-9a-f]{64}$/);
  });
});

describe('the past, decided again', () => {
  test('what if is counted for the months asked, in parts, and needs a whole sheet', async () => {
    const ask = async (body: object) =>
      server.ask('/api/protocols/what-if?unit=thornbeck', { method: 'POST', as: 'nurse', body });
    const answer = await ask({ version: 'thornbeck-2', months: 6 });
    expect(answer.statusCode).toBe(200);
    expect(answer.json<WhatIfAnswer>()).toEqual({
      looked: 1,
      of: 1,
      decisions: 0,
      putOff: 0,
      ready: 0,
      bloodsAgain: 0,
      withoutDate: 0,
      delayDays: 0,
      longestDelayDays: 0,
    });
    expect((await ask({ version: 'starter-us', months: 6 })).statusCode).toBe(422);
    expect((await ask({ version: 'nowhere', months: 6 })).statusCode).toBe(404);
    expect((await ask({ version: 'thornbeck-2', months: 0 })).statusCode).toBe(422);
  });

  test('signed decisions come out as they were signed, under the rules named', async () => {
    const answer = await server.ask('/api/protocols/replay', { method: 'POST', as: 'auditor', body: {} });
    expect(answer.json<ReplayAnswer>()).toEqual({ looked: 1, of: 1, ruleSet: RULE_SET, decisions: 0, differences: [] });
  });
});

test('exceptions are counted by rule for who reads about people, and told to nobody else', async () => {
  const body = { requirement: 'teeth and jaw', reason: 'seen by her dentist', expiresOn: '2026-12-20' };
  await server.done('prescriber', {
    name: 'record',
    patient: 'p1',
    line: { kind: 'prescriber-exception', body, effectiveAt: '2026-11-25' },
  });
  const { exceptions } = await protocols();
  expect(exceptions).toEqual({
    from: '2025-11-26',
    until: '2026-11-25',
    doses: 0,
    rules: [{ requirement: 'teeth and jaw', written: 1, people: 1, doses: 0 }],
  });
  const asked = await server.read<ProtocolView>('/api/protocols?unit=thornbeck', 'administrator');
  expect(asked.exceptions).toBeUndefined();
});
