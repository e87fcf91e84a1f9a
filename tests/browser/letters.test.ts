/** Letters out: drafted by a clerk from the list with one press, read and signed by a nurse, printed, sent; and one written by hand. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { referralOf, sessionOn, setUp, workUp } from '../../apps/server/test/support/own-server.ts';
import { hands } from '../support/hands.ts';
import { type Service, checked, desktop, service, tablet } from '../support/service.ts';

let at: Service;

const record = (patient: string, kind: string, body: object) => ({
  name: 'record',
  patient,
  line: { kind, body, effectiveAt: '2026-11-25' },
});
const contact = { address: '1 Heron Street, Thornbeck', familyDoctor: 'Dr A. Penrose, Thornbeck Surgery' };
const ada = { given: 'Ada', family: 'Brindle', born: '1940-02-29', number: '999 204 7721' };

beforeAll(async () => {
  at = await service();
  const { server } = at;
  await setUp(server);
  await server.done('clerk', referralOf('wilhelmina'));
  await workUp(server, 'wilhelmina');
  await server.done('clerk', referralOf('ada', ada));
  await workUp(server, 'ada');
  await server.done('nurse', sessionOn('s1', '2026-12-03'));
  for (const [patient, place] of [
    ['wilhelmina', 1],
    ['ada', 2],
  ] as const)
    await server.done('clerk', { name: 'book', patient, session: 's1', place });
  await server.done('clerk', record('wilhelmina', 'contact', contact));
});
afterAll(() => at.close());

it('the unit says how it writes, under settings', async () => {
  const page = await at.signedIn('lead', '/settings', desktop);
  const { press, fill, pick } = hands(page);
  await press(/^Change/);
  await fill('Postal address', '4 Weir Lane, Thornbeck');
  await pick('Language of letters', 'English (British)');
  await fill('Days to answer a letter', '14');
  await fill('Days before', '28, 7, 2');
  await fill('Not before', '08:00');
  await fill('Not after', '20:00');
  await press('Record');
  await page.getByRole('button', { name: /^Change/ }).waitFor();
  await page.context().close();
});

it('drafted by one press, read, signed, printed and sent', async () => {
  const clerk = await at.signedIn('clerk', '/letters', desktop);
  // Ada's address is not known: her invitation is named with its reason and cannot be ticked.
  await clerk.getByText('no address of the person is in the notes').waitFor();
  await hands(clerk).press('Tick all');
  await hands(clerk).press('Draft 1 letter');
  await clerk.getByText('1 of 1 done.').waitFor();
  await clerk.context().close();

  const nurse = await at.signedIn('nurse', '/letters', desktop);
  const waiting = nurse.getByRole('region', { name: /Waiting for a signature/ });
  await expect.poll(async () => waiting.getByRole('checkbox').count()).toBe(0);
  await waiting.getByRole('button', { name: /^Read/ }).click();
  await waiting.getByText('We have a place for you on Thursday 3 December 2026.').waitFor();
  await checked(nurse, 'letters-read-desk');
  await waiting.getByRole('checkbox').check();
  await hands(nurse).press('Sign 1 letter');
  const signed = nurse.getByRole('region', { name: /Signed, to be sent/ });
  await signed.getByRole('checkbox').check();
  await checked(nurse, 'letters-to-send-desk');
  await hands(nurse).press('1 letter in the post');
  await nurse
    .getByRole('region', { name: /^Sent/ })
    .getByText(/sent by post/)
    .waitFor();
  await nurse.context().close();
});

describe('one written by hand', () => {
  it.each([
    ['desk', desktop],
    ['tablet', tablet],
    ['phone', { width: 320, height: 640 }],
  ] as const)('passes the checks at the width of a %s', async (width, viewport) => {
    const page = await at.signedIn('nurse', '/people/wilhelmina/letters?to=family+doctor&about=request', viewport);
    await hands(page).sees(/Tick what is asked for/);
    await hands(page).tick('bloods');
    await hands(page).sees(/creatinine and adjusted calcium/);
    await checked(page, `write-letter-${width}`);
    await page.goto(`${at.url}/letters`);
    await page.getByRole('heading', { level: 1, name: 'Letters' }).waitFor();
    await checked(page, `letters-${width}`);
    await page.context().close();
  });
  it('says why it is not printed until that is mended, and is chased until it is answered', async () => {
    await at.server.done(
      'clerk',
      record('wilhelmina', 'contact', { ...contact, dentist: 'Mill Lane Dental Practice' }),
    );
    const page = await at.signedIn('nurse', '/people/wilhelmina/letters?to=dentist&about=request', desktop);
    const { press, fill, pick, sees } = hands(page);
    await sees(/do not tell them to stop/);
    await fill('Your own words, at the end', `${'and so on '.repeat(7)}it goes.`);
    await press('Put these words in');
    await sees(/a sentence of 23 words/);
    await fill('Your own words, at the end', 'She has a loose tooth.');
    await sees('What you typed is not in the letter yet');
    await expect.poll(async () => page.getByRole('button', { name: 'I read it: sign' }).count()).toBe(0);
    await press('Put these words in');
    await press('I read it: sign');
    await press('It is sent');
    await sees(/ask for the answer on Wed 9 Dec/);
    await pick('What came of it', 'answered');
    await fill('What they said', 'tooth out, healed');
    await press('Write it down');
    await sees(/answered on 25 Nov 2026/);
    await page.context().close();
  });
});

it('what was signed is a page of its own', async () => {
  const { letters } = await at.server.read<{ letters: { entry: string; to: string }[] }>(
    '/api/people/wilhelmina/letters',
  );
  const entry = letters.find(({ to }) => to === 'dentist')?.entry;
  const paper = await at.server.ask(`/api/people/wilhelmina/letters/${entry}/document`, { as: 'nurse' });
  const page = await at.visitor(tablet);
  await page.setContent(paper.body);
  await checked(page, 'letter-document');
  await page.context().close();
});

it('reminders that are due stand above the letters, each with what keeps it back', async () => {
  at.clock.moveOn(24 * 60);
  const page = await at.signedIn('clerk', '/letters', tablet);
  const due = page.getByRole('region', { name: /Reminders due/ });
  await due
    .getByText(/you have a place on Thursday 3 December 2026 at/)
    .first()
    .waitFor();
  await expect.poll(async () => due.getByText(/nobody has written down that they agree/).count()).toBe(2);
  await expect.poll(async () => due.getByRole('button', { name: 'Send 0 reminders' }).isDisabled()).toBe(true);
  await checked(page, 'letters-reminders');
  await page.context().close();
});
