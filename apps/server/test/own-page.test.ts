/**
 * The page a person opens from home: who may open it, what it tells, and what becomes of what they tell us. A random address that
 * ends, the birth date asked, nothing clinical in the address, answers that clear nothing: common practice, no source; a reply by
 * link that somebody has to see: hazard 82 of the safety page; that a message says too much: hazard 48.
 */
import { randomUUID } from 'node:crypto';
import { aftercareScript, dangerSignNames, plainDate, reactionSymptoms } from '@twelvemonth/clinical';
import type {
  AftercareView,
  HandedOverPage,
  OwnPageView,
  PersonView,
  TodayView,
  VisitView,
} from '@twelvemonth/exchange';
import type { FastifyInstance, LightMyRequestResponse } from 'fastify';
import ICAL from 'ical.js';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { movableClock } from '../../../tests/support/movable-clock.ts';
import { readCommandLine } from '../src/command-line.ts';
import { ownPageListener } from '../src/own-page/listener.ts';
import { passes } from '../src/own-page/pass.ts';
import {
  type OwnServer,
  cookieOf,
  ownServer,
  problemOf,
  referralOf,
  sessionOn,
  setUp,
  workUp,
} from './support/own-server.ts';

const clock = movableClock('2026-11-24T09:00');
const today = (): string => plainDate(clock.local('Europe/London').today);
let server: OwnServer;
let pages: FastifyInstance;
const logged: string[] = [];

const handOver = (patient: string, expiresOn: string, as: 'clerk' | 'auditor' = 'clerk') =>
  server.ask('/api/own-page', { method: 'POST', as, body: { patient, expiresOn } });
const pathOf = async (patient: string, expiresOn = '2026-12-03'): Promise<string> => {
  const answer = await handOver(patient, expiresOn);
  if (answer.statusCode !== 200) throw new Error(answer.body);
  return new URL(answer.json<HandedOverPage>().address).pathname;
};
const get = (url: string, cookie = ''): Promise<LightMyRequestResponse> =>
  pages.inject({ url, headers: { cookie, host: 'localhost' } });
const post = (url: string, form: Record<string, string>, cookie = ''): Promise<LightMyRequestResponse> =>
  pages.inject({
    method: 'POST',
    url,
    headers: { cookie, host: 'localhost', 'content-type': 'application/x-www-form-urlencoded' },
    payload: new URLSearchParams(form).toString(),
  });
const hers = { day: '2', month: '06', year: '1941' };
const opened = async (path: string): Promise<string> => cookieOf(await post(path, hers));
const view = (patient = 'wilhelmina') => server.read<OwnPageView>(`/api/people/${patient}/own-page`);
const sheetIn = ({ body }: LightMyRequestResponse): string => /name="sheet" value="([^"]+)"/.exec(body)?.[1] ?? '';
const write = (kind: string, body: object, patient = 'wilhelmina', as: 'clerk' | 'nurse' = 'clerk') =>
  server.done(as, { name: 'record', patient, line: { kind, body, effectiveAt: today() } });
const workNames = async (): Promise<string[]> =>
  (await server.read<TodayView>('/api/today?unit=thornbeck')).work.map(({ what }) => what);

beforeAll(async () => {
  server = await ownServer({ clock, ownPageAddress: () => 'https://pages.thornbeck.example' });
  pages = await ownPageListener(server.atHand, {
    tls: undefined,
    behindProxy: false,
    onlyThisMachine: true,
    log: { level: 'info', stream: { write: (line) => logged.push(line) } },
  });
  await setUp(server, '2026-11-24');
  await server.done('clerk', referralOf('wilhelmina'));
  await workUp(server, 'wilhelmina', '2026-11-24');
  await server.done('nurse', sessionOn('s1', '2026-12-03'));
  await server.done('clerk', { name: 'book', patient: 'wilhelmina', session: 's1', place: 1 });
});
afterAll(async () => {
  await pages.close();
  await server.close();
});

