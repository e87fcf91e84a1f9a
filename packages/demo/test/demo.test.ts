/** The demo service: invented, lawful to the last entry, the same for a seed. Words and numbers: docs/words.md, "The demo scenario". */
import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import {
  type Day,
  type Entry,
  type SubjectRecord,
  clockOf,
  day,
  factsOf,
  isSubjectOf,
  kindNamed,
  isKindName,
  plainDate,
  protocolInForceOn,
  protocolsInForce,
  readiness,
  recordOf,
  recordOfEntries,
  sessionOf,
  standingOf,
  standings,
  teaching,
  unitOf,
  unitOfPatient,
  verdictOn,
  visitOn,
} from '@twelvemonth/clinical';
import { demoStaff, replayDemo } from '../src/index.ts';
import { sha256Hex } from '../src/sha256.ts';

type Demo = ReturnType<typeof replayDemo>;
const today = day('2026-11-25');
const demo: Demo = replayDemo({ seed: 1, today });
const records = (of: Demo, kind: 'patient' | 'session'): SubjectRecord[] =>
  [...of]
    .filter(([subject]) => isSubjectOf(kind, subject))
    .map(([subject, entries]) => recordOfEntries(subject, entries));
const patients = records(demo, 'patient');
const everything: readonly Entry[] = [...demo.values()].flat();
const contextOf = (of: Demo, unit: string) => {
  const described = unitOf(recordOf(`unit/${unit}`, of.get(`unit/${unit}`) ?? []));
  if (described === undefined) throw new Error(`no unit ${unit}`);
  return {
    protocols: protocolsInForce(recordOf(`protocol/${unit}`, of.get(`protocol/${unit}`) ?? [])),
    calendar: described.calendar,
  };
};
const contexts: Record<string, ReturnType<typeof contextOf>> = {
  thornbeck: contextOf(demo, 'thornbeck'),
  saltmere: contextOf(demo, 'saltmere'),
};
const standingToday = (record: SubjectRecord, on: Day = today) =>
  standingOf(record, protocolInForceOn(contexts[unitOfPatient(record)]?.protocols ?? [], on), on);
const patient = (id: string): SubjectRecord => recordOfEntries(`patient/${id}`, demo.get(`patient/${id}`) ?? []);
const fingerprint = (of: Demo): string =>
  createHash('sha256')
    .update(JSON.stringify([...of]))
    .digest('hex');

describe('the register of Marlowe Vale', () => {
  test('about nine hundred people, eight years, two units', () => {
    expect(patients).toHaveLength(900);
    const first = everything.reduce((least, { recordedAt }) => Math.min(least, Date.parse(recordedAt)), Infinity);
    expect(new Date(first).getUTCFullYear()).toBe(2018);
    expect(new Set(patients.map(unitOfPatient))).toEqual(new Set(['thornbeck', 'saltmere']));
  });
  test.each(['2020-06-01', '2022-01-01', '2024-03-01', '2025-09-01', '2026-10-01', '2026-11-25'])(
    'nobody who had been referred is unaccounted for on %s',
    (date) => {
      const on = day(date);
      const referred = patients.filter((record) => factsOf(record, 'referral').some((one) => one.on <= on));
      const lost = referred.filter((record) => standingToday(record, on).standing === 'not accounted for');
      expect(lost.map(({ subject }) => subject)).toEqual([]);
      expect(referred.length).toBeGreaterThan(50);
    },
  );
  test('every standing there is occurs, but the one that must not', () => {
    const seen = new Set(patients.map((record) => standingToday(record).standing));
    expect([...standings].filter((standing) => !seen.has(standing))).toEqual(['not accounted for']);
  });
  test('every ledger folds without a problem', () => {
    expect([...demo].flatMap(([subject, entries]) => recordOf(subject, entries).problems)).toEqual([]);
  });
  test('every entry has a body its kind accepts, signed in a role its author holds', () => {
    const roles = new Map(demoStaff.map(({ staff, roles: held }) => [staff, held]));
    const wrong = everything.filter(
      ({ kind, body, author }) =>
        !isKindName(kind) ||
        !kindNamed(kind).body.safeParse(body).success ||
        roles.get(author.staff)?.includes(author.role) !== true,
    );
    expect(wrong).toEqual([]);
  });
  test('ids are never used twice and times of writing only go forward', () => {
    expect(new Set(everything.map(({ id }) => id)).size).toBe(everything.length);
    const backward = [...demo.values()].flatMap((entries) =>
      entries.filter((entry, index) => {
        const before = entries[index - 1];
        return entry.seq !== index + 1 || (before !== undefined && entry.recordedAt <= before.recordedAt);
      }),
    );
    expect(backward).toEqual([]);
  });
});

describe('people on other regimens', () => {
  const clockToday = (id: string) =>
    clockOf(patient(id), protocolInForceOn(contexts['thornbeck']?.protocols ?? [], today) ?? teaching, today, undefined)
      ?.tier;
  test.each([
    ['regimen-1', 'between doses', 'running'],
    ['regimen-2', 'between doses', 'first in line'],
    ['regimen-3', 'in review', 'first in line'],
    ['regimen-4', 'between doses', 'first in line'],
    ['regimen-5', 'between doses', undefined],
    ['regimen-6', 'in review', undefined],
  ] as const)('%s: %s, clock %s', (id, standing, tier) => {
    expect([standingToday(patient(id)).standing, clockToday(id)]).toEqual([standing, tier]);
  });
});

