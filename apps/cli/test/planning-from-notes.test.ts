// Planning reads the notes: the list of a session, who waits in which clinical window, what the unit has set.
import { join } from 'node:path';
import type { PlainDate } from '@twelvemonth/clinical';
import { usualPlanning } from '@twelvemonth/planning';
import { beforeAll, describe, expect, it } from 'vitest';
import { Service, ready, waiting } from './a-service.ts';
import { fileIn, jsonOf, ownFolder, twelvemonth } from './run-command.ts';

const folder = ownFolder();
const data = join(folder, 'data');
const at = ['--data', data, '--today', '2026-11-24'];
const planning = {
  ...usualPlanning,
  nurses: 1,
  watchedPerNurse: 2,
  minutes: { ...usualPlanning.minutes, observations: 5 },
};
const third = { patient: 'p3', number: '999 204 7703' };

beforeAll(async () => {
  const service = await (await (await Service.begin(data)).unit()).protocol();
  await service.plan();
  for (const on of ['2026-12-01', '2027-02-18'])
    await service.do('nurse in charge', {
      name: 'plan session',
      session: `thornbeck-${on}`,
      body: {
        unit: 'thornbeck',
        on: on as PlainDate,
        zone: 'Europe/London',
        arriveAt: ['08:40'],
        opensAt: '08:30',
        closesAt: '17:00',
      },
    });
  await service.person(ready, true);
  await service.person(waiting, false);
  await service.person(third, true);
  await service.book(ready.patient, 1);
  await service.store.close();
});

type PlannedDay = {
  readonly day: {
    readonly nurses: number;
    readonly visits: readonly { readonly name: string; readonly kind: string; readonly infusionMinutes: number }[];
  };
  readonly plan: readonly { readonly name: string; readonly arrives: string; readonly leaves: string }[];
  readonly referee: readonly string[];
};

describe('a session of the notes', () => {
  it('is planned with its people, the protocol’s running time, and starting values that are said to be', async () => {
    const ran = await twelvemonth(['plan', '--session', '2026-11-26', '--data', data]);
    expect(ran.code).toBe(0);
    expect(ran.aside).toContain('starting values');
    expect(ran.out).toContain('Thornbeck Day Unit, 26 Nov 2026: one person, everyone is seen.');
    expect(ran.out).toContain('A proposal: 1 of 1 would have to be told another time.');
    const planned = await jsonOf<PlannedDay>(['plan', '--session', 'thornbeck-2026-11-26', '--data', data]);
    // The teaching sheet runs the yearly infusion over 30 minutes and watches 30 after a first dose.
    expect(planned.day.visits).toMatchObject([{ kind: 'first infusion', infusionMinutes: 30, watchMinutes: 30 }]);
    expect(planned.referee).toEqual([]);
    // 10 + 10 + 10 + 30 + 5 + 30 + 5, and the dose is made meanwhile: common practice, no source.
    expect(planned.plan).toMatchObject([{ arrives: '08:30', leaves: '10:10' }]);
  });

  it('on the day its rest is planned from the notes: who is late is told so, and nobody when nobody is', async () => {
    const rest = (...more: string[]) =>
      twelvemonth(['plan', '--session', 'thornbeck-2026-11-26', '--data', data, ...more]);
    const name = (await jsonOf<PlannedDay>(['plan', '--session', 'thornbeck-2026-11-26', '--data', data])).plan[0]!
      .name;
    const early = await rest('--now', '08:32');
    expect(early.out).toContain('Nobody has to be told another time.');
    const late = await rest('--now', '08:52', '--comes', `${name}=09:30`);
    expect(late.out).toMatch(
      new RegExp(`tell ${name}: 09:30 instead of 08:40\\. Why: was told 08:40 and is not expected before 09:30`),
    );
    expect(late.code).toBe(0);
    const none = await rest('--now', '08:52', '--second-checkers', '0');
    expect(none.code).toBe(1);
    expect(none.out).toContain(`${name} has no place today any more`);
    expect(none.out).toContain('One more second checker from 08:55 on.');
    expect((await rest('--now', '18:00')).code).not.toBe(0);
    expect((await rest('--now', '09:00', '--comes', 'Nobody=10:00')).aside).toContain('with a name of the list');
  });

  it('what --json writes can be planned and rehearsed again', async () => {
    const written = (await twelvemonth(['plan', '--session', '2026-11-26', '--data', data, '--json'])).out;
    const file = fileIn(folder, 'planned.json', written);
    expect((await twelvemonth(['plan', file, '--check'])).code).toBe(0);
    expect((await twelvemonth(['rehearse', file, '--days', '50'])).code).toBe(0);
  });

  it('is rehearsed at the times people have been told', async () => {
    const ran = await twelvemonth(['rehearse', '--session', '2026-11-26', '--data', data, '--days', '100']);
    expect(ran.code).toBe(0);
    expect(ran.out).toContain('On time, by 17:00');
  });

  it('without anybody, or without such a session, it says so', async () => {
    const nobody = await twelvemonth(['plan', '--session', '2026-12-01', '--data', data]);
    expect(nobody).toMatchObject({ code: 1, out: '' });
    expect(nobody.aside).toContain('nobody is on the list');
    const none = await twelvemonth(['plan', '--session', '2026-12-02', '--data', data]);
    expect(none).toMatchObject({ code: 1, out: '' });
    expect((await twelvemonth(['plan', '--data', data])).code).toBe(2);
  });
});

