/** After a first dose: not reached on Friday, asked on Monday, a red flag passed on, the reaction reported; then the recall of next year. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { dangerSigns } from '@twelvemonth/clinical';
import { referralOf, setUp, workUp } from '../../apps/server/test/support/own-server.ts';
import { hands } from '../support/hands.ts';
import { type Service, checked, desktop, service, tablet } from '../support/service.ts';

let at: Service;
const record = (kind: string, body: object, effectiveAt = '2026-11-26') => ({
  name: 'record',
  patient: 'wilhelmina',
  line: { kind, body, effectiveAt },
});

beforeAll(async () => {
  // A Monday; her first dose was on the Thursday before.
  at = await service({ at: '2026-11-30T09:10' });
  await setUp(at.server, '2026-11-30');
  await at.server.done('clerk', referralOf('wilhelmina'));
  await workUp(at.server, 'wilhelmina', '2026-11-30');
  await at.server.done('clerk', record('contact', { telephone: '07700 900123' }));
  const dose = { medicine: 'zoledronic acid 5 mg', setting: 'this service', batch: 'PA-2391' };
  await at.server.done('nurse', record('dose', dose));
});
afterAll(() => at.close());

it('the unit says on which days its advice line is open, under settings', async () => {
  const page = await at.signedIn('lead', '/settings', desktop);
  const { press, fill, tickIn } = hands(page);
  await press(/^Change/);
  for (const day of ['Mon', 'Tue', 'Wed', 'Thu', 'Fri']) await tickIn('Days on which it is answered', day);
  await fill('Answered from', '09:00');
  await fill('Answered until', '16:30');
  await press('Record');
  await page.getByRole('button', { name: /^Change/ }).waitFor();
  await page.context().close();
});

it('a clerk finds her on the list and writes down a call in vain', async () => {
  const page = await at.signedIn('clerk', '/aftercare', desktop);
  const { follow, press, pick, fill, sees } = hands(page);
  await sees('Advice line: Monday to Friday, 09:00 to 16:30.');
  await checked(page, 'aftercare-list-desk');
  await follow(/^ask/);
  await press('Not reached');
  await pick('By what route', 'telephone');
  await fill('What happened', 'rings out');
  await press('Write the try down');
  await sees(/1 call in vain/);
  await page.context().close();
});

it('a nurse asks every question: a danger sign says at once what to do, and is passed on', async () => {
  const page = await at.signedIn('nurse', '/people/wilhelmina/aftercare', tablet);
  const { press, pick, fill, sees } = hands(page);
  await press('The questions');
  await expect
    .poll(async () => page.getByRole('radio', { checked: true }).count(), { message: 'nothing is preset' })
    .toBe(0);
  await pick('How do you ask?', 'telephone');
  await pick('Who answers?', 'the person');
  await pick('How do you feel, compared with before the dose?', 'a little rough');
  for (const { asks } of Object.values(dangerSigns))
    await pick(asks, asks === dangerSigns['red or painful eye'].asks ? 'yes' : 'no');
  await sees(/Your eye must be seen today/);
  await pick('Fever, or feeling hot and shivery?', 'yes');
  await fill('Since when?', '26 11 2026');
  await pick('How bad at its worst?', 'moderate: cannot shop, cook or clean');
  await pick('Is it over?', 'yes');
  await fill('Last day of it', '28 11 2026');
  for (const asks of [
    'Aching muscles, bones or joints?',
    'A headache?',
    'Very tired, no strength?',
    'Feeling sick, or off food?',
  ])
    await pick(asks, 'no');
  await pick('How much do you drink?', 'as usual or more');
  await pick('How do you take paracetamol?', 'as told');
  await sees('Everything was asked.');
  await sees('1 red flag. Say what to do now before you hang up.');
  await checked(page, 'aftercare-asked-tablet');
  await press('Write the answers down');
  await press(/^Write to whom it was passed on/);
  await fill('Who was told, by name', 'Dr Finch, eye casualty');
  await fill('What they will do, and when', 'sees her at 15:00');
  await fill('What the person was told to do now', 'go there by taxi, lenses out');
  await press('Write it down');
  await page.getByRole('heading', { name: /Red flags/ }).waitFor({ state: 'detached' });
  await sees(/red flag passed on to Dr Finch/);
  await page.context().close();
});

describe('the report of her reaction', () => {
  it.each([
    ['desk', desktop],
    ['phone', { width: 320, height: 640 }],
  ] as const)('is plain text at the width of a %s', async (width, viewport) => {
    const page = await at.signedIn('nurse', '/people/wilhelmina/aftercare', viewport);
    const { follow, sees } = hands(page);
    await checked(page, `aftercare-told-${width}`);
    await follow(/^draft a report/);
    await sees(/What happened: fever or shivering/);
    await checked(page, `reaction-report-${width}`);
    await page.context().close();
  });
  it('is written down as sent, with the number', async () => {
    const page = await at.signedIn('nurse', '/people/wilhelmina/aftercare', desktop);
    const { follow, press, pick, fill, sees } = hands(page);
    await follow(/^draft a report/);
    await pick('Sent to', 'national scheme');
    await fill('Number they gave it', 'N-0001');
    await press('Write it down');
    await sees(/reported to the national scheme, N-0001/);
    await page.context().close();
  });
});

describe('coming back, ten weeks before the next dose', () => {
  const open = async (who: 'nurse' | 'clerk', viewport = desktop) => {
    const page = await at.signedIn(who, '/people/wilhelmina/coming-back', viewport);
    await page.getByRole('heading', { level: 1, name: 'Coming back' }).waitFor();
    return page;
  };
  beforeAll(() => at.clock.moveOn(300 * 24 * 60));

  it('stands on the recall list with what is still to ask', async () => {
    const page = await at.signedIn('clerk', '/recall', desktop);
    const { follow, sees } = hands(page);
    await sees(/to ask: still wanted, bloods, teeth/);
    await checked(page, 'recall-open-desk');
    await follow(/^ask/);
    await sees(/less likely next time, and here is the plan/);
    await page.context().close();
  });
  it('a clerk tries in vain, then asks what there is to ask', async () => {
    const page = await open('clerk');
    const { press, pick, fill, sees } = hands(page);
    await press('Tried in vain');
    await pick('By what route', 'letter');
    await pick('Were they reached?', 'no');
    await press('Write it down');
    await sees(/Letter: 1 try in vain/);
    await press('They answered');
    await expect
      .poll(async () => page.getByRole('radio', { checked: true }).count(), { message: 'nothing is preset' })
      .toBe(0);
    await pick('By what route', 'they rang us');
    await pick('Who answered?', 'the person');
    await pick('Do they still want the next dose?', 'yes');
    await pick('Teeth and jaw: anything wrong or planned?', 'nothing');
    await pick('Do they take their daily vitamin D?', 'no');
    await pick('What is agreed about the bloods?', 'form sent');
    await press('Write it down');
    await sees(/wants it \(/);
    await sees(/daily vitamin D is not taken/);
    // The address was not asked: it stays to ask.
    await page
      .getByRole('row', { name: /^Address/ })
      .getByText('to ask')
      .waitFor();
    await press('Somebody else to speak to');
    await fill('Who', 'Anna Arkwright');
    await pick('What are they to the person?', 'legal proxy');
    await pick('Did the person agree that we speak with them?', 'not asked yet');
    await pick('Do we ring them first?', 'no');
    await press('Write it down');
    await sees(/document not seen: tell them nothing yet/);
    await page.context().close();
  });
  it.each([
    ['tablet', tablet],
    ['phone', { width: 320, height: 640 }],
  ] as const)('passes the checks at the width of a %s', async (width, viewport) => {
    const page = await open('nurse', viewport);
    await hands(page).press('They answered');
    await checked(page, `coming-back-${width}`);
    await page.context().close();
  });
  it('each kind of no says its own next date before it is written', async () => {
    const page = await open('nurse');
    const { press, fill, sees } = hands(page);
    await press('They say no');
    for (const says of [
      /^this dose: a nurse asks again on/,
      /^this medicine: a prescriber asks by/,
      /^all contact: nobody rings/,
    ])
      await page.getByRole('radio', { name: says }).waitFor();
    await page.getByRole('radio', { name: /^this dose/ }).check();
    await fill('In their own words', 'not this year');
    await press('Write the no down');
    await sees(/to this dose; ask again on/);
    await page.context().close();
  });
});

describe('who fell out where', () => {
  it.each([
    ['desk', desktop],
    ['phone', { width: 320, height: 640 }],
  ] as const)('is drawn, told and listed at the width of a %s', async (width, viewport) => {
    const page = await at.signedIn('nurse', '/recall', viewport);
    const { follow, unfold, sees } = hands(page);
    await follow('who fell out where');
    await page.getByLabel('Began in').selectOption({ label: '2026 (1)' });
    await unfold('fell out: who (1)');
    await sees('no to this dose: "not this year"');
    await page.locator('summary').filter({ hasText: 'as a table' }).first().click();
    await checked(page, `cohort-${width}`);
    await page.context().close();
  });
});
