/** A dose that is not given: an answer that holds it, a prescriber asked, put off with its reason, and what follows from that. */
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { referralOf, setUp, workUp } from '../../apps/server/test/support/own-server.ts';
import { type Hands, hands } from '../support/hands.ts';
import { type Service, checked, service, tablet } from '../support/service.ts';

let at: Service;
let page: Page;
let step: Locator;
let now: Hands;
const session = 'thornbeck-2026-11-25';
const names = { wilhelmina: 'Wilhelmina Arkwright-Poe', ada: 'Ada Brindle', ottoline: 'Ottoline Garrow' } as const;
type Patient = keyof typeof names;

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await at.server.done('nurse', {
    name: 'plan session',
    session,
    body: {
      unit: 'thornbeck',
      on: '2026-11-25',
      zone: 'Europe/London',
      arriveAt: ['09:00', '09:20', '09:40'],
      opensAt: '08:30',
      closesAt: '17:00',
    },
  });
  for (const [index, patient] of (['wilhelmina', 'ada', 'ottoline'] as const).entries()) {
    const [given = '', family = ''] = names[patient].split(' ');
    await at.server.done('clerk', referralOf(patient, { given, family, number: `999 204 772${index}` }));
    await workUp(at.server, patient);
    await at.server.done('clerk', { name: 'book', patient, session, place: index + 1 });
    await here(patient);
  }
  page = await at.signedIn('nurse', '/', tablet);
  step = page.getByRole('main').getByRole('region').first();
  now = hands(step);
});
afterAll(() => at.close());

/** Arrived and measured: what this job begins with. */
async function here(patient: Patient): Promise<void> {
  const effectiveAt = '2026-11-25T08:40:00+00:00';
  await at.server.done('nurse', {
    name: 'record',
    patient,
    line: { kind: 'arrived', body: { session, identifiers: ['full name', 'birth date'] }, effectiveAt },
  });
  await at.server.done('nurse', {
    name: 'record together',
    patient,
    lines: [
      {
        kind: 'observations',
        body: {
          pulsePerMinute: 72,
          systolicMmHg: 128,
          diastolicMmHg: 74,
          temperatureCelsius: 36.6,
          saturationPercent: 97,
          newIrregularPulse: false,
          when: 'before',
        },
        effectiveAt,
      },
      {
        kind: 'weight',
        body: { quantity: { comparator: '', value: '64.0', unit: 'kg' }, method: 'measured' },
        effectiveAt,
      },
    ],
  });
}

const holding: Readonly<Record<string, RegExp>> = {
  wilhelmina: /^Unwell today/,
  ada: /^Any new medicine/,
  ottoline: /^no such question/,
};
/** Answers every question; the one that holds this person's dose with what they said. */
async function ask(patient: Patient, said?: string): Promise<void> {
  await page.goto(`${at.url}/people/${patient}/visit`);
  await step.getByRole('heading', { name: 'Questions of the day' }).waitFor();
  for (const question of await step.getByRole('group').all()) {
    const asks = (await question.textContent()) ?? '';
    const good = /Drunk plenty|Still wants/.test(asks) ? 'Yes' : 'No';
    const holds = holding[patient]?.test(asks) === true;
    await question.getByRole('radio', { name: holds ? (good === 'Yes' ? 'No' : 'Yes') : good }).check();
    if (holds && said !== undefined) await hands(question).fill('What they said', said);
  }
  if (said !== undefined) await checked(page, `put-off-answers-${patient}`);
  await now.press('Record the answers');
  await step.getByRole('heading', { name: 'Go, put off, or ask' }).waitFor();
}
type Notes = {
  entries: { kind: string; text: string; by: { name: string; role: string } }[];
  standing: { standing: string; says: string; owner: string; on?: string };
};
const notes = (patient: Patient): Promise<Notes> => at.server.read<Notes>(`/api/people/${patient}`);

