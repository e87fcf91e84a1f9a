/** An opening counts on people who work here, each as what they are. Hazards 25 and 35: the unit's safety rules. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openToday, planToday } from './support/at-the-chair.ts';
import { type OwnServer, type Somebody, ownServer, people, problemOf, setUp } from './support/own-server.ts';

let server: OwnServer;
beforeAll(async () => {
  server = await ownServer();
  await setUp(server);
  await planToday(server);
});
afterAll(() => server.close());

const staffOf = (who: Somebody): string => server.atHand.accounts.named(people[who].username)?.staff ?? '';
const competence = (staff: string, role: string) => ({
  name: 'record competence',
  unit: 'thornbeck',
  body: { staff, role, what: 'medicines into a vein', until: '2027-06-30' },
});
const opening = (present: readonly { staff: string; role: string }[], secondCheckers: readonly string[]) => ({
  name: 'open session',
  session: 'thornbeck-2026-11-25',
  unit: 'thornbeck',
  body: {
    present,
    secondCheckers,
    kit: { checkedBy: 'Nora', complete: true, expiresOn: '2027-03-31' },
    chairs: 6,
    counts: [],
  },
});
async function troubles(what: Record<string, unknown>): Promise<readonly (string | undefined)[][]> {
  const answer = await server.act('nurse', what);
  return answer.statusCode === 200 ? [] : (problemOf(answer).refusals ?? []).map(({ field, says }) => [field, says]);
}

describe('a competence is shown by somebody who works here, as what they are', () => {
  test('nobody knows them', async () =>
    expect(await troubles(competence('nobody-here', 'nurse'))).toEqual([
      ['body.staff', '“nobody-here” does not work here.'],
    ]));
  test('an assistant is no nurse', async () =>
    expect(await troubles(competence(staffOf('assistant'), 'nurse'))).toEqual([
      ['body.staff', `${people.assistant.name} is not here as nurse.`],
    ]));
});

describe('a session is opened by people who work here', () => {
  test('two whom nobody knows do not open it, nor an assistant who is called a nurse', async () => {
    const nurse = { staff: staffOf('nurse'), role: 'nurse' };
    const called = { staff: staffOf('assistant'), role: 'nurse' };
    const unknown = { staff: 'nobody-here', role: 'nurse' };
    expect(await troubles(opening([nurse, unknown, called], [nurse.staff, unknown.staff, called.staff]))).toEqual([
      ['body.present.1.staff', '“nobody-here” does not work here.'],
      ['body.present.2.staff', `${people.assistant.name} is not here as nurse.`],
      ['body.secondCheckers.1', '“nobody-here” does not work here.'],
      [
        'body.secondCheckers.2',
        `${people.assistant.name} is not here as nurse in charge or nurse or prescriber or pharmacist.`,
      ],
    ]);
  });
  test('nor one who has left', async () => {
    await openToday(server);
    await server.atHand.accounts.change(staffOf('checker'), { active: false });
    const present = (['nurse', 'checker'] as const).map((who) => ({ staff: staffOf(who), role: 'nurse' }));
    expect(
      await troubles(
        opening(
          present,
          present.map(({ staff }) => staff),
        ),
      ),
    ).toEqual([
      ['body.present.1.staff', `${people.checker.name} does not work here.`],
      ['body.secondCheckers.1', `${people.checker.name} does not work here.`],
    ]);
  });
});