type Proposed = {
  readonly places: readonly { readonly name: string; readonly session: string | null }[];
  readonly changes: readonly { readonly name: string; readonly from: string | null; readonly to: string | null }[];
};

describe('places for those who wait', () => {
  it('are proposed inside the windows of their notes; who has none is named with what they need', async () => {
    const ran = await twelvemonth(['fill', '--unit', 'thornbeck', ...at]);
    const found = await jsonOf<Proposed>(['fill', '--unit', 'thornbeck', ...at]);
    // Who is ready keeps the place told; the other complete one gets the next session, after the days of notice.
    expect(found.places.map(({ session }) => session)).toEqual(['Thu 26 Nov 2026', 'Tue 1 Dec 2026']);
    expect(found.changes).toMatchObject([{ from: null, to: 'Tue 1 Dec 2026' }]);
    expect(ran.aside).toContain('left out: Wilhelmina Arkwright-p2:');
    expect(ran.aside).toContain('starting values');
  });

  it('a place so near that nobody can be told another one stays; why not earlier is said', async () => {
    const [near, other] = ['Wilhelmina Arkwright-p1', 'Wilhelmina Arkwright-p3'];
    const { why } = await jsonOf<{
      readonly why: readonly { readonly name: string; readonly sessions: readonly { readonly says: string }[] }[];
    }>(['fill', '--unit', 'thornbeck', ...at, '--why', near, '--why', other]);
    expect(why.map(({ name, sessions }) => [name, sessions.map(({ says }) => says)])).toEqual([
      [near, []],
      [other, ['26 Nov 2026 is too early: a place needs 3 days of notice']],
    ]);
  });

  it('a unit without sessions ahead, or that nobody knows, is told', async () => {
    const none = await twelvemonth(['fill', '--unit', 'thornbeck', '--data', data, '--today', '2027-03-01']);
    expect(none).toMatchObject({ code: 1, out: '' });
    expect(none.aside).toContain('has no session planned after today');
    expect((await twelvemonth(['fill', '--unit', 'nowhere', ...at])).code).toBe(2);
  });
});

describe('what the unit has set for planning', () => {
  it('is used in place of the starting values', async () => {
    const own = join(folder, 'own');
    const service = await (await (await Service.begin(own)).unit({ planning })).protocol();
    await service.plan();
    await service.person(ready, true);
    await service.book(ready.patient, 1);
    await service.store.close();
    const ran = await twelvemonth(['plan', '--session', '2026-11-26', '--data', own, '--json']);
    expect(ran.aside).not.toContain('starting values');
    const planned = JSON.parse(ran.out) as PlannedDay;
    expect(planned.day).toMatchObject({ nurses: 1, watchedPerNurse: 2, minutes: { observations: 5, watch: 30 } });
    expect(planned.plan).toMatchObject([{ arrives: '08:30', leaves: '10:05' }]);
  });
});

