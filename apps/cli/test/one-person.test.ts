// Notes of one person in two records, at the command line: compared, read as one everywhere, found by the old number.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Service, ready, waiting } from './a-service.ts';
import { ownFolder, twelvemonth } from './run-command.ts';

const data = ownFolder();
const at = ['--data', data] as const;
let service: Service;
const about = { patient: ready.patient, other: waiting.patient, reason: 'asked her' } as const;

beforeAll(async () => {
  service = await Service.begin(data);
  await (await service.unit()).protocol();
  await service.person(ready, true);
  await service.person(waiting, false);
  await service.write(
    'nurse',
    waiting.patient,
    'dose',
    { medicine: 'zoledronic acid 5 mg', setting: 'ward' },
    '2026-06-01',
  );
});
afterAll(() => service.store.close());

describe('one person in two records', () => {
  it('stands side by side: what agrees and what differs', async () => {
    const { code, out } = await twelvemonth(['one-person', ready.number, waiting.number, ...at]);
    expect(code).toBe(0);
    expect(out).toMatch(/birth date +2 Jun 1941 +2 Jun 1941 +the same/);
    expect(out).toMatch(/number +999 204 7701 +999 204 7702 +differs/);
    expect(out).toContain('Nobody has said whether they are one person or two.');
  });
  it('holds the verdict while nobody has said', async () => {
    await service.do('clerk', { name: 'may be one', ...about });
    const { code, out } = await twelvemonth(['readiness', ready.number, '--today', '2026-11-24', ...at]);
    expect(code).toBe(1);
    expect(out).toContain('possible duplicate');
  });
  it('is read as one: the dose of the other notes counts, everyone is counted once, the old number leads there', async () => {
    await service.do('clerk', { name: 'say one person', ...about, agree: ['birth date', 'name'] });
    await service.do('nurse', { name: 'confirm one person', ...about, agree: ['birth date', 'name'] });
    const dates = ['--today', '2026-11-24', ...at];
    const one = await twelvemonth(['readiness', waiting.number, ...dates]);
    expect(one.out).toContain('next due 1 Jun 2027');
    expect(one.out).toContain(ready.number);
    const everyone = await twelvemonth(['readiness', '--all', ...dates]);
    expect(everyone.aside).toContain('1 under care');
    const shown = await twelvemonth(['show', waiting.number, ...at]);
    expect(shown.out).toContain('dose zoledronic acid 5 mg');
    expect(shown.aside).toContain(`read together with the notes of number ${waiting.number}`);
    expect((await twelvemonth(['verify', ...at])).code).toBe(0);
  });
  it('what was known before is shown as it was then, and a saying needs to be whole', async () => {
    const before = await twelvemonth(['show', ready.number, '--known-at', '2026-11-24T09:00:20Z', ...at]);
    expect(before.aside).not.toContain('read together');
    const say = ['one-person', ready.number, waiting.patient, '--say'];
    expect((await twelvemonth([...say, 'perhaps', '--reason', 'x', ...at])).aside).toContain('is none of may-be-one');
    expect((await twelvemonth([...say, 'two', '--reason', 'x', ...at])).aside).toContain('--identifiers');
    expect((await twelvemonth([...say, 'two', '--identifiers', 'shoe size', ...at])).aside).toContain(
      '"shoe size" is none',
    );
  });
});
