/** Two notes of one person over HTTP: every list, search and address reads them as one, and apart again. */
import type { PersonView, peopleAnswer, recallAnswer, searchAnswer } from '@twelvemonth/exchange';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { z } from 'zod';
import { noteLookAlikes } from '../src/register/note-look-alikes.ts';
import { enteredBefore } from './support/entered-before.ts';
import { type OwnServer, ownServer, problemOf, referralOf, sessionOn, setUp, workUp } from './support/own-server.ts';

let server: OwnServer;
beforeAll(async () => {
  server = await ownServer();
  await setUp(server);
  await server.done('clerk', referralOf('kept'));
  await workUp(server, 'kept');
  await lookAlikeBefore('second', 'Arkwright Poe', '999 204 9913');
});
afterAll(async () => server.close());

/** Of a register from before anybody looked for people who look alike. */
async function lookAlikeBefore(patient: string, family: string, number: string): Promise<void> {
  const { identity, contact, referral, on } = referralOf(patient, { family, number });
  await enteredBefore(server, patient, { identity, contact, referral }, on);
}

const person = (patient: string): Promise<PersonView> => server.read<PersonView>(`/api/people/${patient}`);
const dose = { kind: 'dose', body: { medicine: 'zoledronic acid 5 mg', setting: 'ward' }, effectiveAt: '2026-05-04' };
const about = { patient: 'kept', other: 'second', reason: 'asked her, she was entered twice' };
const agree = ['birth date', 'telephone'];
const say = { name: 'say one person', ...about, agree };
const confirm = { name: 'confirm one person', ...about, agree };
const verdictOf = async (patient: string, id: string): Promise<string | undefined> =>
  (await person(patient)).readiness?.requirements.find((one) => one.id === id)?.today.verdict;
const search = async (text: string): Promise<string[]> => {
  const answer = await server.ask('/api/search', { method: 'POST', as: 'nurse', body: { text } });
  return answer.json<z.infer<typeof searchAnswer>>().found.map(({ patient, matched }) => `${patient}: ${matched}`);
};

describe('one person in two records', () => {
  test('whoever looks alike and was not compared is noted when the server starts, once', async () => {
    expect(await verdictOf('kept', 'identity')).toBe('ready');
    expect(await noteLookAlikes(server.atHand)).toBe(1);
    expect(await noteLookAlikes(server.atHand)).toBe(0);
    expect(await verdictOf('kept', 'identity')).toBe('cannot say');
    expect(await verdictOf('second', 'identity')).toBe('cannot say');
    const [alike] = (await person('kept')).lookAlikes;
    expect(alike).toMatchObject({ patient: 'second', answer: 'may be one', number: '999 204 9913' });
    expect(alike?.compared.map(({ identifier, says }) => [identifier, says])).toEqual([
      ['name', 'differs'],
      ['former name', 'not recorded in both'],
      ['birth date', 'the same'],
      ['number', 'differs'],
      ['address', 'not recorded in both'],
      ['telephone', 'the same'],
      ['family doctor', 'the same'],
    ]);
  });

  test('two people say that they are one', async () => {
    await server.done('nurse', { name: 'record', patient: 'second', line: dose });
    await server.done('clerk', say);
    expect((await person('kept')).lookAlikes[0]).toMatchObject({ answer: 'proposed', kept: 'kept', agree });
    expect(problemOf(await server.act('clerk', confirm)).type).toContain('not-yours-to-do');
    await server.done('nurse', confirm);
    const view = await person('kept');
    expect(view.together).toMatchObject([{ patient: 'second', number: '999 204 9913', agree }]);
    expect(view.lookAlikes).toEqual([]);
    expect(view.number).toBe('999 204 7713');
  });

  test('every screen reads one person', async () => {
    expect(await verdictOf('kept', 'interval')).toBe('not ready');
    const { people, total } = await server.read<z.infer<typeof peopleAnswer>>('/api/people');
    expect([total, people.map(({ patient }) => patient)]).toEqual([1, ['kept']]);
    expect((await person('second')).patient).toBe('kept');
    expect(await search('9992049913')).toEqual(['kept: number 999 204 9913 of other notes']);
    const entry = (await person('kept')).entries.find(({ kind }) => kind === 'dose');
    expect(entry?.from).toBe('999 204 9913');
    const recall = await server.read<z.infer<typeof recallAnswer>>('/api/recall?unit=thornbeck');
    expect(JSON.stringify(recall)).not.toContain('"second"');
    const document = await server.ask('/api/people/kept/notes', { as: 'nurse' });
    expect(document.body).toContain('from notes 999 204 9913');
  });

  test('their place is booked once, and the joined notes take no entries of their own', async () => {
    await server.done('clerk', sessionOn('s1', '2027-05-04'));
    await server.done('clerk', { name: 'book', patient: 'kept', session: 's1', place: 1 });
    const again = await server.act('clerk', { name: 'book', patient: 'second', session: 's1', place: 2 });
    expect(problemOf(again).type).toContain('read-in-other-notes');
  });

  test('an entry of the joined notes is corrected and withdrawn from the kept ones', async () => {
    const entry = (await person('kept')).entries.find(({ kind }) => kind === 'dose');
    await server.done('nurse', {
      name: 'record',
      patient: 'kept',
      amends: entry?.id,
      line: { ...dose, effectiveAt: '2026-05-14' },
    });
    const corrected = (await person('kept')).course?.doses.map(({ on }) => on);
    expect(corrected).toEqual(['2026-05-14']);
    expect(await server.atHand.store.verify()).toMatchObject({ ok: true });
  });

  test('read apart with a reason: two people on the list, both held until somebody says two', async () => {
    await server.done('nurse', { name: 'read apart', ...about, reason: 'her cousin of the same name' });
    expect((await server.read<z.infer<typeof peopleAnswer>>('/api/people')).total).toBe(2);
    expect(await verdictOf('kept', 'identity')).toBe('cannot say');
    expect((await person('second')).course?.doses.length).toBe(1);
    await server.done('clerk', { name: 'say two people', ...about, differ: ['number', 'name'], reason: 'cousins' });
    expect(await verdictOf('kept', 'identity')).toBe('ready');
    expect(await noteLookAlikes(server.atHand)).toBe(0);
  });
});

test('an entry moved to the right person is struck here, stands there unsigned, and the decision is to be looked at', async () => {
  const result = (await person('kept')).entries.find(({ text }) => text.startsWith('creatinine'));
  const move = { name: 'move entry', patient: 'kept', to: 'second', entry: result?.id, reason: 'filed by name alone' };
  await server.done('nurse', move);
  const from = (await person('kept')).entries.find(({ id }) => id === result?.id);
  expect(from?.withdrawnBecause).toBe('filed by name alone');
  const there = await person('second');
  expect(there.unsigned.map(({ text }) => text.split(' ')[0])).toEqual(['creatinine']);
  expect(there.entries.some(({ kind }) => kind === 'moved-here')).toBe(true);
  const today = await server.read<{ work: { what: string; count: number }[] }>('/api/today?unit=thornbeck');
  expect(today.work.find(({ what }) => what === 'decisions to look at again')?.count).toBe(1);
});
