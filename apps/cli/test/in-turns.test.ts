// Longer work at a terminal: how far it is, and what Ctrl-C leaves behind.
import { describe, expect, it } from 'vitest';
import { run } from '../src/run.ts';
import { fileIn, ownFolder } from './run-command.ts';

const people = 40;
const request = {
  today: '2026-12-02',
  kinds: [{ name: 'later infusion', nurseMinutes: 35, chairMinutes: 60, isFirst: false }],
  sessions: ['2026-12-08', '2026-12-15', '2026-12-22'].map((date) => ({
    name: date,
    day: date,
    site: 'Thornbeck',
    nurseMinutes: 350,
    chairMinutes: 900,
    mostFirstVisits: 1,
    reservedPercent: 0,
  })),
  people: Array.from({ length: people }, (_, index) => ({
    name: `Person ${index + 1}`,
    kind: 'later infusion',
    tier: 'other',
    earliest: { day: '2026-12-03', because: 'a place needs a day of notice' },
    latest: { day: '2027-02-01', because: 'the prescription ends on 1 February 2027' },
    due: '2026-12-08',
    bloods: null,
    weekdays: [],
    travelMinutes: { Thornbeck: 20 },
    told: null,
    noticeDays: 1,
  })),
};
const path = fileIn(ownFolder(), 'request.json', JSON.stringify(request));

/** As at a terminal: `watch` hears each line that passes, and may press Ctrl-C. */
async function watched(watch: (text: string) => void) {
  const said = { out: '', aside: '', passing: [] as string[] };
  const code = await run(['fill', path], {
    out: (text) => void (said.out += text),
    aside: (text) => void (said.aside += text),
    passing(text) {
      said.passing.push(text);
      watch(text);
    },
  });
  return { ...said, code };
}

describe('filling at a terminal', () => {
  it('tells how far it is, in place of the line before, and leaves that line empty for the answer', async () => {
    const { code, out, passing } = await watched(() => undefined);
    expect(code).toBe(1);
    expect(out).toContain('30 have a place, 10 none');
    expect(passing.filter((text) => /^filling: \d+ %, Ctrl-C stops it$/.test(text)).length).toBeGreaterThan(0);
    expect(passing.filter((text) => text.startsWith('why not earlier: ')).length).toBeGreaterThan(1);
    expect(passing.at(-1)).toBe('');
  });

  it.each(['filling', 'why not earlier'])(
    'stopped with Ctrl-C while it is at "%s" proposes nothing and ends with 130, as a shell counts an interrupt',
    async (doing) => {
      const before = process.listenerCount('SIGINT');
      const { code, out, aside, passing } = await watched((text) => {
        if (text.startsWith(doing)) process.emit('SIGINT');
      });
      expect(code).toBe(130);
      expect(out).toBe('');
      expect(aside).toContain('Stopped: nothing is proposed, and nothing was written or changed.');
      expect(passing.at(-1)).toBe('');
      expect(process.listenerCount('SIGINT')).toBe(before);
    },
  );

  it('where nobody watches nothing passes by: a file takes only the answer', async () => {
    let aside = '';
    const code = await run(['fill', path], { out: () => undefined, aside: (text) => void (aside += text) });
    expect(code).toBe(1);
    expect(aside).not.toMatch(/%/);
  });
});
