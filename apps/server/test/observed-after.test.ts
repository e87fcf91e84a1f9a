/**
 * Observations after the dose at the chair: beside those before it, with the score of each; what decided stays as it was. The score by
 * the published chart of NEWS2 (Royal College of Physicians 2017).
 */
import type { VisitView } from '@twelvemonth/exchange';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { stepGroupOf } from '../src/acts/step-group.ts';
import { infusionRuns, lineNow, listToday, planToday, wilhelmina } from './support/at-the-chair.ts';
import { type OwnServer, ownServer, problemOf, setUp } from './support/own-server.ts';

const patient = 'wilhelmina';
let server: OwnServer;
beforeAll(async () => {
  server = await ownServer();
  await setUp(server);
  await planToday(server);
  await listToday(server, patient, 1, wilhelmina);
  await infusionRuns(server, patient);
});
afterAll(() => server.close());

const visit = (): Promise<VisitView> => server.read<VisitView>(`/api/people/${patient}/visit`);
const after = {
  pulsePerMinute: 118,
  systolicMmHg: 92,
  temperatureCelsius: 38.6,
  saturationPercent: 94,
  breathsPerMinute: 22,
  onOxygen: false,
  consciousness: 'alert',
  when: 'after',
};

test('while it runs there are none after it', async () => {
  const refused = await server.act('nurse', lineNow(server, patient, 'observations', after));
  expect(problemOf(refused).refusals?.[0]?.says).toBe('The infusion has not finished.');
  expect((await visit()).observations.map(({ when }) => when)).toEqual(['before']);
});

test('written together with the watch they stand beside those before, and nothing that decided has changed', async () => {
  const stopped = { name: 'finish infusion', patient, milliliters: 1, stoppedBecause: 'pain', incident: 'told Imre' };
  await server.done('nurse', stopped);
  await server.done('nurse', lineNow(server, patient, 'cannula-removed', { site: 'looks well' }));
  const { go, decision } = await visit();
  const { moment: effectiveAt } = server.atHand.clock.local('Europe/London');
  await server.done('nurse', {
    name: 'record together',
    patient,
    lines: [
      { kind: 'observed', body: { minutes: 30, well: true }, effectiveAt },
      { kind: 'observations', body: after, effectiveAt },
    ],
  });
  const now = await visit();
  expect(now.observations).toMatchObject([
    { when: 'before', says: expect.stringContaining('pulse 72/min, pressure 130/76 mmHg') as string },
    { when: 'after', by: 'Nora Nurse', says: expect.stringContaining('pulse 118/min') as string },
  ]);
  expect(now.observations[0]?.earlyWarning).toMatch(/^no total/);
  // Breaths 2, saturation 1, systolic 2, pulse 2, temperature 1.
  expect(now.observations[1]?.earlyWarning).toMatch(/^8, high risk/);
  expect(now.go?.items).toEqual(go?.items);
  expect(now.decision).toEqual(decision);
  expect(now.steps.find(({ step }) => step === 'observations')?.by).toBe('Nora Nurse');
});

test.each([
  ['before', 'arrive to go'],
  ['during', 'start'],
  ['after', 'finish to leave'],
] as const)('those %s the dose are signed with the steps of “%s”', (when, group) => {
  const line = { kind: 'observations' as const, body: { ...after, when }, effectiveAt: '2026-11-25' };
  expect(stepGroupOf({ name: 'record', patient, line })).toBe(group);
});

test('written together with the watch they are of one signature', () => {
  const effectiveAt = '2026-11-25';
  const lines = [
    { kind: 'observed' as const, body: { minutes: 30, well: true }, effectiveAt },
    { kind: 'observations' as const, body: after, effectiveAt },
  ];
  expect(stepGroupOf({ name: 'record together', patient, lines })).toBe('finish to leave');
});
