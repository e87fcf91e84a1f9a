// Fill sessions: against trying every filling, places worked out by hand, refusals with field and remedy.
import { readFileSync } from 'node:fs';
import { problemFor, readFillRequest } from '@twelvemonth/planning';
import { describe, expect, it } from 'vitest';
import { leastCost } from '../../../packages/planning/test/oracle/all-fillings.ts';
import { fileIn, jsonOf, ownFolder, twelvemonth } from './run-command.ts';

type Proposed = {
  readonly places: readonly { readonly name: string; readonly session: string | null }[];
  readonly changes: readonly {
    readonly name: string;
    readonly from: string | null;
    readonly to: string | null;
    readonly gain: unknown;
  }[];
  readonly tiers: readonly {
    readonly tier: string;
    readonly withoutPlace: number;
    readonly days: number;
    readonly atLeast: number;
  }[];
  readonly why: readonly { readonly name: string; readonly sessions: readonly { readonly says: string }[] }[];
  readonly oneMore: readonly { readonly session: string; readonly days: number }[];
  readonly standby: readonly { readonly name: string; readonly from: string | null }[];
};

const folder = ownFolder();
let files = 0;
const file = (content: unknown): string => fileIn(folder, `request-${(files += 1)}.json`, JSON.stringify(content));
const fill = (content: unknown, ...options: string[]) => jsonOf<Proposed>(['fill', file(content), ...options]);

const kinds = [
  { name: 'first infusion', nurseMinutes: 55, chairMinutes: 90, isFirst: true },
  { name: 'later infusion', nurseMinutes: 35, chairMinutes: 60, isFirst: false },
];
const session = (date: string, more: object = {}) => ({
  name: date,
  day: date,
  site: 'Thornbeck',
  nurseMinutes: 35,
  chairMinutes: 240,
  mostFirstVisits: 1,
  reservedPercent: 0,
  ...more,
});
const person = (name: string, due: string, more: object = {}) => ({
  name,
  kind: 'later infusion',
  tier: 'other',
  earliest: { day: '2026-12-03', because: 'a place needs a day of notice' },
  latest: { day: '2027-02-01', because: 'the prescription ends on 1 February 2027' },
  due,
  bloods: null,
  weekdays: [],
  travelMinutes: { Thornbeck: 20 },
  told: null,
  noticeDays: 1,
  ...more,
});
const request = (people: readonly object[], sessions: readonly object[], more: object = {}) => ({
  today: '2026-12-02',
  kinds,
  sessions,
  people,
  ...more,
});

const names = (found: Proposed): (string | null)[] => found.places.map((place) => place.session);

