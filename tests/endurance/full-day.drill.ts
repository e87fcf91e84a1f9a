/**
 * A full day of 14 people at three browsers at once (the clerk at the desk, the nurse's tablet, the checker's tablet), with
 * trouble in turn at every press of the nurse: none, a double tap, the network cut between question and answer, the tab closed
 * and opened again. Whoever starts a dose does so against the checker pressing at the same moment. At the end each step of each
 * person is in the notes once, and the store is whole.
 */
import type { AddressInfo } from 'node:net';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { listToday, planToday } from '../../apps/server/test/support/at-the-chair.ts';
import { password, people, setUp } from '../../apps/server/test/support/own-server.ts';
import { cuttableNetwork } from '../support/cuttable-network.ts';
import { signIn } from '../support/hands.ts';
import { type Service, desktop, service, tablet } from '../support/service.ts';
import {
  type HandStep,
  arrive,
  checklist,
  finish,
  goHome,
  observations,
  removal,
  secondCheckBy,
  start,
  stepOn,
  untilPrepared,
} from '../support/visit-by-hand.ts';

const patients = Number(process.env['ENDURANCE_PATIENTS'] ?? 14);
const chairs = 5;
const troubles = ['none', 'double tap', 'network cut', 'tab closed'] as const;

let at: Service;
let network: Awaited<ReturnType<typeof cuttableNetwork>>;
let context: BrowserContext;
let nurse: Page;
let checker: Page;
let clerk: Page;
let presses = 0;
const counts = { none: 0, 'double tap': 0, 'network cut': 0, 'tab closed': 0, 'pressed again': 0, 'two at once': 0 };

beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await planToday(at.server, patients);
  for (let index = 0; index < patients; index += 1)
    await listToday(at.server, `p${index}`, index + 1, {
      given: 'Edda',
      family: `Marrow-${String.fromCodePoint(65 + index)}`,
      born: `19${40 + index}-07-19`,
      number: `999 204 ${7800 + index}`,
    });
  network = await cuttableNetwork((at.server.app.server.address() as AddressInfo).port);
  nurse = await at.visitor(tablet);
  context = nurse.context();
  await nurse.goto(network.url);
  await signIn(nurse, people.nurse.username, password);
  checker = await at.signedIn('checker', '/', tablet);
  clerk = await at.signedIn('clerk', '/', desktop);
});
afterAll(async () => {
  await network.close();
  await at.close();
});