describe('who may open it', () => {
  it('says nothing before the birth date, and the right one opens it', async () => {
    const path = await pathOf('wilhelmina');
    const asked = await get(path);
    expect(asked.body).toContain('date of birth');
    expect(asked.body).not.toMatch(/Wilhelmina|Thornbeck|December/);
    expect((await post(path, { ...hers, day: '3' })).statusCode).toBe(403);
    const right = await post(path, hers);
    expect([right.statusCode, right.headers.location]).toEqual([303, path]);
    const page = await get(path, cookieOf(right));
    expect(page.body).toContain('Thursday 3 December 2026 at 09:00, Thornbeck Day Unit');
    expect(page.body).not.toMatch(/Wilhelmina|zoledron|osteopor/i);
    expect(String(right.headers['set-cookie'])).toMatch(/HttpOnly; SameSite=Strict/);
  });
  it('an address that never was, one that is over and one that was closed answer alike', async () => {
    const path = await pathOf('wilhelmina', today());
    const newer = await pathOf('wilhelmina', '2026-12-03');
    const never = await get(`/p/${'a'.repeat(43)}`);
    expect(never.statusCode).toBe(404);
    expect((await get(path)).body).toBe(never.body); // a newer one closed it
    await write('own-page', { is: 'closed', reason: 'the letter went to an old address' });
    expect((await get(newer)).body).toBe(never.body);
    expect((await get('/api/today')).body).toBe(never.body); // nothing else is served here
  });
  it('ends with its last day', async () => {
    await server.done('clerk', referralOf('edmund', { given: 'Edmund', family: 'Vole', number: '999 700 0116' }));
    const path = await pathOf('edmund', today());
    expect((await get(path)).statusCode).toBe(200);
    clock.moveOn(24 * 60);
    expect((await get(path)).statusCode).toBe(404);
    expect((await view('edmund')).open).toBeUndefined();
    expect(problemOf(await handOver('edmund', '2026-11-01')).detail).toContain('over already');
  });
  it('a pass for one page opens no other, no made-up one opens any, and it ends after two hours', async () => {
    const first = await opened(await pathOf('wilhelmina'));
    const other = await pathOf('wilhelmina');
    expect((await get(other, first)).body).toContain('date of birth');
    expect((await get(other, 'own-page=9999999999999.abc')).body).toContain('date of birth');
    let now = 0;
    const pass = passes(() => now);
    const cookie = pass.give('page', true);
    expect(cookie).toContain('Secure');
    expect(pass.holds('page', cookie)).toBe(true);
    expect(pass.holds('another', cookie)).toBe(false);
    now = 121 * 60_000;
    expect(pass.holds('page', cookie)).toBe(false);
  });
  it('wrong dates are slowed down, and ten of them close it for good, in the notes', async () => {
    const path = await pathOf('wilhelmina');
    for (let one = 1; one <= 5; one += 1)
      expect((await post(path, { ...hers, year: String(1900 + one) })).statusCode).toBe(403);
    const slowed = await post(path, hers);
    expect([slowed.statusCode, slowed.body]).toEqual([429, expect.stringContaining('Please wait')]);
    const from = (remote: string, year: string) =>
      pages.inject({
        method: 'POST',
        url: path,
        remoteAddress: remote,
        headers: { host: 'localhost', 'content-type': 'application/x-www-form-urlencoded' },
        payload: new URLSearchParams({ ...hers, year }).toString(),
      });
    for (let one = 6; one <= 9; one += 1) expect((await from('192.0.2.7', String(1900 + one))).statusCode).toBe(403);
    expect((await from('192.0.2.7', '1910')).statusCode).toBe(404);
    expect((await view()).open).toBeUndefined();
    const person = await server.read<PersonView>('/api/people/wilhelmina');
    expect(JSON.stringify(person.entries)).toContain('10 wrong birth dates were typed');
  });
  it('a form from another site is refused, and no line of the log holds an address or an answer', async () => {
    const path = await pathOf('wilhelmina');
    const foreign = await pages.inject({
      method: 'POST',
      url: path,
      headers: {
        host: 'localhost',
        origin: 'https://elsewhere.example',
        'content-type': 'application/x-www-form-urlencoded',
      },
      payload: new URLSearchParams(hers).toString(),
    });
    expect(foreign.statusCode).toBe(403);
    expect(logged.join('')).not.toContain(path.slice(3));
  });
  it('is not handed over by who only reads, to who said no to all contact, or without a whole birth date', async () => {
    expect((await handOver('wilhelmina', '2026-12-03', 'auditor')).statusCode).toBe(403);
    await server.done(
      'clerk',
      referralOf('hester', { given: 'Hester', family: 'Quill', born: '1939', number: '999 700 0124' }),
    );
    expect(problemOf(await handOver('hester', '2026-12-03')).detail).toContain('not known to the day');
    await server.done('clerk', referralOf('ottoline', { given: 'Ottoline', family: 'Marsh', number: '999 700 0132' }));
    const path = await pathOf('ottoline');
    await write('refusal', { to: 'all contact', words: 'wants no more letters' }, 'ottoline', 'nurse');
    expect((await get(path)).statusCode).toBe(404);
    expect(problemOf(await handOver('ottoline', '2026-12-03')).detail).toContain('no to all contact');
    expect((await view('ottoline')).notHere).toContain('all contact');
  });
});