describe('filling by command', () => {
  it('gives the one place to who is first in line, and says why the other has none', async () => {
    const people = [person('Late', '2026-03-01'), person('First', '2026-12-03', { tier: 'first in line' })];
    const found = await fill(request(people, [session('2026-12-08')]));
    expect(found.code).toBe(1);
    expect(names(found)).toEqual([null, '2026-12-08']);
    expect(found.tiers.map((tier) => tier.withoutPlace)).toEqual([0, 0, 1]);
    expect(found.why).toHaveLength(1);
    expect(found.why[0]?.name).toBe('Late');
    expect(found.why[0]?.sessions[0]?.says).toMatch(
      /^8 Dec 2026 would cost \d+ days more in all, counted for those first in line$/,
    );
  });

  it.each([1, 2, 3])('counts no more days than the best of all fillings, tried one by one (%i)', async (shift) => {
    const people = Array.from({ length: 7 }, (_, index) =>
      person(`Person ${index + 1}`, `2026-12-${String(4 + ((index * 5 * shift) % 23)).padStart(2, '0')}`, {
        kind: index % 3 === 0 ? 'first infusion' : 'later infusion',
        tier: ['first in line', 'urgent', 'other'][(index * shift) % 3],
        told: index === 4 ? '2026-12-15' : null,
      }),
    );
    const sessions = [
      session('2026-12-08', { nurseMinutes: 110 }),
      session('2026-12-15', { nurseMinutes: 90 }),
      session('2026-12-22', { nurseMinutes: 70 }),
    ];
    const written = request(people, sessions);
    const read = readFillRequest(written);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const found = await fill(written);
    // A day of one tier is more than all days of the next: the tiers as digits of one number.
    const digits = found.tiers.reduce((sum, { days }) => sum * 2 ** 17 + days, 0);
    expect(digits).toBe(leastCost(problemFor(read.request)));
  });

  it('a session has no more visits than places, whatever its minutes would hold', async () => {
    const people = [person('One', '2026-12-08'), person('Two', '2026-12-08')];
    const wide = { nurseMinutes: 400 };
    const sessions = [session('2026-12-08', { ...wide, mostVisits: 1 }), session('2026-12-15', wide)];
    expect(new Set(names(await fill(request(people, sessions))))).toEqual(new Set(['2026-12-08', '2026-12-15']));
  });

  it('moves a place already told only for more than the stated gain, as a change of its own', async () => {
    const sessions = [session('2026-12-08'), session('2026-12-15')];
    const people = [person('Told', '2026-12-15', { told: '2026-12-08' }), person('Soon', '2026-12-08')];
    const weights = {
      perDayLate: 1,
      perDayEarly: 1,
      otherWeekday: 3,
      perHourOfTravel: 5,
      anotherDraw: 14,
      noPlace: 1_000,
    };
    const moved = await fill(request(people, sessions, { weights: { ...weights, moveTold: 13 } }));
    expect(moved.changes).toContainEqual({
      name: 'Told',
      from: '2026-12-08',
      to: '2026-12-15',
      gain: { tier: 'other', days: 1 },
    });
    const kept = await fill(request(people, sessions, { weights: { ...weights, moveTold: 15 } }));
    expect(kept.changes.map((change) => change.name)).toEqual(['Soon']);
  });

  it('says what one more visit would save, and where', async () => {
    const sessions = [session('2026-12-08'), session('2026-12-15'), session('2026-12-22')];
    const people = ['A', 'B', 'C'].map((name) => person(name, '2026-12-08'));
    const found = await fill(request(people, sessions), '--one-more', 'later infusion');
    // With a second place on the 8th the last of the three comes on the 15th instead of the 22nd, and one on the 8th instead of the 15th.
    expect(found.oneMore[0]).toMatchObject({ session: '2026-12-08', days: 14 });
  });

  it('lists who could have a place lost tomorrow: bloods that hold, notice enough, no earlier place', async () => {
    const bloods = { usableUntil: '2026-12-08', drawFrom: '2026-12-02', daysToResult: 7 };
    const people = [
      person('Needs notice', '2026-12-01', { noticeDays: 9 }),
      person('Old bloods', '2026-12-01', { bloods: { ...bloods, usableUntil: '2026-12-07' } }),
      person('Due', '2026-12-01', { bloods, told: '2026-12-15' }),
      person('First', '2026-12-08', { tier: 'first in line' }),
    ];
    const found = await fill(
      request(people, [session('2026-12-08'), session('2026-12-15')]),
      '--standby',
      '2026-12-08',
    );
    expect(found.standby.map(({ name, from }) => [name, from])).toEqual([
      ['First', null],
      ['Due', '2026-12-15'],
    ]);
  });

  it('reads as a list of changes, the same each time, as the guide shows it', async () => {
    const guide = readFileSync(new URL('../../../docs/guide/planning.md', import.meta.url), 'utf8');
    const [, example = ''] = /```json\n(\{\s*"today"[^]*?)```/.exec(guide) ?? [];
    const path = file(JSON.parse(example));
    const one = await twelvemonth(['fill', path, '--why', 'Mrs Ito']);
    expect(one.code).toBe(0);
    expect(one.out).toContain('Nothing is booked: each change waits until somebody accepts it.');
    expect(one.out).toContain('proven best');
    expect(one.out).toMatch(/^Mrs Ito: /m);
    expect((await twelvemonth(['fill', path, '--why', 'Mrs Ito'])).out).toBe(one.out);
  });

  it.each([
    [
      'a kind that is not listed',
      request([person('A', '2026-12-08', { kind: 'drip' })], [session('2026-12-08')]),
      'people.0.kind: "drip" is not among the kinds: correct it, or add it there.',
    ],
    [
      'a session that was told and is not listed',
      request([person('A', '2026-12-08', { told: 'x' })], [session('2026-12-08')]),
      'people.0.told: "x" is not among the sessions',
    ],
    [
      'a date that is none',
      request([person('A', '2026-02-30')], [session('2026-12-08')]),
      'people.0.due: is not a date: write it as 2026-11-25.',
    ],
    [
      'bloods nobody said anything about',
      request([person('A', '2026-12-08', { bloods: undefined })], [session('2026-12-08')]),
      'people.0.bloods: is missing',
    ],
    [
      'a session that is past',
      request([person('A', '2026-12-08')], [session('2026-12-01')]),
      'sessions.0.day: is before today: leave the session out.',
    ],
    [
      'two people of one name',
      request([person('A', '2026-12-08'), person('A', '2026-12-08')], [session('2026-12-08')]),
      'people.1.name: there are two of "A": tell them apart.',
    ],
    [
      'a weight too heavy to be kept',
      request([person('A', '2026-12-08')], [session('2026-12-08')], {
        weights: {
          perDayLate: 1,
          perDayEarly: 1,
          otherWeekday: 3,
          perHourOfTravel: 5,
          anotherDraw: 14,
          moveTold: 1,
          noPlace: 5_000,
        },
      }),
      'weights: noPlace must be a whole number from 0 to 2000.',
    ],
  ])('%s is refused with its field and what to write', async (_, content, says) => {
    const ran = await twelvemonth(['fill', file(content)]);
    expect(ran).toMatchObject({ code: 2, out: '' });
    expect(ran.aside).toContain(says);
  });

  it('a name or a session that is not meant', async () => {
    const path = file(request([person('A', '2026-12-08')], [session('2026-12-08')]));
    for (const option of ['--why', '--standby', '--one-more'])
      expect((await twelvemonth(['fill', path, option, 'Nobody'])).aside).toContain('the file has nothing called that');
  });
});
