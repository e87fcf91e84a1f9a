/** Letters over the wire: what the notes call for, from draft to answer, and what is not printed with its reason. */
import type { LettersOfPersonView, LettersView, WrittenLetterView } from '@twelvemonth/exchange';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  type OwnServer,
  type Somebody,
  ownServer,
  problemOf,
  referralOf,
  sessionOn,
  setUp,
  workUp,
} from './support/own-server.ts';

let server: OwnServer;
const write = (as: Somebody, patient: string, kind: string, body: object, effectiveAt = '2026-11-25') =>
  server.act(as, { name: 'record', patient, line: { kind, body, effectiveAt } });
const written = (query: string, as: Somebody = 'nurse', patient = 'wilhelmina') =>
  server.read<WrittenLetterView>(`/api/people/${patient}/written-letter?${query}`, as);
const list = () => server.read<LettersView>('/api/letters');
const called = async () => (await list()).calledFor.map(({ to, about }) => `${to}: ${about}`);

const letters = { postalAddress: '4 Weir Lane, Thornbeck', language: 'en-GB', answerWithinDays: 14 };
const contact = {
  address: '1 Heron Street, Thornbeck',
  familyDoctor: 'Dr A. Penrose, Thornbeck Surgery',
  dentist: 'Mill Lane Dental Practice',
};

beforeAll(async () => {
  server = await ownServer();
  await setUp(server);
  await server.done('clerk', referralOf('wilhelmina'));
  await workUp(server, 'wilhelmina');
  await server.done('nurse', sessionOn('s1', '2026-12-03'));
});
afterAll(() => server.close());

/** The unit says how it writes. */
async function unitWrites(): Promise<void> {
  const { units } = await server.read<{ units: Record<string, unknown>[] }>('/api/settings', 'lead');
  const {
    unit: _unit,
    protocolVersion: _version,
    protocolReviewBy: _review,
    protocolUnsigned: _unsigned,
    ...body
  } = units[0] ?? {};
  await server.done('lead', { name: 'set unit', unit: 'thornbeck', body: { ...body, letters } });
}

describe('what is missing', () => {
  it('without days to answer in, a letter that asks for an answer is not written: no number is made up', async () => {
    const answer = await server.ask('/api/people/wilhelmina/written-letter?to=dentist&about=request', { as: 'nurse' });
    expect([answer.statusCode, problemOf(answer).detail]).toEqual([
      409,
      expect.stringContaining('within how many days'),
    ]);
    await unitWrites();
    const { notPrintable } = await written('to=dentist&about=request');
    expect(notPrintable).toEqual(['no dentist is named in the notes']);
  });
  it('a place is booked: an invitation is called for, and not printable without an address', async () => {
    expect(await called()).toEqual([]);
    await server.done('clerk', { name: 'book', patient: 'wilhelmina', session: 's1', place: 1 });
    expect((await list()).calledFor).toMatchObject([
      { patient: 'wilhelmina', about: 'invitation', notPrintable: ['no address of the person is in the notes'] },
    ]);
    await write('clerk', 'wilhelmina', 'contact', contact);
    expect((await list()).calledFor).toMatchObject([{ about: 'invitation', notPrintable: [] }]);
  });
  it('words that are too hard are not printed', async () => {
    const words = encodeURIComponent('Administration necessitates precautionary rehydration notwithstanding.');
    expect((await written(`to=patient&about=invitation&words=${words}`)).notPrintable).toEqual([
      expect.stringMatching(/^too hard to read: reading grade/),
    ]);
  });
});