describe('what they tell us', () => {
  let path = '';
  let cookie = '';
  let sheet = '';
  beforeEach(async () => {
    path = await pathOf('wilhelmina');
    cookie = await opened(path);
    sheet = sheetIn(await get(path, cookie));
  });
  const tell = (form: Record<string, string>) => post(`${path}/told`, { sheet, ...form }, cookie);

  it('reaches the work of the day and the visit as said on that day, and clears nothing', async () => {
    const before = await server.read<PersonView>('/api/people/wilhelmina');
    const thanks = await tell({
      teeth: 'yes',
      'teeth-words': 'one comes out on Friday',
      thigh: 'no',
      'can-drink': 'yes',
    });
    expect(thanks.body).toContain('A nurse looks at it on a working day.');
    expect(await workNames()).toContain('told us before a visit: to look at');
    const { told } = await view();
    expect(told[0]).toMatchObject({
      waits: true,
      words: expect.stringContaining('teeth or jaw yes ("one comes out on Friday")'),
    });
    const visit = await server.read<VisitView>('/api/people/wilhelmina/visit?on=2026-12-03');
    const beside = Object.fromEntries(visit.questions.map(({ id, toldUs }) => [id, toldUs]));
    expect(beside['thigh']).toBe('25 Nov 2026, own page: no');
    expect(beside['teeth']).toContain('25 Nov 2026, own page: yes ("one comes out on Friday")');
    expect(visit.questions.every(({ answer }) => answer === undefined)).toBe(true);
    const after = await server.read<PersonView>('/api/people/wilhelmina');
    expect(after.readiness).toEqual(before.readiness);
    await write(
      'looked-again',
      { about: told[0]?.entry, finding: 'rang: wisdom tooth, place moved' },
      'wilhelmina',
      'nurse',
    );
    expect(await workNames()).not.toContain('told us before a visit: to look at');
    expect((await view()).told[0]).toMatchObject({ waits: false, finding: 'rang: wisdom tooth, place moved' });
  });
  it('is taken in once however often it is sent, and again when it was changed', async () => {
    const { length } = (await view()).told;
    await tell({ eye: 'no' });
    await tell({ eye: 'no' });
    expect((await view()).told).toHaveLength(length + 1);
    await tell({ eye: 'no', teeth: 'no' });
    expect((await view()).told).toHaveLength(length + 2);
  });
  it('where all is well nobody has to look; a wish for another day waits, and the place stays', async () => {
    await tell({ 'unwell-now': 'no', 'can-drink': 'yes' });
    expect((await view()).told[0]?.waits).toBe(false);
    expect((await tell({ 'other-day': 'not a Thursday' })).body).toContain('your place is still yours');
    const { told } = await view();
    expect(told[0]).toMatchObject({
      waits: true,
      words: expect.stringContaining('asks for another day: "not a Thursday"'),
    });
    expect((await server.read<PersonView>('/api/people/wilhelmina')).place?.on).toBe('2026-12-03');
    await write('looked-again', { about: told[0]?.entry, finding: 'rang, keeps the day' }, 'wilhelmina', 'nurse');
  });
  it('an empty form, one that is not ours and one too long are not taken in', async () => {
    const { length } = (await view()).told;
    expect((await tell({})).statusCode).toBe(422);
    expect((await tell({ teeth: 'perhaps' })).statusCode).toBe(422);
    expect((await tell({ eye: 'yes', 'eye-words': 'x'.repeat(600) })).statusCode).toBe(422);
    expect((await tell({ eye: 'yes', 'eye-words': 'x'.repeat(30_000) })).statusCode).toBe(404);
    expect((await post(`${path}/told`, { sheet, eye: 'no' })).body).toContain('date of birth');
    expect((await view()).told).toHaveLength(length);
  });
  it('the pack and the calendar open with the page, and with nothing else', async () => {
    const pack = await get(`${path}/pack`, cookie);
    expect(pack.body).toContain('Getting ready');
    const file = await get(`${path}/visit.ics`, cookie);
    const event = new ICAL.Component(ICAL.parse(file.body)).getFirstSubcomponent('vevent');
    expect(String(event?.getFirstPropertyValue('dtstart'))).toBe('2026-12-03T09:00:00');
    expect(file.body).not.toMatch(/zoledron|osteopor/i);
    for (const part of ['pack', 'visit.ics']) expect((await get(`${path}/${part}`)).body).toContain('date of birth');
  });
  it('a death closes the page at once', async () => {
    await server.done('nurse', {
      name: 'record',
      patient: 'edmund',
      line: { kind: 'triage', body: { outcome: 'accepted' }, effectiveAt: today() },
    });
    const of = await pathOf('edmund');
    await write('died', { source: 'his daughter rang' }, 'edmund', 'nurse');
    expect((await get(of)).statusCode).toBe(404);
  });
});

