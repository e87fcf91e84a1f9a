/** The worked cases of docs/readiness.md, asked of the checker itself: a checker is only worth its own tests. */
import { describe, expect, test } from 'vitest';
import { entriesFromDrafts, everyDay, parseLedger, teachingSheet } from '@twelvemonth/clinical';
import { dateText, dayNumber } from './dates.ts';
import { countingFacts } from './facts.ts';
import { requirementNames, requirements, together } from './requirements.ts';
import { unsettled } from './settled.ts';
import { viewOf } from './view.ts';
import { question, windowOf } from './window.ts';
import { worldOf } from './world.ts';

const world = worldOf(teachingSheet, everyDay);
const clear = `
1 Oct 2026 allergy none known
1 Oct 2026 pregnancy does not apply "told us"
1 Oct 2026 consent given spoken
1 Oct 2026 teeth nothing pending
1 Oct 2026 secondary causes none found
1 Oct 2026 prescription zoledronic-acid-yearly from 1 Oct 2026 to 30 Sep 2027
`;

function ask(ledger: string, on = '2026-11-25') {
  const read = parseLedger(clear + ledger);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const facts = countingFacts(entriesFromDrafts(read.drafts, { start: '2026-11-25T08:00:00.000Z' }));
  const today = dayNumber(on);
  const view = viewOf(
    world,
    facts.filter((fact) => fact.on <= today),
    today,
  );
  const failing = (day: number) =>
    requirementNames
      .filter((name) => !['ready', 'does not apply'].includes(requirements[name](view, day).verdict))
      .map((name) => `${requirements[name](view, day).verdict}: ${name}`);
  const window = windowOf(question(world, facts, today));
  const { blocked, ifSettled } = unsettled(world, facts, today);
  return {
    today: together(requirementNames.map((name) => requirements[name](view, today))),
    failing: failing(today),
    on: (date: string) => failing(dayNumber(date)),
    window: window && `${dateText(window.first)} - ${window.last === undefined ? '' : dateText(window.last)}`,
    certain: window?.certain,
    draw: window?.plan.draw && `${dateText(window.plan.draw.on)} ${window.plan.draw.tests.join(', ')}`,
    loading: window?.plan.loading?.map(dateText),
    blocked: blocked.map((blocker) => blocker.requirement),
    settledFrom: typeof ifSettled === 'object' ? dateText(ifSettled.first) : ifSettled,
    near: requirements['kidney-function'](view, today).near,
  };
}

const one = `
person female, born 1941-06-02
9 Oct 2026 weight 56.2 kg measured
9 Oct 2026 creatinine 79 umol/L signed
9 Oct 2026 adjusted calcium 2.29 mmol/L signed
14 Mar 2025 dose zoledronic acid 5 mg, this service
`;

