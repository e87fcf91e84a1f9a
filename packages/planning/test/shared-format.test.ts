import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { infusionChain, injectionChain, readDay, usualStepTicks, writeDay } from '../src/index.ts';
import { sharedDay } from './oracle/days.ts';

const folder = new URL('../../../bench/days/', import.meta.url);
const textOf = (id: string): string => readFileSync(new URL(`${id}.json`, folder), 'utf8');
const changed = (change: (day: Record<string, unknown>) => void): string => {
  const day = JSON.parse(textOf('A08-1')) as Record<string, unknown>;
  change(day);
  return JSON.stringify(day);
};

describe('the format of the shared days', () => {
  it('writes every shared day as it was read', () => {
    for (const file of readdirSync(folder)) {
      const { day, raw } = sharedDay(file.replace('.json', ''));
      const written = writeDay(day);
      const { seed: _, best: __, ...rest } = raw as typeof raw & { seed: number; best: unknown };
      expect(written.ok && JSON.parse(written.text)).toEqual(rest);
    }
  });

  it('tells everything that is wrong, each with its place', () => {
    const text = changed((day) => {
      day['chairs'] = -1;
      day['nurse'] = [1, 2];
      day['dayStart'] = 'half past eight';
    });
    const read = readDay(text);
    expect(!read.ok && read.problems.map(({ at }) => at)).toEqual(['dayStart', 'chairs', 'nurse']);
    const short = readDay(changed((day) => (day['nurse'] = [1, 2])));
    expect(!short.ok && short.problems).toEqual([{ at: 'nurse', says: 'has 2 numbers, not 102' }]);
    expect(readDay('{').ok).toBe(false);
  });

  it('refuses to write what the format has no words for', () => {
    const { day } = sharedDay('A08-1');
    const [visit] = day.visits;
    if (visit === undefined) throw new Error('no visit');
    const other = { ...visit, ...injectionChain(usualStepTicks), mayWait: false };
    const longer = { ...visit, ...infusionChain({ ...usualStepTicks, cannula: 3 }, 4, 0) };
    const closed = day.chairs.map((chairs, tick) => (tick < 6 ? 0 : chairs));
    const written = writeDay({ ...day, chairs: closed, visits: [other, longer] });
    expect(!written.ok && written.problems.map(({ at }) => at)).toEqual([
      'chairs',
      'patients.0',
      'patients.0',
      'patients.1',
    ]);
  });
});
