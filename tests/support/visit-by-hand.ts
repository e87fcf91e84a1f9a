/** The steps of a visit as hands do them at a screen: each fills in what its screen asks; the last press is the caller's. */
import type { Locator, Page } from 'playwright-core';
import { password } from '../../apps/server/test/support/own-server.ts';
import { hands } from './hands.ts';

export type HandStep = {
  /** Heading of the screen. */
  readonly title: string;
  readonly fill: (step: Locator) => Promise<void>;
  /** The button that records it. */
  readonly press: string | RegExp;
};

export const stepOn = (page: Page): Locator => page.getByRole('main').getByRole('region').first();

const tick = (step: Locator, name: string): Promise<void> =>
  step.getByRole('checkbox', { name, exact: true }).check({ force: true });
const pick = (step: Locator, group: string | RegExp, name: string): Promise<void> =>
  step.getByRole('group', { name: group }).getByRole('radio', { name, exact: true }).check({ force: true });

export const arrive = (chair: number): HandStep => ({
  title: 'Arrived',
  fill: async (step) => {
    await tick(step, 'full name');
    await tick(step, 'birth date');
    await step.getByRole('radio', { name: String(chair), exact: true }).check({ force: true });
  },
  press: 'They are here',
});

export const observations: HandStep = {
  title: 'Observations',
  fill: async (step) => {
    const { fill } = hands(step);
    for (const [label, value] of [
      ['Systolic pressure', '130'],
      ['Diastolic pressure', '76'],
      ['Pulse', '72'],
      ['Temperature', '36.8'],
      ['Oxygen saturation', '97'],
    ] as const)
      await fill(label, value);
    await pick(step, 'A new irregular pulse?', 'no');
    await step.getByLabel('Weight today: value').fill('64.0');
    await pick(step, 'Weight today', 'kg');
  },
  press: 'Record',
};

export const checklist: HandStep = {
  title: 'Questions of the day',
  fill: async (step) => {
    const questions = step.getByRole('group');
    for (let index = 0; index < (await questions.count()); index += 1) {
      const question = questions.nth(index);
      const good = /Drunk plenty|Still wants/.test((await question.textContent()) ?? '') ? 'Yes' : 'No';
      await question.getByRole('radio', { name: good }).check({ force: true });
    }
  },
  press: 'Record the answers',
};

export const untilPrepared: readonly HandStep[] = [
  { title: 'Go, put off, or ask', fill: async () => undefined, press: 'Go' },
  {
    title: 'Cannula',
    fill: async (step) => {
      await pick(step, 'Site', 'right forearm');
      await pick(step, 'Gauge', '22');
      await pick(step, /^Tries/, '1');
      await pick(step, 'Is it in?', 'yes');
    },
    press: 'Record',
  },
  {
    title: 'Saline flush',
    fill: async (step) => {
      await hands(step).fill('Saline', '10');
      await pick(step, /^Ran freely/, 'yes');
      await pick(step, /^Anything with calcium/, 'no');
    },
    press: 'Record',
  },
  {
    title: 'Preparation',
    fill: async (step) => {
      const { fill } = hands(step);
      await pick(step, 'The pack says', 'zoledronic acid 5 mg in 100 mL');
      await fill('Batch', 'PA-2391');
      await fill('Expiry', '30 Apr 2028');
      await fill('To run in', '30');
      await tick(step, 'full name');
      await tick(step, 'number');
      await pick(step, /^Clear and colou?rless/, 'yes');
    },
    press: 'Prepared',
  },
];

export const secondCheckBy = (username: string): HandStep => ({
  title: 'Independent second check',
  fill: async (step) => {
    const { fill } = hands(step);
    await pick(step, 'The pack says', 'zoledronic acid 5 mg in 100 mL');
    await fill('Last four signs of the batch', '2391');
    await fill('Expiry, month and year', '04 2028');
    await pick(step, 'It will run by', 'a pump');
    await fill('The pump shows', '200');
    await tick(step, 'full name');
    await tick(step, 'birth date');
    await fill('Your username', username);
    await fill('Your password', password);
  },
  press: 'Sign my reading',
});

/** The tick without which nothing runs. */
export const lookedAlong = 'I looked: a vented set, no air in it, the clamp shut';

export const start: HandStep = {
  title: 'Start the infusion',
  fill: async (step) => {
    await tick(step, lookedAlong);
    await tick(step, 'full name');
    await tick(step, 'birth date');
    await hands(step).fill('To run in', '30');
  },
  press: 'It runs now',
};

export const finish: HandStep = {
  title: 'Running',
  fill: async () => undefined,
  press: 'The bag is empty: 100 mL given',
};

export const removal: HandStep = {
  title: 'Remove the cannula',
  fill: (step) => pick(step, 'The site', 'looks well'),
  press: 'It is out',
};

export const goHome: readonly HandStep[] = [
  {
    title: 'Watch afterwards',
    fill: async (step) => {
      await hands(step).fill('Watched for', '30');
      await pick(step, 'Well?', 'yes');
    },
    press: 'Record',
  },
  {
    title: 'See them off',
    fill: async (step) => {
      await pick(step, /^Do they hold the card/, 'yes');
      await pick(step, /how do they go/, 'fit to go');
    },
    press: 'They have left',
  },
];