it('the same questions print, and what comes back on paper is typed in', async () => {
  const paper = await server.ask('/api/people/wilhelmina/own-page/questions', { as: 'clerk' });
  expect(paper.body).toContain('Can you drink plenty of water the day before and on the day?');
  expect(paper.body).toContain('Wilhelmina Arkwright-Poe, born 2 June 1941');
  await write('told-ahead', { how: 'on paper', answers: { thigh: { answer: 'yes' } } });
  expect((await view()).told[0]).toMatchObject({
    waits: true,
    words: 'told us before the visit, on paper: thigh, hip or groin yes',
  });
});

describe('after the dose, at any hour', () => {
  let path = '';
  let cookie = '';
  const whole = (): Record<string, string> => ({
    sheet: randomUUID(),
    who: 'the person',
    feels: 'a little rough',
    drinks: 'as usual or more',
    paracetamol: 'as told',
    ...Object.fromEntries(dangerSignNames.map((sign) => [`sign ${sign}`, 'no'])),
    ...Object.fromEntries(reactionSymptoms.map((what) => [`felt ${what}`, 'no'])),
  });
  const tell = (form: Record<string, string>) => post(`${path}/after`, form, cookie);
  const list = () => server.read<AftercareView>('/api/aftercare?unit=thornbeck');

  it('nobody is asked who had none', async () => {
    path = await pathOf('wilhelmina');
    cookie = await opened(path);
    expect((await get(path, cookie)).body).not.toContain(`${path}/after`);
    expect((await get(`${path}/after`, cookie)).statusCode).toBe(404);
  });
  it('the script of the telephone, nothing answered beforehand', async () => {
    await write(
      'dose',
      { medicine: 'zoledronic acid 5 mg', setting: 'this service', batch: 'PA-2391' },
      'wilhelmina',
      'nurse',
    );
    clock.moveOn(24 * 60);
    path = await pathOf('wilhelmina', '2026-12-20');
    cookie = await opened(path);
    expect((await get(path, cookie)).body).toContain(`${path}/after`);
    const form = (await get(`${path}/after`, cookie)).body;
    for (const question of aftercareScript.filter(({ id }) => id === 'sign' || id === 'symptom'))
      expect(form).toContain(question.asks.replaceAll("'", '&#39;'));
    expect(form).not.toMatch(/ checked| selected/);
    expect(form.length).toBeLessThan(60_000);
  });
  it('a danger sign is answered with what to do now, even where the form is not whole, and what was said stays', async () => {
    const { feels: _, ...rest } = whole();
    const answer = await tell({ ...rest, 'sign chest pain or stroke signs': 'yes', words: 'since midnight' });
    expect(answer.statusCode).toBe(422);
    expect(answer.body).toContain('Ring 999 now. Do not wait for us, and do not drive yourself.');
    expect(answer.body).toContain(`Please also answer: ${aftercareScript.find(({ id }) => id === 'feels')?.asks}`);
    expect(answer.body).toContain('value="since midnight"');
    expect((await list()).redFlags).toEqual([]);
  });
  it('whole, it reaches the list and the notes like a call: red flags first, signs that hold a dose hold it', async () => {
    const answer = await tell({
      ...whole(),
      'sign red or painful eye': 'yes',
      'felt fever or shivering': 'yes',
      'felt fever or shivering began': today(),
      'felt fever or shivering how bad': 'moderate',
      'felt fever or shivering over': 'not yet',
      temperature: '38,4',
    });
    expect(answer.statusCode).toBe(200);
    expect(answer.body).toContain('Your eye must be seen today at an eye casualty.');
    const { redFlags, asked } = await list();
    expect(redFlags).toMatchObject([{ patient: 'wilhelmina', flags: [{ name: 'red or painful eye' }] }]);
    expect(asked[0]?.text).toContain('38.4');
    const person = await server.read<PersonView>('/api/people/wilhelmina');
    expect(person.entries.map(({ kind }) => kind)).toEqual(
      expect.arrayContaining(['symptom', 'reaction', 'aftercare', 'call']),
    );
  });
  it('nothing to worry about says what to do if it gets worse, and is taken in once', async () => {
    const form = whole();
    const before = (await list()).asked.length;
    expect((await tell(form)).body).toContain('If you get worse, do not wait for us.');
    await tell(form);
    expect((await list()).asked).toHaveLength(before + 1);
  });
  it('a temperature no body has, a day before the dose and half an answer are asked again, not taken in', async () => {
    const before = (await list()).asked.length;
    for (const wrong of [
      { temperature: '61' },
      { temperature: 'hot' },
      { 'felt headache': 'yes' },
      {
        'felt headache': 'yes',
        'felt headache began': '2026-01-01',
        'felt headache how bad': 'mild',
        'felt headache over': 'not yet',
      },
    ])
      expect([wrong, (await tell({ ...whole(), ...wrong })).statusCode]).toEqual([wrong, 422]);
    expect((await list()).asked).toHaveLength(before);
  });
  it('once the recall for the next dose has begun it is asked in that talk, not here', async () => {
    clock.moveOn(330 * 24 * 60);
    path = await pathOf('wilhelmina', today());
    cookie = await opened(path);
    expect((await get(path, cookie)).body).not.toContain(`${path}/after`);
    expect((await get(`${path}/after`, cookie)).statusCode).toBe(404);
  });
});

describe('on the command line', () => {
  const pagesIn = (...args: string[]) => readCommandLine(args, {});
  it('is not served unless a port is given, and never in the clear beyond this machine', () => {
    expect(pagesIn()).toMatchObject({ options: { pages: undefined } });
    expect(pagesIn('--page-port', '4311')).toMatchObject({ options: { pages: { host: '127.0.0.1', port: 4311 } } });
    expect(pagesIn('--page-host', '0.0.0.0')).toEqual({ refused: expect.stringContaining('without --page-port') });
    expect(pagesIn('--page-port', '4311', '--page-host', '0.0.0.0')).toEqual({
      refused: expect.stringContaining('--page-tls-cert'),
    });
    expect(pagesIn('--page-port', '4311', '--page-url', 'http://pages.example')).toEqual({
      refused: expect.stringContaining('https'),
    });
    expect(pagesIn('--page-port', 'x')).toEqual({ refused: expect.stringContaining('not a port') });
  });
});
