import type { ProtocolView, flipsAnswer } from '@twelvemonth/exchange';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { z } from 'zod';
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
const draft = async (body: object) =>
  server.ask('/api/protocols/draft?unit=thornbeck', { method: 'POST', as: 'pharmacist', body });
const named = { version: 'thornbeck-2', title: 'Thornbeck 2', reviewBy: '2027-11-30' };

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
    const { starters } = await protocols();
    const from = starters[0]?.version ?? '';
    expect((await draft({ ...named, version: 'from-starter', from, numbers: {} })).statusCode).toBe(200);
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

  test('begun from another with a number changed names who decided it, and shows who would flip', async () => {
    expect((await draft({ ...named, from: 'thornbeck-1', numbers: { clearanceFloor: '70' } })).statusCode).toBe(200);
    const written = (await protocols()).versions.find(({ version }) => version === 'thornbeck-2');
    const number = written?.numbers.find(({ key }) => key === 'clearanceFloor');
    expect(number).toMatchObject({ value: '70', source: 'decided by Phil Farm', status: 'local decision' });
    const flips = await server.read<z.infer<typeof flipsAnswer>>(
      '/api/protocols/flips?unit=thornbeck&version=thornbeck-2',
    );
    expect(flips).toMatchObject({
      compared: 1,
      flips: [{ patient: 'p1', from: expect.stringContaining('ready'), to: expect.stringContaining('not ready') }],
    });
    const same = await server.read<z.infer<typeof flipsAnswer>>(
      '/api/protocols/flips?unit=thornbeck&version=thornbeck-1',
    );
    expect(same.flips).toEqual([]);
  });

  test('names every number that cannot be read, and is then not written', async () => {
    const answer = await draft({
      ...named,
      version: 'thornbeck-3',
      from: 'thornbeck-1',
      numbers: { clearanceFloor: 'about 35', courage: '1' },
    });
    expect(answer.statusCode).toBe(422);
    expect(
      problemOf(answer)
        .refusals?.map(({ field }) => field)
        .toSorted(),
    ).toEqual(['numbers.clearanceFloor', 'numbers.courage']);
    expect((await protocols()).versions.map(({ version }) => version)).not.toContain('thornbeck-3');
  });

  test('is hashed by the server over its text, whatever the sender says', async () => {
    for (const { contentHash } of (await protocols()).versions) expect(contentHash).toMatch(/^sha256:[0-9a-f]{64}$/);
  });
});
