/** The demo service: invented, lawful to the last entry, the same for a seed. Words and numbers: docs/words.md, "The demo scenario". */
import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import {
  type Day,
  type Entry,
  type SubjectRecord,
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
  unitOf,
  unitOfPatient,
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
    const first = Math.min(...[...demo.values()].flat().map(({ recordedAt }) => Date.parse(recordedAt)));
    expect(new Date(first).getUTCFullYear()).toBe(2018);
    expect(new Set(patients.map(unitOfPatient))).toEqual(new Set(['thornbeck', 'saltmere']));
  });
  test('nobody is unaccounted for, on the day or on any first of the month before it', () => {
    const days = [today, ...['2020-06-01', '2022-01-01', '2024-03-01', '2025-09-01', '2026-10-01'].map(day)];
    for (const on of days) {
      for (const record of patients) {
        if ((record.all[0]?.on ?? today) <= on && factsOf(record, 'referral').some((one) => one.on <= on)) {
          expect(standingToday(record, on).standing, `${record.subject} on ${plainDate(on)}`).not.toBe(
            'not accounted for',
          );
        }
      }
    }
  });
  test('every standing there is occurs, but the one that must not', () => {
    const seen = new Set(patients.map((record) => standingToday(record).standing));
    expect([...standings].filter((standing) => !seen.has(standing))).toEqual(['not accounted for']);
  });
  test('every ledger folds without a problem', () => {
    for (const [subject, entries] of demo) expect(recordOf(subject, entries).problems, subject).toEqual([]);
  });
  test("every entry is of a kind the author's role may write, with a body its kind accepts", () => {
    for (const entry of [...demo.values()].flat()) {
      if (!isKindName(entry.kind)) throw new Error(entry.kind);
      expect(kindNamed(entry.kind).body.safeParse(entry.body).success, `${entry.subject} ${entry.kind}`).toBe(true);
    }
  });
  test('ids are never used twice and times of writing only go forward', () => {
    const ids = new Set<string>();
    for (const [subject, entries] of demo) {
      entries.forEach((entry, index) => {
        expect(ids.has(entry.id)).toBe(false);
        ids.add(entry.id);
        expect(entry.seq).toBe(index + 1);
        const before: Entry | undefined = entries[index - 1];
        if (before !== undefined) expect(entry.recordedAt > before.recordedAt, subject).toBe(true);
      });
    }
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
  test('every author is on the staff list and holds the role they signed in', () => {
    const roles = new Map(demoStaff.map(({ staff, roles: held }) => [staff, held]));
    for (const { author } of [...demo.values()].flat())
      expect(roles.get(author.staff), author.staff).toContain(author.role);
  });
});

describe('every difficulty of the trade is in it', () => {
  const has = (says: string, holds: (record: SubjectRecord) => boolean, least = 1): void =>
    test(says, () => {
      expect(patients.filter(holds).length).toBeGreaterThanOrEqual(least);
    });
  const some = (kind: Parameters<typeof factsOf>[1]) => (record: SubjectRecord) => factsOf(record, kind).length > 0;
  has(
    'put off on arrival, with reasons of several sorts',
    (record) => factsOf(record, 'go-decision').some(({ body }) => body.decision === 'put off'),
    50,
  );
  has(
    'bloods that were late',
    (record) => factsOf(record, 'go-decision').some(({ body }) => body.reasonCode === 'bloods'),
    5,
  );
  has(
    'results nobody has signed',
    (record) => {
      const signed = new Set(factsOf(record, 'results-signed').flatMap(({ body }) => body.results));
      return factsOf(record, 'result').some(({ id }) => !signed.has(id));
    },
    3,
  );
  has('loading that was stopped', some('vitamin-d-loading-stopped'), 5);
  has('places moved or given up', some('place-given-up'), 50);
  has('a second dose refused', (record) => factsOf(record, 'refusal').some(({ body }) => body.to === 'this dose'), 5);
  has(
    'leaving denosumab',
    (record) => factsOf(record, 'dose').some(({ body }) => body.medicine === 'denosumab 60 mg'),
    10,
  );
  has('deaths', some('died'), 20);
  has('transfers acknowledged', some('transfer-acknowledged'), 3);
  has(
    'transfers nobody has acknowledged',
    (record) => factsOf(record, 'transfer-out').length > factsOf(record, 'transfer-acknowledged').length,
    3,
  );
  has('corrected entries', (record) => record.all.some(({ id, first }) => id !== first), 10);
  has('withdrawn entries', some('withdrawal'), 5);
  has('a dose on a ward', (record) => factsOf(record, 'dose').some(({ body }) => body.setting === 'ward'), 10);
  has('part doses', (record) => factsOf(record, 'dose').some(({ body }) => body.partMilliliters !== undefined), 2);
  has('infusions paused', some('infusion-paused'), 5);
  has(
    'planned breaks',
    (record) => factsOf(record, 'course-review').some(({ body }) => body.outcome === 'planned break'),
    20,
  );
  has('reactions', some('reaction'), 50);
  has("a prescriber's exception", some('prescriber-exception'));
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
      for (const record of records(there, 'patient'))
        expect(standingOf(record, undefined, day(on)).standing).not.toBe('not accounted for');
    },
  );
});

/** Reference: node:crypto. */
test.each(['', 'abc', 'zoledronic acid 5 mg', 'é'.repeat(300), 'x'.repeat(55), 'x'.repeat(56), 'x'.repeat(64)])(
  'the hash of %j is SHA-256',
  (text) => {
    expect(sha256Hex(text)).toBe(createHash('sha256').update(text).digest('hex'));
  },
);