describe('nobody in it is real', () => {
  test('numbers never issued, each once; telephones from ranges kept for drama', () => {
    const numbers = patients.map((record) => factsOf(record, 'identity').at(-1)?.body.number ?? '');
    for (const number of numbers) expect(number).toMatch(/^999 \d{3} \d{4}$/);
    expect(new Set(numbers).size).toBe(numbers.length);
    for (const { body } of patients.flatMap((record) => factsOf(record, 'contact')))
      expect(body.telephone).toMatch(/^(07700 900\d{3}|01632 960\d{3})$/);
  });
});

describe('every difficulty of the trade is in it', () => {
  const some = (kind: Parameters<typeof factsOf>[1]) => (record: SubjectRecord) => factsOf(record, kind).length > 0;

  type Difficulty = readonly [says: string, least: number, holds: (record: SubjectRecord) => boolean];
  const difficulties: readonly Difficulty[] = [
    [
      'put off on arrival, with reasons of several sorts',
      50,
      (record) => factsOf(record, 'go-decision').some(({ body }) => body.decision === 'put off'),
    ],
    [
      'bloods that were late',
      5,
      (record) => factsOf(record, 'go-decision').some(({ body }) => body.reasonCode === 'bloods'),
    ],
    [
      'results nobody has signed',
      3,
      (record) => {
        const signed = new Set(factsOf(record, 'results-signed').flatMap(({ body }) => body.results));
        return factsOf(record, 'result').some(({ id }) => !signed.has(id));
      },
    ],
    ['loading that was stopped', 5, some('vitamin-d-loading-stopped')],
    ['places moved or given up', 50, some('place-given-up')],
    ['a second dose refused', 5, (record) => factsOf(record, 'refusal').some(({ body }) => body.to === 'this dose')],
    [
      'leaving denosumab',
      10,
      (record) => factsOf(record, 'dose').some(({ body }) => body.medicine === 'denosumab 60 mg'),
    ],
    ['deaths', 20, some('died')],
    ['transfers acknowledged', 3, some('transfer-acknowledged')],
    [
      'transfers nobody has acknowledged',
      3,
      (record) => factsOf(record, 'transfer-out').length > factsOf(record, 'transfer-acknowledged').length,
    ],
    ['corrected entries', 10, (record) => record.all.some(({ id, first }) => id !== first)],
    ['withdrawn entries', 5, some('withdrawal')],
    ['a dose on a ward', 10, (record) => factsOf(record, 'dose').some(({ body }) => body.setting === 'ward')],
    ['part doses', 2, (record) => factsOf(record, 'dose').some(({ body }) => body.partMilliliters !== undefined)],
    ['infusions paused', 5, some('infusion-paused')],
    [
      'planned breaks',
      20,
      (record) => factsOf(record, 'course-review').some(({ body }) => body.outcome === 'planned break'),
    ],
    ['reactions', 50, some('reaction')],
    ["a prescriber's exception", 1, some('prescriber-exception')],
  ];
  test.each(difficulties)('%s: at least %d people', (_, least, holds) => {
    expect(patients.filter(holds).length).toBeGreaterThanOrEqual(least);
  });
  test('look-alikes: two of one birth date and all but one name', () => {
    const [a, b] = ['look-alike-a', 'look-alike-b'].map((id) => factsOf(patient(id), 'identity')[0]?.body);
    expect(a?.born).toBe(b?.born);
    expect(a?.family).not.toBe(b?.family);
  });
});

describe('the day it stands on', () => {
  test('a Wednesday: Saltmere is open, people are in their chairs, and the next lists are partly filled', () => {
    const sessions = records(demo, 'session').flatMap((record) => sessionOf(record) ?? []);
    const list = sessions.find(({ id }) => id === 'saltmere-2026-11-25');
    expect(list?.taken.size).toBeGreaterThanOrEqual(6);
    const visits = [...(list?.taken.values() ?? [])].map((id) => visitOn(patient(id), today));
    expect(visits.filter((visit) => visit !== undefined && !visit.over).length).toBeGreaterThanOrEqual(2);
    expect(visits.filter((visit) => visit === undefined).length).toBeGreaterThanOrEqual(2);
    const coming = sessions.filter(({ on, taken }) => on > today && on <= today + 14 && taken.size > 0);
    expect(coming.length).toBeGreaterThanOrEqual(3);
  });
  test('the session was opened by two registered people in date before any medicine ran', () => {
    const opened = demo.get('session/saltmere-2026-11-25')?.find(({ kind }) => kind === 'session-opened');
    const started = everything.filter(
      ({ kind, effectiveAt }) => kind === 'infusion-started' && effectiveAt.startsWith(plainDate(today)),
    );
    expect(started.length).toBeGreaterThan(0);
    for (const { recordedAt } of started) expect(recordedAt > (opened?.recordedAt ?? 'never')).toBe(true);
  });
  test('some are held by a symptom nobody has cleared, some by denosumab still at work', () => {
    const held = (requirement: 'symptoms' | 'other-bone-medicines') =>
      patients.filter((record) => {
        const context = contexts[unitOfPatient(record)];
        if (context === undefined) return false;
        const on = verdictOn(readiness(record, context, today), today);
        return on.requirements.some((one) => one.requirement === requirement && one.verdict !== 'ready');
      });
    expect(held('symptoms').length).toBeGreaterThan(0);
    expect(held('other-bone-medicines').length).toBeGreaterThan(0);
  });
  test('the mirror of every place is on a list', () => {
    for (const session of records(demo, 'session')) {
      const list = sessionOf(session);
      if (list === undefined) continue;
      for (const [place, id] of list.taken) {
        const booked = factsOf(patient(id), 'place-booked').filter(({ body }) => body.session === list.id);
        expect(booked.at(-1)?.body.place).toBe(place);
      }
    }
  });
});

