/** A dose at home over the wire: who is named as its checker works here and may check, and stands in the notes by name. */
import type { PersonView, ProtocolView } from '@twelvemonth/exchange';
import { afterAll, beforeAll, expect, test } from 'vitest';
import {
  type OwnServer,
  type Somebody,
  ownServer,
  people,
  problemOf,
  referralOf,
  setUp,
  workUp,
} from './support/own-server.ts';

const patient = 'edda';
let server: OwnServer;
beforeAll(async () => {
  server = await ownServer();
  await setUp(server, '2026-11-25', { homeDoseByOne: 'where another checked it before they left' });
  await server.done(
    'clerk',
    referralOf(patient, { given: 'Edda', family: 'Marrow', born: '1947-07-19', number: '999 204 7829' }),
  );
  await workUp(server, patient);
});
afterAll(async () => server.close());

const staffOf = (who: Somebody): string => server.atHand.accounts.named(people[who].username)?.staff ?? '';
const given = (more: object) => ({
  name: 'record',
  patient,
  line: {
    kind: 'dose',
    body: { medicine: 'zoledronic acid 5 mg', setting: 'home', batch: 'PA-2391', ...more },
    effectiveAt: '2026-11-25',
  },
});
const before = 'when it was prepared, before they left';

test.each([
  ['somebody unknown', () => 'nobody-here'],
  ['a clerk, who may not check', () => staffOf('clerk')],
])('%s is not taken as its checker', async (_, who) => {
  const answer = await server.act('nurse', given({ checkedBy: who(), checkedWhen: before }));
  expect([answer.statusCode, problemOf(answer).refusals?.[0]]).toMatchObject([
    422,
    { field: 'line.body.checkedBy', says: 'Who is named is not somebody here who may make a second check.' },
  ]);
});

test('those who may are offered, never whoever asks; who did stands in the notes by name, with the protocol', async () => {
  const person = await server.read<PersonView>(`/api/people/${patient}`);
  const offered = person.checkers.map(({ name }) => name);
  expect(offered).toContain(people.checker.name);
  expect(offered).not.toContain(people.nurse.name);
  expect(offered).not.toContain(people.clerk.name);
  await server.done('nurse', given({ checkedBy: staffOf('checker'), checkedWhen: before }));
  const { entries } = await server.read<PersonView>(`/api/people/${patient}`);
  const text = entries.find(({ kind }) => kind === 'dose')?.text ?? '';
  expect(text).toContain(`the second check was made by ${people.checker.name}`);
  expect(text).toMatch(/alone where another checked it before they left/);
});

test('the protocol says it among its policies', async () => {
  const { versions } = await server.read<ProtocolView>('/api/protocols?unit=thornbeck');
  expect(versions.flatMap(({ policies }) => policies)).toContainEqual({
    what: 'dose at home (common practice, no source)',
    says: 'one may give it alone where another checked it when it was prepared, before they left',
  });
});