describe('the worked cases, by the checker', () => {
  test('1: ready today, until the bloods of 9 Oct run out', () => {
    expect(ask(`${one}9 Oct 2026 vitamin D 68 nmol/L signed`)).toMatchObject({
      today: 'ready',
      window: '2026-11-25 - 2026-12-04',
      certain: true,
      draw: undefined,
    });
  });
  test('2: loading under way, calcium a week after it, usable three days later', () => {
    expect(
      ask(`${one}12 Nov 2026 vitamin D 31 nmol/L signed
24 Nov 2026 vitamin D loading 6 doses of 50000 IU every 7 days from 24 Nov 2026
24 Nov 2026 vitamin D taken 1 dose, told us`),
    ).toMatchObject({
      failing: ['not ready: vitamin-d'],
      window: '2027-01-08 - 2027-03-02',
      draw: '2027-01-05 creatinine, calcium',
      loading: ['2026-12-01', '2026-12-08', '2026-12-15', '2026-12-22', '2026-12-29'],
    });
  });
  test('3: hip repaired, vitamin D never measured', () => {
    expect(
      ask(`person female, born 1941-06-02
13 Nov 2026 surgery hip repair
24 Nov 2026 weight 56.2 kg measured
24 Nov 2026 #c creatinine 79 umol/L
24 Nov 2026 #k adjusted calcium 2.29 mmol/L
25 Nov 2026 signed #c #k`),
    ).toMatchObject({
      failing: ['cannot say: vitamin-d', 'not ready: hip-repair'],
      window: '2026-11-28 - 2027-01-19',
      draw: '2026-11-25 vitamin D',
    });
  });
  test('4: the interval, and bloods that run out before it', () => {
    expect(
      ask(`person female, born 1941-06-02
2 Dec 2025 dose zoledronic acid 5 mg, this service
1 Oct 2026 creatinine 79 umol/L signed
1 Oct 2026 adjusted calcium 2.29 mmol/L signed
1 Oct 2026 vitamin D 68 nmol/L signed
25 Nov 2026 weight 56.2 kg measured`),
    ).toMatchObject({
      failing: ['not ready: interval'],
      window: '2026-12-02 - 2027-01-20',
      draw: '2026-11-25 creatinine, calcium',
    });
  });
  test('5: near the limit until her birthday', () => {
    expect(
      ask(`person female, born 1942-01-15
20 Nov 2026 weight 48.5 kg measured
20 Nov 2026 creatinine 80 umol/L signed
20 Nov 2026 adjusted calcium 2.31 mmol/L signed
20 Nov 2026 vitamin D 68 nmol/L signed`),
    ).toMatchObject({ today: 'ready', near: true, window: '2026-11-25 - 2027-01-14' });
  });
  test('6: below by one form', () => {
    expect(
      ask(`person female, born 1941-11-25
20 Nov 2026 weight 52 kg measured
20 Nov 2026 creatinine 85 umol/L signed
20 Nov 2026 adjusted calcium 2.31 mmol/L signed
20 Nov 2026 vitamin D 68 nmol/L signed`),
    ).toMatchObject({ failing: ['not ready: kidney-function'], window: undefined, blocked: ['kidney-function'] });
  });
  test('7: a dose of 29 February', () => {
    const asked = ask(
      'person female, born 1941-06-02\n29 Feb 2024 dose zoledronic acid 5 mg, this service',
      '2025-02-28',
    );
    expect(asked.on('2025-02-28')).not.toContain('not ready: interval');
    expect(
      ask('person female, born 1941-06-02\n29 Feb 2024 dose zoledronic acid 5 mg, this service', '2025-02-27').on(
        '2025-02-27',
      ),
    ).toContain('not ready: interval');
  });
  test('9: three of three doses, no review', () => {
    expect(
      ask(`${one}9 Oct 2026 vitamin D 68 nmol/L signed
14 Mar 2024 dose zoledronic acid 5 mg, this service
14 Mar 2023 dose zoledronic acid 5 mg, this service`),
    ).toMatchObject({ failing: ['not ready: course'], window: undefined, settledFrom: '2026-11-25' });
  });
  test('10: a year of birth is not a birth date', () => {
    expect(ask(`${one.replace('1941-06-02', '1941')}9 Oct 2026 vitamin D 68 nmol/L signed`)).toMatchObject({
      failing: ['cannot say: identity', 'cannot say: kidney-function'],
      window: undefined,
    });
  });
  test('11: below a limit by a comparator', () => {
    expect(ask(`${one}20 Nov 2026 vitamin D <20 nmol/L signed`)).toMatchObject({
      failing: ['not ready: vitamin-d'],
      window: '2027-01-09 - 2027-03-03',
      draw: '2027-01-06 creatinine, calcium',
    });
  });
  test('12: unwell, and nobody has said that it is over', () => {
    expect(
      ask(`${one}9 Oct 2026 vitamin D 68 nmol/L signed\n23 Nov 2026 illness "vomiting for three days"`),
    ).toMatchObject({
      failing: ['not ready: illness', 'cannot say: kidney-function', 'cannot say: calcium'],
      window: undefined,
      settledFrom: '2026-11-30',
    });
  });
});