it('an answer that holds the dose stands on top with its reason, and go is refused', async () => {
  await ask('wilhelmina', 'vomited twice in the night');
  await now.sees('Not ready: unwell');
  const items = step.getByRole('listitem');
  const [first, ...others] = await items.allInnerTexts();
  // Told on the checklist it is an illness from this day on, and the answer of the day holds too.
  expect(first).toMatch(/^Illness.*not ready.*unwell/is);
  expect(others.join('\n')).toMatch(/^Unwell today.*\n.*not ready/m);
  // No clearance is worked out from bloods that no longer count.
  await now.sees(/bloods of .* no longer count/i);
  await now.press('Go');
  await now.sees('Not ready: unwell.');
  await checked(page, 'put-off-go-refused');
  await expect
    .poll(async () => (await notes('wilhelmina')).entries.map(({ kind }) => kind))
    .not.toContain('go-decision');
});

it('a dose is put off for a reason, never without one', async () => {
  await now.press('Put off');
  const form = hands(step.locator('form'));
  await form.press('Put off');
  await now.sees(/a dose is put off for a reason/);
  await form.choose('Reason', 'unwell');
  await form.fill('What was found', 'vomiting since yesterday evening');
  await form.pick('Could it have been seen before?', 'only today');
  await form.fill('What next', 'ring her; bloods again once well');
  await form.press('Put off');
  await now.sees(/the last day for what comes next/);
  // Told in the words of the form, not of the act that is sent.
  await now.sees(/^by when: not said/);
  await expect.poll(async () => page.getByText(/next by/).count()).toBe(0);
  await form.fill('By when', '27 Nov 2026');
  await form.pick('Whose it is', 'nurse in charge');
  await form.fill('Who tells the patient', 'Nora told her: we need you well first');
  await checked(page, 'put-off-form');
  await form.press('Put off');
  // Above the step, not in it: the next step may be on the screen before the answer to the press.
  await hands(page.getByRole('main')).sees(/^Recorded for Wilhelmina .*: put off\.$/);
  const decided = (await notes('wilhelmina')).entries.find(({ kind }) => kind === 'go-decision');
  expect(decided?.text).toContain('put off');
  expect(decided?.text).toContain('unwell');
});

it('she goes home; the page says where she is, who owns it and until when', async () => {
  await checked(page, 'put-off-next');
  await now.pick(/^Do they hold the card/, 'yes');
  await now.pick(/how do they go/, 'fit to go');
  await now.press('They have left');
  await page.getByRole('heading', { name: 'The visit is over' }).waitFor();
  await checked(page, 'put-off-over');
  await page.goto(`${at.url}/people/wilhelmina`);
  await page
    .getByText(/^Put off/)
    .first()
    .waitFor();
  const { standing } = await notes('wilhelmina');
  expect(standing.standing).toBe('put off');
  expect(standing.owner).not.toBe('');
  expect(standing.on ?? '').toMatch(/^2026-1[12]-/);
  await expect.poll(async () => page.getByText('They are here: begin').count()).toBe(0);
  // Nothing is booked before somebody has said that she is well again.
  await page.getByRole('link', { name: 'Record well since' }).first().waitFor();
  await checked(page, 'put-off-person');
});

it('the illness she told of is asked for, so that tomorrow does not call her ready', async () => {
  await page.goto(`${at.url}/people/wilhelmina/visit`);
  await page.getByRole('link', { name: 'write it in the notes' }).click();
  const panel = page.getByRole('region', { name: 'Record: illness or event' });
  const form = hands(panel);
  await form.fill('What happened', 'vomiting');
  await form.pick('What sort', 'illness');
  await form.fill('Began on', '24 11 2026');
  await form.press('Record');
  await panel.waitFor({ state: 'detached' });
  await page.getByText(/^Not ready: unwell/).waitFor();
  await page.goto(`${at.url}/people/wilhelmina/visit`);
  await page.getByRole('heading', { name: 'The visit is over' }).waitFor();
  await expect.poll(async () => page.getByRole('link', { name: 'write it in the notes' }).count()).toBe(0);
});

it('the letter says that no dose was given, and why', async () => {
  await page.goto(`${at.url}/people/wilhelmina/letter`);
  const letter = page.frameLocator('iframe');
  for (const words of [/not given|put off/i, /unwell/]) await letter.getByText(words).first().waitFor();
  await checked(page, 'put-off-letter');
  await page.getByRole('button', { name: 'Sign the letter' }).click();
  await page.getByRole('link', { name: 'The letter to the family doctor is signed: read it' }).waitFor();
  await expect.poll(async () => (await notes('wilhelmina')).entries.map(({ kind }) => kind)).toContain('letter');
});