describe('a year of the unit, as usual and by windows', () => {
  it('is played with what the notes say is asked for; every assumption has its source beside it', async () => {
    const asked = ['rehearse-year', ...at, '--seeds', '1'];
    const { measures, assumptions, sources, units } = await jsonOf<{
      readonly units: readonly { readonly referralsPerWeek: number; readonly places: number }[];
      readonly measures: readonly { readonly measure: string; readonly ways: readonly { readonly name: string }[] }[];
      readonly assumptions: Readonly<Record<string, unknown>>;
      readonly sources: Readonly<Record<string, string>>;
    }>(asked);
    // Three people were referred in the year before; the last session planned has one place.
    expect(units).toMatchObject([{ referralsPerWeek: 3 / 52, places: 1 }]);
    expect(measures.map(({ ways }) => ways.map(({ name }) => name))).toContainEqual(['usual practice', 'by windows']);
    expect(Object.keys(sources)).toEqual(Object.keys(assumptions));
    const ran = await twelvemonth(asked);
    expect(ran.out).toContain('nothing here was seen in a real unit');
    for (const source of Object.values(sources)) expect(ran.out).toContain(source);
  });
});

describe('the coming years of the unit', () => {
  const asked = ['look-ahead', '--unit', 'thornbeck', ...at, '--runs', '40'];

  it('are looked ahead at from what the notes say; each figure has what it was counted from', async () => {
    const ran = await twelvemonth([...asked, '--if', 'sessions=3', '--if', 'chairs=1']);
    expect(ran.out).toContain('Thornbeck Day Unit: 156 weeks ahead, 40 runs, seed 1.');
    // Three people were referred in the year before.
    expect(ran.out).toMatch(/new referrals a week +0\.2 +3 since the notes begin, 0 days ago: too short to tell/);
    expect(ran.out).toContain('Osteoporos Int 2012');
    expect(ran.out).toMatch(/sessions=3 +\d/);
    expect(ran.out).toMatch(/That is \d+ sessions? a week as they are now/);
    expect(ran.aside).toContain('starting values');
  });

  it('as a file they can be changed by hand, and say the same', async () => {
    const written = (await twelvemonth([...asked, '--write-file'])).out;
    const path = fileIn(folder, 'ahead.json', written);
    const [own, again] = [
      await jsonOf<{ readonly demand: unknown; readonly placesNeeded: number }>(asked),
      await jsonOf<{ readonly demand: unknown; readonly placesNeeded: number }>(['look-ahead', path, '--runs', '40']),
    ];
    expect(again.demand).toEqual(own.demand);
    expect(again.placesNeeded).toBe(own.placesNeeded);
  });

  it('a what-if that nobody knows, a unit without sessions ahead, and neither file nor unit are told', async () => {
    expect((await twelvemonth([...asked, '--if', 'moon=1'])).aside).toContain('--if moon=1: write NAME=VALUE');
    const none = await twelvemonth(['look-ahead', '--unit', 'thornbeck', '--data', data, '--today', '2027-03-01']);
    expect(none).toMatchObject({ code: 1, out: '' });
    expect(none.aside).toContain('has no session planned');
    expect((await twelvemonth(['look-ahead', '--data', data])).code).toBe(2);
  });
});

describe('a unit that writes American', () => {
  const there = join(folder, 'american');
  const asThere = ['--data', there, '--today', '2026-11-24'];
  const british = /\b(?:bloods?|ring)\b/i;
  beforeAll(async () => {
    const service = await (
      await (
        await Service.begin(there)
      ).unit({
        letters: { postalAddress: '4 Weir Lane, Thornbeck', language: 'en-US', answerWithinDays: 14 },
      })
    ).protocol();
    await service.plan();
    await service.person(ready, true);
    await service.person(waiting, false);
    await service.store.close();
  });

  it.each([
    ['readiness', ['readiness', ready.number]],
    ['readiness of everyone', ['readiness', '--all']],
    ['fill', ['fill', '--unit', 'thornbeck']],
    ['look-ahead', ['look-ahead', '--unit', 'thornbeck', '--runs', '5']],
  ] as const)('%s says it in its own words, and --json stays as it is elsewhere', async (_, words) => {
    const [said, same] = [await twelvemonth([...words, ...asThere]), await twelvemonth([...words, ...at])];
    expect(said.out).not.toBe('');
    expect(said.out.split('\n').filter((line) => british.test(line))).toEqual([]);
    expect(same.code).toBeLessThan(2);
    expect((await twelvemonth([...words, '--json', ...asThere])).out).not.toMatch(/\blabs\b/);
  });

  it('says labs where the same notes elsewhere say bloods', async () => {
    const of = ['readiness', waiting.number, '--on', '2027-03-24'];
    const [said, elsewhere] = [await twelvemonth([...of, ...asThere]), await twelvemonth([...of, ...at])];
    expect(elsewhere.out).toMatch(/take bloods \(/);
    expect(said.out).toMatch(/draw labs \(/);
    expect(said.out).not.toMatch(british);
  });
});
