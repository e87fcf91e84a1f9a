// Batch trace from the notes on disk, both ways. Hazard 38.
import { join } from 'node:path';
import { beforeAll, expect, it } from 'vitest';
import { Service, ready, waiting } from './a-service.ts';
import { jsonOf, ownFolder, twelvemonth } from './run-command.ts';

const data = join(ownFolder(), 'data');
const at = ['--data', data];

beforeAll(async () => {
  const service = await (await (await Service.begin(data)).unit()).protocol();
  await service.person(ready, false);
  await service.person(waiting, false);
  const dose = { medicine: 'zoledronic acid 5 mg', setting: 'ward', batch: 'PA-0001' };
  await service.write('nurse', ready.patient, 'dose', dose, '2025-11-20');
  await service.write('clerk', ready.patient, 'told-of-batch', { batch: 'PA-0001', how: 'letter' });
  await service.do('pharmacist', {
    name: 'stop batch',
    body: { batch: 'PA-0001', why: 'batch recall', reason: 'particles' },
  });
  await service.store.close();
});

it('who had a batch, whatever way it is typed, and whether they were told', async () => {
  const found = await jsonOf<Record<number, unknown>>(['trace', '--batch', 'pa-0001', ...at]);
  expect(found).toMatchObject({ code: 0, 0: { number: ready.number, on: '2025-11-20' } });
  const ran = await twelvemonth(['trace', '--batch', 'PA-0001', ...at]);
  expect(ran.out).toMatch(/told \d+ \w+ 2026, letter/);
  expect(ran.out).not.toContain(waiting.number);
  expect(ran.aside).toContain('batch PA-0001 stopped, batch recall: particles');
});

it('nobody had it: the answer is no', async () =>
  expect((await twelvemonth(['trace', '--batch', 'PA-9999', ...at])).code).toBe(1));

it('which batches a person had, and what is said about them', async () => {
  const ran = await twelvemonth(['trace', '--person', ready.number, ...at]);
  expect(ran.code).toBe(0);
  expect(ran.out).toContain('PA-0001');
  expect(ran.out).toContain('batch recall: particles');
  expect((await twelvemonth(['trace', '--person', waiting.number, ...at])).code).toBe(1);
});

it('one way or the other, not both and not neither', async () => {
  expect((await twelvemonth(['trace', ...at])).code).toBe(2);
  expect((await twelvemonth(['trace', '--batch', 'a', '--person', 'b', ...at])).code).toBe(2);
});