it('a prescriber is asked, looks into it, and the dose may be given', async () => {
  await ask('ada', 'trimethoprim since Monday');
  await now.sees(/^Cannot say: a new medicine/);
  await now.press('Ask a prescriber');
  const form = hands(step.locator('form'));
  await form.choose('Reason', 'other');
  await form.fill(
    'What was found, and what is asked',
    'trimethoprim since Monday for a bladder infection: does today stand?',
  );
  await form.press('Ask a prescriber');
  await now.sees(/^So far: /);
  await expect
    .poll(async () => step.locator('form').count(), { message: 'what was asked is not there to be asked twice' })
    .toBe(0);
  await checked(page, 'put-off-asked');
  const prescriber = await at.signedIn('prescriber', '/people/ada?record=symptom-cleared');
  const cleared = hands(prescriber.getByRole('region', { name: 'Record: symptom cleared' }));
  await prescriber.getByRole('radio', { name: /^25 Nov 2026/ }).check();
  await prescriber.getByRole('radio', { name: /^Any new medicine/ }).check();
  await cleared.fill('Finding', 'three days, ended yesterday; creatinine of today unchanged');
  await cleared.press('Record');
  await prescriber.getByRole('region', { name: 'Record: symptom cleared' }).waitFor({ state: 'detached' });
  await prescriber.context().close();
  await step.getByText('Ready', { exact: true }).waitFor();
  await now.press('Go');
  // What the prescriber wrote while this screen was open is told before a decision is made over it.
  await now.sees(/^Someone wrote in these notes while you were busy/);
  await now.sees(/three days, ended yesterday/);
  await checked(page, 'put-off-cleared');
  await now.press('Go');
  await step.getByRole('heading', { name: 'Cannula' }).waitFor();
  const { entries } = await notes('ada');
  expect(entries.filter(({ kind }) => kind === 'go-decision')).toHaveLength(2);
  expect(entries.find(({ kind }) => kind === 'symptom-cleared')?.by.role).toBe('prescriber');
});

it('until the medicine runs it can still be put off: no vein', async () => {
  await ask('ottoline');
  await now.press('Go');
  await step.getByRole('heading', { name: 'Cannula' }).waitFor();
  const main = hands(page.getByRole('main'));
  await main.unfold('put the dose off after all');
  await main.choose('Reason', 'no cannula');
  await main.fill('What was found', 'three tries by two people');
  await main.pick('Could it have been seen before?', 'only today');
  await main.fill('What next', 'another day, warm and well watered; the operator who knows her veins');
  await main.fill('By when', '4 Dec 2026');
  await main.pick('Whose it is', 'nurse');
  await main.fill('Who tells the patient', 'told at the chair');
  await checked(page, 'put-off-after-go');
  await main.press('Put off');
  await step.getByRole('heading', { name: 'See them off' }).waitFor();
  const decisions = (await notes('ottoline')).entries.filter(({ kind }) => kind === 'go-decision');
  expect(decisions.map(({ text }) => text.split(/[:;(]/)[0]?.trim())).toEqual(['put off', 'go']);
});

it('Today tells who was put off and who is here', async () => {
  await page.goto(at.url);
  await page.getByRole('link', { name: names.wilhelmina }).first().waitFor();
  await checked(page, 'put-off-today');
});

it('what comes next stands in the work of the unit with its owner and its day, until somebody has seen to it', async () => {
  await page.goto(`${at.url}/`);
  await page.getByRole('link', { name: /put off: what comes next/ }).click();
  // She stands in a row of Today too.
  await page.getByRole('heading', { name: /^put off: what comes next/i }).waitFor();
  const row = page.getByRole('row', { name: /Ottoline Garrow/ });
  await row.waitFor();
  const said = await row.innerText();
  expect(said).toMatch(/4 Dec/);
  expect(said).toMatch(/the operator who knows her veins/);
  expect(said).toMatch(/nurse/);
  await checked(page, 'put-off-work');
  await row.getByRole('link').click();
  const main = hands(page.getByRole('main'));
  await main.fill('What you found', 'she has a place on 2 December with Anya at the chair');
  await main.press('Record');
  await page.goto(`${at.url}/work?what=${encodeURIComponent('put off: what comes next')}`);
  await page.getByRole('row', { name: /Wilhelmina/ }).waitFor();
  await expect.poll(async () => row.count()).toBe(0);
});