/** Looked at again until it holds; it has to, soon. */
async function until(holds: () => Promise<boolean>): Promise<void> {
  for (let tries = 0; tries < 150; tries += 1) {
    if (await holds()) return;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error('it never came to be');
}

const address = (patient: string): string => `/people/${patient}/visit`;
const titled = (page: Page, title: string): Promise<void> =>
  stepOn(page).getByRole('heading', { name: title }).first().waitFor();

/** The next step stands there, or the way to press again is shown: then it is pressed, until the step is over. */
async function pressedThrough(step: HandStep, after: () => Promise<boolean>): Promise<void> {
  for (let tries = 0; tries < 40; tries += 1) {
    if (await after()) return;
    const button = stepOn(nurse).getByRole('button', { name: step.press });
    const isSaid = await nurse.getByText(/press again|cannot be verified|Someone wrote/).count();
    if (isSaid > 0 && (await button.count()) > 0) {
      counts['pressed again'] += 1;
      await button.click({ timeout: 2_000 }).catch(() => undefined);
    }
    await nurse.waitForTimeout(500);
  }
  throw new Error(`"${step.title}" is not over after the trouble: ${(await stepOn(nurse).innerText()).slice(0, 300)}`);
}

/** One step of the nurse, with the trouble whose turn it is. */
async function nurseDoes(patient: string, step: HandStep): Promise<void> {
  const trouble = troubles[presses % troubles.length] ?? 'none';
  presses += 1;
  counts[trouble] += 1;
  if (trouble === 'tab closed') {
    const next = await context.newPage();
    next.setDefaultTimeout(15_000);
    await nurse.close();
    nurse = next;
  }
  if (!nurse.url().endsWith(address(patient))) await nurse.goto(`${network.url}${address(patient)}`);
  if (step.title !== finish.title) await titled(nurse, step.title);
  await step.fill(stepOn(nurse));
  const button = stepOn(nurse).getByRole('button', { name: step.press, exact: true });
  await button.waitFor();
  const before = await done(patient);
  const isOver = async (): Promise<boolean> => (await done(patient)) > before && !(await shows(step));
  if (trouble === 'network cut') {
    network.loseAnswers();
    await button.click();
    await until(async () => (await done(patient)) > before);
    network.cut();
    network.restore();
    await pressedThrough(step, isOver);
  } else {
    await (trouble === 'double tap' ? button.dblclick() : button.click());
    await pressedThrough(step, isOver);
  }
}

/** How many steps of the visit are in the notes. */
const done = async (patient: string): Promise<number> => {
  const record = await at.server.atHand.notes.of('patient', patient);
  return record.all.filter(({ kind }) => onceEach.includes(kind)).length;
};
const shows = async (step: HandStep): Promise<boolean> =>
  (await stepOn(nurse).getByRole('button', { name: step.press, exact: true }).count()) > 0 &&
  (await stepOn(nurse).getByRole('heading', { name: step.title }).count()) > 0;

const onceEach: readonly string[] = [
  'arrived',
  'observations',
  'checklist',
  'go-decision',
  'cannula',
  'flush',
  'preparation',
  'second-check',
  'infusion-started',
  'infusion-finished',
  'dose',
  'cannula-removed',
  'observed',
  'left',
];

async function simply(page: Page, url: string, patient: string, step: HandStep): Promise<void> {
  await page.goto(`${url}${address(patient)}`);
  await titled(page, step.title);
  await step.fill(stepOn(page));
  await stepOn(page).getByRole('button', { name: step.press, exact: true }).click();
}

/** Nurse and checker both stand before "It runs now" and press at the same moment. */
async function startedByTwo(patient: string): Promise<void> {
  counts['two at once'] += 1;
  await nurse.goto(`${network.url}${address(patient)}`);
  await checker.goto(`${at.url}${address(patient)}`);
  const buttons = await Promise.all(
    [nurse, checker].map(async (page) => {
      await titled(page, start.title);
      await start.fill(stepOn(page));
      const button = stepOn(page).getByRole('button', { name: start.press, exact: true });
      await button.waitFor();
      return button;
    }),
  );
  // Pressed inside the page: a hand does not wait until the screen stands still.
  const handles = await Promise.all(buttons.map(async (button) => button.elementHandle()));
  await Promise.all(handles.map(async (handle) => handle?.evaluate((button) => (button as HTMLElement).click())));
  await Promise.all([nurse, checker].map((page) => page.getByText('to the earliest finish').waitFor()));
}

it('every step of every person is in the notes once', async () => {
  const began = performance.now();
  for (let first = 0; first < patients; first += chairs) {
    const wave = Array.from({ length: Math.min(chairs, patients - first) }, (_, index) => `p${first + index}`);
    for (const [index, patient] of wave.entries()) {
      await simply(clerk, at.url, patient, arrive(index + 1));
      for (const step of [observations, checklist, ...untilPrepared]) await nurseDoes(patient, step);
      await simply(checker, at.url, patient, secondCheckBy(people.checker.username));
      await until(async () => (await at.server.atHand.notes.of('patient', patient)).facts.has('second-check'));
      if (index % 2 === 0) await startedByTwo(patient);
      else await nurseDoes(patient, start);
    }
    at.clock.moveOn(31);
    for (const patient of wave) {
      // Where the checker was first, her tablet holds the dose: the nurse goes on by taking it over.
      await nurse.goto(`${network.url}${address(patient)}`);
      const button = stepOn(nurse).getByRole('button', { name: finish.press, exact: true });
      await button.click();
      const take = nurse.getByRole('button', { name: /^Take it over/ });
      await stepOn(nurse).getByRole('heading', { name: removal.title }).or(take).first().waitFor();
      if ((await take.count()) > 0) await take.click();
      await titled(nurse, removal.title);
      await nurseDoes(patient, removal);
    }
    at.clock.moveOn(30);
    for (const patient of wave) for (const step of goHome) await nurseDoes(patient, step);
    console.log(`${first + wave.length} of ${patients} have gone home`);
  }
  const seconds = (performance.now() - began) / 1_000;
  const wrong: string[] = [];
  for (let index = 0; index < patients; index += 1) {
    const { facts } = await at.server.atHand.notes.of('patient', `p${index}`);
    for (const kind of onceEach) {
      const found = facts.get(kind as 'dose')?.length ?? 0;
      if (found !== 1) wrong.push(`p${index}: ${kind} ${found} times`);
    }
  }
  expect(wrong).toEqual([]);
  expect((await at.server.atHand.store.verify()).ok).toBe(true);
  console.log(`${patients} people in ${Math.round(seconds)} s; ${JSON.stringify(counts)}`);
});
