/** A reaction while it runs: stopped in one tap, the card one tap away, written with its grade; told next year and in the letter. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Hands, hands } from '../support/hands.ts';
import { patient, runningDrip } from '../support/running-drip.ts';
import { type Service, checked, desktop } from '../support/service.ts';
import { lookedAlong } from '../support/visit-by-hand.ts';

let at: Service;
let page: Page;
let nurse: Hands;

beforeAll(async () => {
  ({ at, page } = await runningDrip(4));
  nurse = hands(page);
});
afterAll(() => at.close());

it('stands still in one tap, and the form is there with the way to the card', async () => {
  await nurse.press('A reaction: it stands still now');
  await page.getByRole('heading', { name: 'Reaction at the chair' }).waitFor();
  await nurse.follow('the anaphylaxis card');
  await page.getByRole('heading', { name: 'Anaphylaxis', level: 1 }).waitFor();
  await nurse.follow('Back to where you were');
});

it('is written with its grade and version, what was done and how it is', async () => {
  await nurse.fill('What was seen, in order', 'flushed, then short of breath');
  await nurse.pick('What it is', 'infusion-related reaction');
  await page.getByRole('radio', { name: /^3: prolonged/ }).check();
  await nurse.pick('The infusion', 'was paused');
  await nurse.tickIn('What was done', 'oxygen');
  await nurse.tickIn('What was done', 'prescriber asked');
  await nurse.pick('How it is now', 'a prescriber took over');
  await checked(page, 'visit-reaction-tablet');
  await nurse.press('Record the reaction');
  await nurse.sees(/infusion-related reaction grade 3 \(CTCAE 5\.0\)/);
  await page.getByRole('button', { name: 'Another reaction' }).waitFor();
});

it('a severe one is a task of a prescriber, and stands in the letter', async () => {
  const { readiness } = await at.server.read<{ readiness: unknown }>(`/api/people/${patient}`);
  expect(JSON.stringify(readiness)).toContain('severe reaction');
  await nurse.tick(lookedAlong);
  await nurse.press('It runs again');
  await nurse.sees(/Seen: severe reaction/);
  await nurse.press('Stop early');
  await nurse.fill('Given', '20');
  await nurse.fill('Why it was stopped', 'a reaction');
  await nurse.press('Stopped for good');
  await page.getByRole('heading', { name: 'Remove the cannula' }).waitFor();
  const desk = await at.signedIn('nurse', `/people/${patient}/letter`, desktop);
  const letter = desk.frameLocator('iframe');
  await letter.getByText('Reaction while they were here').waitFor();
  await letter.getByText(/flushed, then short of breath, severe/).waitFor();
  await desk.context().close();
});

it('what shows itself later is graded in the notes: the texts of its grades stand by the field', async () => {
  const desk = await at.signedIn('nurse', `/people/${patient}?record=reaction`, desktop);
  const form = hands(desk.getByRole('region', { name: 'Record: reaction' }));
  await form.choose('What is graded (CTCAE)', 'anaphylaxis');
  await form.sees(/^3: tight airways/);
  await form.choose('What is graded (CTCAE)', 'osteonecrosis of the jaw');
  await form.sees(/^2: symptoms; medicines for it/);
  await checked(desk, 'reaction-in-the-notes');
  await desk.context().close();
});

it('is told at the visit of next year', async () => {
  const { lastTime } = await nextYear();
  expect(lastTime.join('; ')).toMatch(/last visit Wednesday 25 November 2026, chair \d/);
  expect(lastTime.join('; ')).toMatch(/25 Nov 2026: reaction: flushed, then short of breath, severe/);
});

async function nextYear(): Promise<{ lastTime: string[] }> {
  at.clock.moveOn(365 * 24 * 60);
  return at.server.read(`/api/people/${patient}/visit`);
}
