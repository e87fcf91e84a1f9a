/**
 * Aftercare through the wire: who is on the list and when (safety rules: a Thursday's first dose is asked about on Friday and
 * Monday), what may not wait, and the report of a reaction (the four things a report needs: ICH E2D, from memory).
 */
import type {
  AftercareOfPersonView,
  AftercareView,
  PersonView,
  ReactionReportView,
  TodayView,
} from '@twelvemonth/exchange';
import {
  type BodyOfKind,
  type PlainDate,
  aftercareLines,
  dangerSignNames,
  day,
  plainDate,
  reactionSymptoms,
} from '@twelvemonth/clinical';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { movableClock } from '../../../tests/support/movable-clock.ts';
import { type OwnServer, ownServer, problemOf, referralOf, setUp, thornbeck, workUp } from './support/own-server.ts';

type Asked = Extract<BodyOfKind<'aftercare'>, { outcome: 'asked' }>;

let server: OwnServer;
/** A Thursday. */
const clock = movableClock('2026-11-26T10:00');
const byDays = (days: number): void => clock.moveOn(days * 24 * 60);
const today = (): PlainDate => plainDate(clock.local('Europe/London').today);
const list = () => server.read<AftercareView>('/api/aftercare');
const hers = () => server.read<AftercareOfPersonView>('/api/people/wilhelmina/aftercare');
const write = (kind: string, body: object, as: 'nurse' | 'clerk' = 'nurse') =>
  server.done(as, { name: 'record', patient: 'wilhelmina', line: { kind, body, effectiveAt: today() } });

const answers = (dose: string, more: Partial<Asked> = {}): Asked => ({
  outcome: 'asked',
  dose,
  how: 'telephone',
  toldBy: 'the person',
  feels: 'as before the dose',
  felt: [],
  notFelt: reactionSymptoms,
  signs: [],
  notSigns: dangerSignNames,
  drinks: 'as usual or more',
  paracetamol: 'none',
  ...more,
});
const told = (of: Asked) =>
  server.done('nurse', {
    name: 'record together',
    patient: 'wilhelmina',
    lines: aftercareLines(of, day(today())).map(({ kind, body, on }) => ({ kind, body, effectiveAt: plainDate(on) })),
  });

beforeAll(async () => {
  server = await ownServer({ clock });
  await setUp(server, '2026-11-26');
  await server.done('lead', {
    name: 'set unit',
    unit: 'thornbeck',
    body: { ...thornbeck, adviceLine: { weekdays: [1, 2, 3, 4, 5], fromTime: '09:00', untilTime: '16:30' } },
  });
  await server.done('clerk', referralOf('wilhelmina'));
  await workUp(server, 'wilhelmina', '2026-11-26');
  await write('contact', { telephone: '07700 900123' }, 'clerk');
  await write('dose', { medicine: 'zoledronic acid 5 mg', setting: 'this service', batch: 'PA-2391' });
});
afterAll(() => server.close());

it('a Thursday’s first dose: to come for Friday, and nothing on today’s pile yet', async () => {
  const { people, adviceLine } = await list();
  expect(people).toMatchObject([{ patient: 'wilhelmina', tryOn: '2026-11-27', when: 'to come', attempts: 0 }]);
  expect(adviceLine).toMatchObject({ openToday: true });
  const { work } = await server.read<TodayView>('/api/today');
  expect(work.map(({ what }) => what)).not.toContain('to be asked how they are after the dose');
});

it('not reached on Friday: counted, tried again on Monday, on the pile of the day', async () => {
  byDays(1);
  await write('call', { route: 'telephone', about: 'aftercare', reached: false, note: 'rings out' }, 'clerk');
  byDays(3);
  const { people } = await list();
  expect(people).toMatchObject([{ tryOn: '2026-11-30', when: 'overdue', attempts: 1, contact: 1 }]);
  expect(people[0]?.lastAttempt).toBe('27 Nov 2026, telephone: not reached; rings out');
  const { work } = await server.read<TodayView>('/api/today');
  expect(work).toContainEqual({
    what: 'to be asked how they are after the dose',
    count: 1,
    to: '/aftercare',
    oldest: '2026-11-30',
  });
});

