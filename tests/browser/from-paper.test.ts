/** The day after the network was down: one person's card is typed in, step by step, with both times and the signature on paper. */
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { listToday, planToday, readyToPrepare } from '../../apps/server/test/support/at-the-chair.ts';
import { people, referralOf, setUp, workUp } from '../../apps/server/test/support/own-server.ts';
import { hands } from '../support/hands.ts';
import { type Service, checked, service, tablet } from '../support/service.ts';

const session = 'thornbeck-2026-11-25';
let at: Service;
let page: Page;
let card: Locator;

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await planToday(at.server);
  const who = { given: 'Wanda', family: 'Ferreira', born: '1944-09-30', number: '999 204 7802' };
  await listToday(at.server, 'wanda', 1, who);
  await at.server.done(
    'clerk',
    referralOf('edda', { given: 'Edda', family: 'Marrow', born: '1947-07-19', number: '999 204 7829' }),
  );
  await workUp(at.server, 'edda');
  // Up to the flushed cannula it was written at the chair; then the network went.
  await readyToPrepare(at.server, 'wanda');
  at.clock.moveOn(24 * 60);
  page = await at.signedIn('nurse', `/sessions/${session}/paper`, tablet);
  card = page.getByRole('main');
}, 60_000);
afterAll(() => at.close());

it('the list says how far the notes are', async () => {
  const { sees, follow } = hands(page);
  await sees('In the notes up to flush');
  await checked(page, 'from-paper-list');
  await follow('Wanda Ferreira');
  await sees('In the notes already: not typed again');
});

it('a step without the time on the sheet is not written', async () => {
  const { pick, fill, tick, press, sees } = hands(card);
  await pick('The pack says', 'zoledronic acid 5 mg in 100 mL');
  await fill('Batch', 'PA-2391');
  await fill('Expiry', '30 04 2028');
  await fill('To run in', '30');
  await tick('full name');
  await tick('number');
  await pick('Clear and colourless?', 'yes');
  await press('Prepared');
  await sees(/the time on the sheet is missing/);
  await checked(page, 'from-paper-preparation');
  await fill('Time on the sheet', '25:70');
  await press('Prepared');
  await sees(/"25:70" is not a time of the day/);
  // As it is written on many a sheet.
  await fill('Time on the sheet', '0915');
  await press('Prepared');
});

it('the second signature is the one on paper, never the preparer’s own', async () => {
  const { pick, fill, tick, press, sees } = hands(card);
  await sees('Independent second check');
  await pick('The pack says', 'zoledronic acid 5 mg in 100 mL');
  await fill('Last four signs of the batch', '2391');
  await fill('Expiry, month and year', '04 2028');
  await pick('It will run by', 'a pump');
  await fill('The pump shows', '200');
  await tick('full name');
  await tick('birth date');
  await fill('Time on the sheet', '09:18');
  await expect.poll(async () => card.getByRole('radio', { name: people.nurse.name }).count()).toBe(0);
  await pick('Whose signature stands on the sheet', people.checker.name);
  await checked(page, 'from-paper-second-check');
  await press('Record what stands on the sheet');
  await sees('Start the infusion');
});

it('an infusion under the minimum is asked about, and written as what it was', async () => {
  const { fill, pick, tick, press, sees } = hands(card);
  await tick('full name');
  await tick('birth date');
  await fill('Time on the sheet', '09:20');
  // Nobody can say any more whether the line was looked along: neither answer is preset.
  await expect
    .poll(async () => card.getByRole('button', { name: 'Look along the line first' }).isDisabled())
    .toBe(true);
  await pick('Along the line, before it is connected', 'not written on the paper');
  await checked(page, 'from-paper-start');
  await press('It ran from 09:20');
  await sees('The infusion ended');
  const site = page.getByText('the site after 5 minutes');
  await site.click();
  const looked = hands(card.locator('details'));
  await looked.fill('Time on the sheet', '09:26');
  await looked.press('It looked well');
  await site.waitFor({ state: 'detached' });
  await fill('Given', '100');
  await expect
    .poll(async () => card.getByRole('button', { name: 'How long did it stand still?' }).isDisabled())
    .toBe(true);
  await fill('Stood still, all pauses together', '5');
  await fill('Who timed it, by which clock', 'Nora, wall clock of the bay');
  await fill('Time on the sheet', '09:37');
  await press('Finished');
  // Seventeen minutes on the sheet, five of them standing still.
  await sees(/12 min/);
  await checked(page, 'from-paper-too-fast');
  // Read from the sheet once more, it is corrected and not passed over.
  await fill('Stood still, all pauses together', '0');
  await press('Finished');
  await sees('Remove the cannula');
});

it('a time before the step it follows is asked about, with both times', async () => {
  const { fill, pick, press, sees } = hands(card);
  await pick('The site', 'looks well');
  await fill('Time on the sheet', '09:30');
  await press('It is out');
  await sees(/was at 09:37 on 25 Nov 2026, later than 09:30/);
  await checked(page, 'from-paper-order');
  await fill('Time on the sheet', '09:40');
  await press('It is out');
  await sees('Watch afterwards');
});

it('both times stand in the notes, whose signature it is, and nothing twice', async () => {
  const { entries } = await at.server.read<{
    entries: { kind: string; on: string; at?: string; recordedAt: string; text: string }[];
  }>('/api/people/wanda');
  const of = (kind: string) => entries.filter((entry) => entry.kind === kind);
  const [check] = of('second-check');
  expect(check?.at?.slice(0, 16)).toBe('2026-11-25T09:18');
  expect(check?.recordedAt.slice(0, 10)).toBe('2026-11-26');
  expect(check?.text).toContain('signed on the day sheet and typed in');
  for (const kind of ['arrived', 'preparation', 'second-check', 'infusion-started', 'dose'])
    expect(of(kind)).toHaveLength(1);
  expect(of('infusion-started')[0]?.text).toContain('along the line: not written on the paper');
  const visit = await at.server.read<{ check: { by: string } }>('/api/people/wanda/visit?on=2026-11-25');
  expect(visit.check.by).toBe(`${people.checker.name}, on paper`);
});

it('somebody who came without a place is found, put on the list of that day, and has a card to type in', async () => {
  await page.goto(`${at.url}/sessions/${session}/paper`);
  const { fill, press, sees, unfold, follow } = hands(page.getByRole('main'));
  await unfold('somebody came who is not on this list');
  await fill('Who came', 'Marrow');
  await press(/^Edda Marrow/);
  await fill('When they were put on the list', '10.05');
  await checked(page, 'from-paper-unlisted');
  await press('Put them on the list of that day');
  await follow('Edda Marrow');
  await sees('They did not come? Write down what was said');
});