/** The windows of the page, on its own day: docs/readiness.md, "Worked cases". */
describe('the worked cases can be opened, and say what the page says', () => {
  test.each([
    ['case-01', '2026-11-25', '2026-12-04'],
    ['wilhelmina-arkwright-poe', '2027-01-08', '2027-03-02'],
    ['case-03', '2026-11-28', '2027-01-19'],
    ['case-04', '2026-12-02', '2027-01-20'],
    ['case-05', '2026-11-25', '2027-01-14'],
    ['case-06', undefined, undefined],
    ['case-09', undefined, undefined],
    ['case-10', undefined, undefined],
    ['case-11', '2027-01-09', '2027-03-03'],
    ['case-12', undefined, undefined],
  ])('%s: %s - %s', (id, first, last) => {
    const context = contexts['thornbeck'];
    if (context === undefined) throw new Error('no context');
    const { window } = readiness(patient(id), context, today);
    expect(
      window === undefined
        ? [undefined, undefined]
        : [plainDate(window.first), window.last === undefined ? undefined : plainDate(window.last)],
    ).toEqual([first, last]);
  });
  test('what the page does not mention is clear and recorded', () => {
    const context = contexts['thornbeck'];
    if (context === undefined) throw new Error('no context');
    const cast = [...demo.keys()].flatMap(
      (subject) => /^patient\/(case-\d+|wilhelmina-arkwright-poe)$/.exec(subject)?.[1] ?? [],
    );
    expect(cast.length).toBeGreaterThan(10);
    // Case 7 is asked on another day, of its interval only.
    for (const id of cast.filter((one) => one !== 'case-07')) {
      const { requirements } = verdictOn(readiness(patient(id), context, today), today);
      for (const name of ['consent', 'teeth-and-jaw', 'secondary-causes', 'hypersensitivity'])
        expect([id, requirements.find(({ requirement }) => requirement === name)?.cause]).toEqual([
          id,
          expect.stringMatching(
            /^(consent|teeth and jaw|secondary causes looked for|not a first dose|no hypersensitivity)$/,
          ),
        ]);
    }
  });
  test('Wilhelmina Arkwright-Poe is booked for Thursday 28 January 2027 at 10:40', () => {
    expect(standingToday(patient('wilhelmina-arkwright-poe')).says).toBe('booked: 28 Jan 2027, 10:40');
  });
});

describe('from a seed and a day', () => {
  test('the same seed and day give the same entries, byte for byte', () => {
    const once = fingerprint(replayDemo({ seed: 7, today, people: 60 }));
    expect(fingerprint(replayDemo({ seed: 7, today, people: 60 }))).toBe(once);
    expect(fingerprint(replayDemo({ seed: 8, today, people: 60 }))).not.toBe(once);
  });
  test.each(['2026-02-28', '2026-03-29', '2026-08-15', '2026-12-25', '2028-02-29', '2027-01-01'])(
    'it stands on %s as well: nothing refused, nobody unaccounted for',
    (on) => {
      const there = replayDemo({ seed: 3, today: day(on), people: 60 });
      const lost = records(there, 'patient').filter(
        (record) => standingOf(record, undefined, day(on)).standing === 'not accounted for',
      );
      expect(lost).toEqual([]);
    },
  );
});

test.each([1, 7 * 60, 23 * 60 + 50])(
  'at minute %d of the day the named people are as they should be',
  (minuteOfDay) => {
    const there = replayDemo({ seed: 3, today, people: 40, minuteOfDay });
    const her = recordOf('patient/wilhelmina-arkwright-poe', there.get('patient/wilhelmina-arkwright-poe') ?? []);
    expect(standingOf(her, undefined, today).says).toBe('booked: 28 Jan 2027, 10:40');
  },
);

/** Reference: node:crypto. */
test.each(['', 'abc', 'zoledronic acid 5 mg', 'é'.repeat(300), 'x'.repeat(55), 'x'.repeat(56), 'x'.repeat(64)])(
  'the hash of %j is SHA-256',
  (text) => {
    expect(sha256Hex(text)).toBe(createHash('sha256').update(text).digest('hex'));
  },
);