it('asked on Monday: a red flag waits to be passed on, the reaction stands on the day it began', async () => {
  const { dose, limits } = await hers();
  expect(limits).toEqual({ feverTooHighCelsius: 39, feverTooLongDays: 3 });
  await told(
    answers(dose?.entry ?? '', {
      feels: 'rough',
      felt: [{ what: 'fever or shivering', beganOn: '2026-11-26' as PlainDate, severity: 'severe' }],
      notFelt: reactionSymptoms.slice(1),
    }),
  );
  const { people, redFlags, asked, reports } = await list();
  expect(people, 'both contacts are made').toEqual([]);
  // Four days of fever: over the protocol's three.
  expect(redFlags).toMatchObject([
    { patient: 'wilhelmina', flags: [{ name: 'fever that is too long or too high', urgency: 'today' }] },
  ]);
  expect(asked).toHaveLength(1);
  expect(reports).toMatchObject([{ on: '2026-11-26', reported: [] }]);
  const about = redFlags[0]?.entry;
  await write('red-flag-passed-on', { about, to: 'Dr Finch', theyWill: 'sees her at 15:00', personWasTold: 'come in' });
  expect((await list()).redFlags).toEqual([]);
});

it('the report: fields and plain text, no name and no number, what the notes do not say is named', async () => {
  const [row] = (await hers()).reports;
  const url = `/api/people/wilhelmina/reaction-report?reaction=${row?.reaction ?? ''}`;
  const { text, missing } = await server.read<ReactionReportView>(url);
  for (const field of ['Medicine: zoledronic acid 5 mg', 'Batch: PA-2391', 'Began on: 26 Nov 2026', 'Severity: severe'])
    expect(text).toContain(field);
  // Patient, reporter, medicine, reaction: the four without which it is none.
  expect(text).toMatch(/Initials: W\. A\.[\s\S]*What happened: fever[\s\S]*Name: Nora Nurse/);
  expect(text).not.toMatch(/Arkwright|999 204/);
  expect(missing).toEqual(expect.arrayContaining(['outcome', 'lasted']));
  // Nothing is ticked for a person.
  expect(text.match(/\[ \]/g)).toHaveLength(7);
  expect(text).not.toMatch(/\[x\]/i);
  await write('reaction-reported', { reaction: row?.reaction, to: 'national scheme', number: 'N-1' });
  expect((await list()).reports).toEqual([]);
  expect(problemOf(await server.ask(url, { as: 'clerk' })).status).toBe(403);
  expect((await server.ask('/api/people/wilhelmina/reaction-report?reaction=none', { as: 'nurse' })).statusCode).toBe(
    404,
  );
});

it('a value of a test in the report has its grade where the numbers settle one', async () => {
  const value = async (analyte: string, quantity: object, on: string, more: object = {}) =>
    server.done('nurse', {
      name: 'record',
      patient: 'wilhelmina',
      line: { kind: 'result', body: { analyte, quantity: { comparator: '', ...quantity }, ...more }, effectiveAt: on },
    });
  const reaction = (await server.read<PersonView>('/api/people/wilhelmina')).entries.find(
    ({ kind }) => kind === 'reaction',
  );
  await value('adjusted calcium', { value: '1.90', unit: 'mmol/L' }, '2026-11-28', { referenceLow: '2.20' });
  // Her own earlier one is 70 umol/L: 1.5 times that is 105; no upper limit was printed.
  await value('creatinine', { value: '106', unit: 'umol/L' }, '2026-11-28');
  const url = `/api/people/wilhelmina/reaction-report?reaction=${reaction?.id ?? ''}`;
  const { text } = await server.read<ReactionReportView>(url);
  expect(text).toContain('adjusted calcium 1.90 mmol/L (sample of 28 Nov 2026): low calcium grade 2, CTCAE 5.0');
  expect(text).toContain(
    'creatinine 106 umol/L (sample of 28 Nov 2026): creatinine increased at least grade 2, CTCAE 5.0',
  );
  expect(text).toContain('creatinine 70 umol/L (sample of 26 Nov 2026);');
});

it('a clerk does not end the asking, and nobody rings who said no to all contact', async () => {
  await server.done(
    'clerk',
    referralOf('ada', { given: 'Ada', family: 'Brindle', born: '1940-02-29', number: '999 204 7721' }),
  );
  await workUp(server, 'ada', today());
  const line = (kind: string, body: object) => ({
    name: 'record',
    patient: 'ada',
    line: { kind, body, effectiveAt: today() },
  });
  const dose = { medicine: 'zoledronic acid 5 mg', setting: 'this service', batch: 'PA-2391' };
  await server.done('nurse', line('dose', dose));
  const { dose: given } = await server.read<AftercareOfPersonView>('/api/people/ada/aftercare');
  const stop = line('aftercare', { outcome: 'not asked further', dose: given?.entry, reason: 'no reply' });
  expect(problemOf(await server.act('clerk', stop)).refusals).toMatchObject([{ name: 'not-yours-to-do' }]);
  expect((await list()).people).toHaveLength(1);
  byDays(1);
  await server.done('nurse', line('refusal', { to: 'all contact', words: 'leave me alone' }));
  expect((await list()).people).toEqual([]);
  expect((await server.read<AftercareOfPersonView>('/api/people/ada/aftercare')).noCall).toMatch(/no to all contact/);
});