describe('from draft to answer', () => {
  it('a clerk drafts; the letter names the nurse who signs; then it is printed and sent once', async () => {
    const draft = await written('to=patient&about=invitation', 'clerk');
    const { to, about, sheet } = draft;
    await write('clerk', 'wilhelmina', 'letter-drafted', { to, about, sheet });
    expect(await called()).toEqual([]);
    const [waiting] = (await list()).toSign;
    expect(waiting).toMatchObject({ name: 'Wilhelmina Arkwright-Poe', by: 'Clara Clerk' });

    const toSign = await written(`to=patient&about=invitation&draft=${waiting?.entry}`);
    expect(toSign.sheet.closing).toEqual(['Yours sincerely', 'Nora Nurse, nurse in charge']);
    expect(toSign.text).toContain('Thursday 3 December 2026');
    const signed = {
      to,
      about,
      version: toSign.sheet.version,
      text: toSign.text,
      sheet: toSign.sheet,
      draft: waiting?.entry,
    };
    expect((await write('clerk', 'wilhelmina', 'letter', signed)).statusCode).not.toBe(200);
    expect(
      (
        await server.act(
          'nurse',
          { name: 'record', patient: 'wilhelmina', line: { kind: 'letter', body: signed, effectiveAt: '2026-11-25' } },
          { role: 'nurse in charge' },
        )
      ).statusCode,
    ).toBe(200);

    const [toSend] = (await list()).toSend;
    const paper = await server.ask('/api/letters/document', { as: 'clerk' });
    expect(paper.headers['content-security-policy']).toContain("default-src 'none'");
    expect(paper.body).toContain('We have a place for you on Thursday 3 December 2026');
    expect((await write('clerk', 'wilhelmina', 'letter-sent', { letter: toSend?.entry, by: 'post' })).statusCode).toBe(
      200,
    );
    const twice = await write('clerk', 'wilhelmina', 'letter-sent', { letter: toSend?.entry, by: 'post' });
    expect(problemOf(twice).refusals?.[0]?.name).toBe('step-already-done');
    expect((await list()).sent[0]?.state).toMatch(
      /^drafted by Clara Clerk on .*; signed by Nora Nurse on .*; sent by post on /,
    );
    expect(problemOf(await server.ask('/api/letters/document', { as: 'clerk' })).detail).toContain('No signed letter');
  });
  it('a request to the dentist has a form and a day on which it is chased', async () => {
    const request = await written('to=dentist&about=request');
    expect(request.notPrintable).toEqual([]);
    expect(request.chaseOn).toBe('2026-12-09');
    const { to, about, sheet, text, chaseOn } = request;
    const body = { to, about, version: sheet.version, sheet, text, chaseOn };
    await server.done(
      'nurse',
      { name: 'record', patient: 'wilhelmina', line: { kind: 'letter', body, effectiveAt: '2026-11-25' } },
      { role: 'nurse' },
    );
    const [toSend] = (await list()).toSend;
    await write('clerk', 'wilhelmina', 'letter-sent', { letter: toSend?.entry, by: 'post' });
    expect((await list()).toAnswer).toMatchObject([{ to: 'dentist', due: '2026-12-09' }]);
    const kept = await server.ask(`/api/people/wilhelmina/letters/${toSend?.entry}/document`, { as: 'nurse' });
    expect(kept.body).toContain('We cannot see them in time');
  });
  it('a place that moves calls for a new invitation', async () => {
    await server.done('nurse', sessionOn('s2', '2026-12-08'));
    await server.done('clerk', {
      name: 'move',
      patient: 'wilhelmina',
      from: 's1',
      to: 's2',
      place: 1,
      reason: 'asked for another day',
      askedBy: 'the patient',
    });
    expect(await called()).toEqual(['patient: invitation']);
  });
  it('who reads nothing of patients reads no letters', async () => {
    for (const path of ['letters', 'people/wilhelmina/letters', 'letters/document'])
      expect((await server.ask(`/api/${path}`, { as: 'administrator' })).statusCode).toBe(403);
  });
});

describe('an end', () => {
  it('a no to all contact leaves letters to others; a death ends them all', async () => {
    await write('nurse', 'wilhelmina', 'refusal', { to: 'all contact', words: 'leave me be' });
    expect(await called()).toEqual([]);
    expect((await written('to=patient&about=invitation')).notPrintable).toEqual([
      expect.stringContaining('no to all contact'),
    ]);
    await write('nurse', 'wilhelmina', 'died', { source: 'family doctor' });
    const { toAnswer, calledFor } = await list();
    expect([toAnswer.map(({ stopped }) => stopped), calledFor]).toEqual([['they have died'], []]);
    const { choices } = await server.read<LettersOfPersonView>('/api/people/wilhelmina/letters');
    expect(choices.every(({ because }) => because?.includes('has died') === true)).toBe(true);
  });
});
