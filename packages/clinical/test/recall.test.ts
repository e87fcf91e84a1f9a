/** The recall: what is asked of each person (practice page 1a row 22), tries by route (row 29), whom we speak to. Common practice, no source. */
import { describe, expect, test } from 'vitest';
import {
  type BodyOfKind,
  type PlainDate,
  type RecallItem,
  contactPeople,
  contactPersonText,
  day,
  isTriedEnough,
  mayBeToldAll,
  recallChecklist,
  triedSince,
} from '@twelvemonth/clinical';
import { type Line, at, personOf } from './person.ts';

const today = day('2026-10-20');
const span = {
  from: day('2026-10-01'),
  bloods: { from: day('2026-10-10'), until: day('2026-11-20') },
  lastDose: day('2025-12-10'),
  today,
};
const dose = at('2025-12-10', 'dose', { medicine: 'zoledronic acid 5 mg', setting: 'this service' }, 'd1');
const states = (...lines: readonly Line[]): Partial<Record<RecallItem, string>> =>
  Object.fromEntries(recallChecklist(personOf([dose, ...lines]), span).map(({ item, state }) => [item, state]));
const result = (on: string, analyte: string, unit: string) =>
  at(on, 'result', { analyte, quantity: { comparator: '', value: '2', unit } } as BodyOfKind<'result'>);

describe('the checklist', () => {
  test('nothing is taken as asked', () => {
    expect(new Set(Object.values(states()))).toEqual(new Set(['to ask']));
  });
  test('an answer from before the recall is asked again; one since counts', () => {
    const teeth = (on: string) => at(on, 'dental', { answer: 'nothing pending' });
    expect(states(teeth('2026-09-30')).teeth).toBe('to ask');
    expect(states(teeth('2026-10-01')).teeth).toBe('answered');
    expect(states(at('2026-10-02', 'dental', { answer: 'work pending' })).teeth).toBe('needs somebody');
    expect(states(at('2026-10-02', 'vitamin-d-maintenance', { taken: false }))['vitamin D']).toBe('needs somebody');
  });
  test('bloods are answered by a creatinine and a calcium drawn in the span that is in date on the due day', () => {
    const early = [result('2026-10-05', 'creatinine', 'umol/L'), result('2026-10-05', 'calcium', 'mmol/L')];
    expect(states(...early).bloods).toBe('to ask');
    expect(states(result('2026-10-12', 'creatinine', 'umol/L')).bloods, 'calcium is missing').toBe('to ask');
    expect(
      states(result('2026-10-12', 'creatinine', 'umol/L'), result('2026-10-12', 'adjusted calcium', 'mmol/L')).bloods,
    ).toBe('answered');
    expect(states(at('2026-10-02', 'recall-talk', { toldBy: 'the person', bloods: 'form sent' })).bloods).toBe(
      'needs somebody',
    );
  });
  test('not sure, and an address that changed, need somebody; the new address settles it', () => {
    const talk = at('2026-10-02', 'recall-talk', { toldBy: 'the person', wants: 'not sure', address: 'changed' });
    expect(states(talk)).toMatchObject({ 'still wanted': 'needs somebody', address: 'needs somebody' });
    expect(states(talk, at('2026-10-03', 'contact', { address: '2 New Row' })).address).toBe('answered');
  });
});

describe('tries', () => {
  const call = (
    on: string,
    route: BodyOfKind<'call'>['route'],
    reached: boolean,
    about: BodyOfKind<'call'>['about'] = 'recall',
  ) => at(on, 'call', { route, about, reached });
  const tried = (...lines: readonly Line[]) => triedSince(personOf([dose, ...lines]), span.from, today);
  test('are counted by route since the recall began; what was about something else is none', () => {
    const found = tried(
      call('2026-09-20', 'telephone', false),
      call('2026-10-02', 'telephone', false),
      call('2026-10-04', 'telephone', false),
      call('2026-10-06', 'letter', false),
      call('2026-10-07', 'telephone', false, 'bloods'),
    );
    expect(found.says).toBe(
      'telephone: 2 tries in vain, last on 4 Oct 2026; letter: 1 try in vain, last on 6 Oct 2026',
    );
    expect(isTriedEnough(found)).toBe(true);
  });
  test('one route is not enough, and who was reached is not out of reach', () => {
    expect(isTriedEnough(tried(call('2026-10-02', 'telephone', false)))).toBe(false);
    expect(isTriedEnough(tried(call('2026-10-02', 'telephone', false), call('2026-10-03', 'they rang us', true)))).toBe(
      false,
    );
    expect(tried().says).toBe('not tried yet');
  });
});

describe('whom we speak to', () => {
  const home: BodyOfKind<'contact-person'> = {
    who: 'Heron House',
    relation: 'care home',
    mayBeTold: 'yes, they agreed',
    speakToFirst: true,
  };
  const proxy: BodyOfKind<'contact-person'> = {
    who: 'Anna',
    relation: 'legal proxy',
    mayBeTold: 'not asked yet',
    speakToFirst: false,
  };
  const people = (...lines: readonly Line[]) => contactPeople(personOf(lines), today).map(({ body }) => body.who);
  test('each a contact of its own; who is rung first stands first; a newer word about one replaces it; one that ended is gone', () => {
    const [a, b] = [at('2026-01-01', 'contact-person', proxy), at('2026-01-02', 'contact-person', home)];
    expect(people(a, b)).toEqual(['Heron House', 'Anna']);
    expect(people(a, b, at('2026-03-01', 'contact-person', { ...home, until: '2026-03-01' as PlainDate }))).toEqual([
      'Anna',
    ]);
  });
  test('without the person’s yes, or a proxy’s document seen, nothing is told', () => {
    expect(mayBeToldAll(home)).toBe(true);
    expect(mayBeToldAll({ ...home, mayBeTold: 'not asked yet' })).toBe(false);
    expect(mayBeToldAll(proxy)).toBe(false);
    expect(mayBeToldAll({ ...proxy, documentSeenOn: '2026-02-01' as PlainDate })).toBe(true);
    expect(mayBeToldAll({ ...proxy, documentSeenOn: '2026-02-01' as PlainDate, mayBeTold: 'no' })).toBe(false);
    expect(contactPersonText(proxy)).toMatch(/tell them nothing yet.*document not seen/);
  });
});
