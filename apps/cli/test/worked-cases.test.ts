// The worked cases of docs/readiness.md, written as notes and asked on Wed 25 Nov 2026 through the command line.
import { requirementIds } from '@twelvemonth/clinical';
import { describe, expect, it } from 'vitest';
import { fileIn, jsonOf, ownFolder, twelvemonth } from './run-command.ts';

const folder = ownFolder();
/** "What is not mentioned is clear and recorded." */
const clear = `
1 Oct 2026 allergy none known
1 Oct 2026 pregnancy does not apply "told us"
1 Oct 2026 consent given spoken
1 Oct 2026 teeth nothing pending
1 Oct 2026 secondary causes none found
1 Oct 2026 prescription zoledronic-acid-yearly from 1 Oct 2026 to 30 Sep 2027
`;
const bloods = (date: string, weight: string, creatinine: string, calcium: string, vitaminD?: string): string =>
  `${date} weight ${weight} kg measured
${date} creatinine ${creatinine} umol/L signed
${date} adjusted calcium ${calcium} mmol/L signed
${vitaminD === undefined ? '' : `${date} vitamin D ${vitaminD} nmol/L signed`}
`;
const first = `person female, born 1941-06-02\n${bloods('9 Oct 2026', '56.2', '79', '2.29')}14 Mar 2025 dose zoledronic acid 5 mg, this service\n`;

type Answer = {
  readonly verdict: string;
  readonly headline: string;
  readonly nearLimit: boolean;
  readonly window?: { readonly from: string; readonly until?: string; readonly certain: boolean };
  readonly waitingFor: readonly { readonly what: string; readonly until: string }[];
  readonly runsOut?: string;
  readonly otherwise: readonly string[];
  readonly noWindow?: { readonly needs: readonly string[]; readonly ifSettled?: string };
  readonly nextSteps: readonly { readonly kind: string; readonly earliest: string; readonly latest?: string }[];
  readonly requirements: readonly {
    readonly id: string;
    readonly verdict: string;
    readonly working: {
      readonly says: string;
      readonly formulas: readonly { readonly gives: string }[];
      readonly inputs: readonly unknown[];
    };
  }[];
};

let files = 0;
const ask = (ledger: string, more: readonly string[] = ['--today', '2026-11-25']) =>
  jsonOf<Answer>(['readiness', '--ledger', fileIn(folder, `case-${(files += 1)}.txt`, `${ledger}${clear}`), ...more]);

describe('worked cases', () => {
  it('1: ready, 25 Nov - 4 Dec 2026; the bloods of 9 Oct run out', async () => {
    const answer = await ask(`${first}9 Oct 2026 vitamin D 68 nmol/L signed\n`);
    expect(answer).toMatchObject({
      code: 0,
      verdict: 'ready',
      window: { from: '2026-11-25', until: '2026-12-04', certain: true },
      waitingFor: [],
      nextSteps: [],
    });
    expect(answer.runsOut).toContain('bloods of 9 Oct 2026');
  });

  it('2: loading to 29 Dec, calcium from 5 Jan, usable 8 Jan; window 8 Jan - 2 Mar 2027, if good', async () => {
    const answer = await ask(`${first}12 Nov 2026 vitamin D 31 nmol/L signed
24 Nov 2026 vitamin D loading 6 doses of 50000 IU every 7 days from 24 Nov 2026
24 Nov 2026 vitamin D taken 1 dose, told us\n`);
    expect(answer).toMatchObject({
      code: 1,
      verdict: 'not ready',
      window: { from: '2027-01-08', until: '2027-03-02', certain: false },
    });
    expect(answer.waitingFor.map((link) => link.until)).toEqual(['2026-12-29', '2027-01-05', '2027-01-08']);
    expect(answer.nextSteps.find((step) => step.kind === 'draw')).toMatchObject({ earliest: '2027-01-05' });
  });

  it('2, with a place on 28 Jan: the draw from 5 to 25 Jan', async () => {
    const answer = await ask(
      `${first}12 Nov 2026 vitamin D 31 nmol/L signed
24 Nov 2026 vitamin D loading 6 doses of 50000 IU every 7 days from 24 Nov 2026
24 Nov 2026 vitamin D taken 1 dose, told us
24 Nov 2026 place 3 on 28 Jan 2027 at 10:00, unit thornbeck, session s1\n`,
    );
    expect(answer.nextSteps.find((step) => step.kind === 'draw')).toMatchObject({
      earliest: '2027-01-05',
      latest: '2027-01-25',
    });
  });

  it('3: hip on 27 Nov, vitamin D never measured; 28 Nov 2026 - 19 Jan 2027 if it is 50 or more', async () => {
    const answer = await ask(`person female, born 1941-06-02
13 Nov 2026 surgery hip repair
24 Nov 2026 weight 56.2 kg measured
24 Nov 2026 #c creatinine 79 umol/L
24 Nov 2026 #k adjusted calcium 2.29 mmol/L
25 Nov 2026 signed #c #k\n`);
    expect(answer).toMatchObject({
      code: 1,
      verdict: 'not ready',
      window: { from: '2026-11-28', until: '2027-01-19', certain: false },
    });
    expect(
      answer.requirements
        .filter((one) => one.verdict !== 'ready' && one.verdict !== 'does not apply')
        .map((one) => `${one.verdict}: ${one.id}`)
        .toSorted(),
    ).toEqual(['cannot say: vitamin-d', 'not ready: hip-repair']);
    expect(answer.otherwise.join()).toContain('below 50');
  });

  it('4: interval; 2 Dec 2026 - 20 Jan 2027; draw 25 - 29 Nov', async () => {
    const answer = await ask(`person female, born 1941-06-02
2 Dec 2025 dose zoledronic acid 5 mg, this service
${bloods('1 Oct 2026', '56.2', '79', '2.29', '68')}25 Nov 2026 weight 56.2 kg measured\n`);
    expect(answer).toMatchObject({ verdict: 'not ready', window: { from: '2026-12-02', until: '2027-01-20' } });
    expect(answer.nextSteps.find((step) => step.kind === 'draw')).toMatchObject({
      earliest: '2026-11-25',
      latest: '2026-11-29',
    });
  });

  it('5: ready near the limit, 35.31 and 35.43 at 84; 34.68 and 34.80 on her birthday', async () => {
    const ledger = `person female, born 1942-01-15\n${bloods('20 Nov 2026', '48.5', '80', '2.31', '68')}`;
    const answer = await ask(ledger);
    expect(answer).toMatchObject({
      code: 0,
      verdict: 'ready',
      nearLimit: true,
      window: { from: '2026-11-25', until: '2027-01-14' },
    });
    const forms = (one: Answer) =>
      one.requirements
        .find(({ id }) => id === 'kidney-function')
        ?.working.formulas.map(({ gives }) => gives)
        .join() ?? '';
    expect(forms(answer)).toMatch(/35\.31.*35\.43|35\.43.*35\.31/);
    const later = await ask(ledger, ['--today', '2026-11-25', '--on', '2027-01-15']);
    expect(later).toMatchObject({ code: 1, verdict: 'not ready' });
    expect(forms(later)).toMatch(/34\.68.*34\.80|34\.80.*34\.68/);
  });

  it('6: 34.99 by one form, 35.11 by the other: not ready, no window', async () => {
    const answer = await ask(`person female, born 1941-11-25\n${bloods('25 Nov 2026', '52', '85', '2.31', '68')}`);
    expect(answer).toMatchObject({ code: 1, verdict: 'not ready' });
    expect(answer.window).toBeUndefined();
    const kidney = answer.requirements.find(({ id }) => id === 'kidney-function');
    expect(JSON.stringify(kidney?.working)).toMatch(/34\.99/);
    expect(JSON.stringify(kidney?.working)).toMatch(/35\.11/);
  });

  it('7: a dose on 29 Feb 2024: on 28 Feb 2025 the interval is met', async () => {
    const ledger = 'person female, born 1941-06-02\n29 Feb 2024 dose zoledronic acid 5 mg, this service\n';
    const interval = async (today: string) =>
      (await ask(ledger, ['--today', today])).requirements.find(({ id }) => id === 'interval')?.verdict;
    expect([await interval('2025-02-27'), await interval('2025-02-28')]).toEqual(['not ready', 'ready']);
  });

  it('9: three of three doses: a review, and what if it says continue', async () => {
    const answer = await ask(`${first}9 Oct 2026 vitamin D 68 nmol/L signed
14 Mar 2024 dose zoledronic acid 5 mg, this service
14 Mar 2023 dose zoledronic acid 5 mg, this service\n`);
    expect(answer).toMatchObject({ code: 1, verdict: 'not ready' });
    expect(answer.window).toBeUndefined();
    expect(answer.noWindow?.ifSettled).toContain('25 Nov');
  });

  it('10: a year of birth only: cannot say', async () => {
    const answer = await ask(`${first.replace('1941-06-02', '1941')}9 Oct 2026 vitamin D 68 nmol/L signed\n`);
    expect(answer).toMatchObject({ code: 1, verdict: 'cannot say' });
    expect(answer.window).toBeUndefined();
  });

  it('11: vitamin D "<20": loading from today; 9 Jan - 3 Mar 2027', async () => {
    const answer = await ask(`${first}20 Nov 2026 vitamin D <20 nmol/L signed\n`);
    expect(answer).toMatchObject({ verdict: 'not ready', window: { from: '2027-01-09', until: '2027-03-03' } });
    expect(answer.waitingFor.map((link) => link.until)).toEqual(['2026-12-30', '2027-01-06', '2027-01-09']);
  });

  it('12: vomiting, nobody has said that it is over: not ready, no window', async () => {
    const answer = await ask(
      `${first}9 Oct 2026 vitamin D 68 nmol/L signed\n23 Nov 2026 illness "vomiting for three days"\n`,
    );
    expect(answer).toMatchObject({ code: 1, verdict: 'not ready' });
    expect(answer.window).toBeUndefined();
    expect(answer.noWindow?.ifSettled).toContain('30 Nov');
  });

  it('every requirement comes with its working', async () => {
    const answer = await ask(`${first}9 Oct 2026 vitamin D 68 nmol/L signed\n`);
    expect(answer.requirements).toHaveLength(requirementIds.length);
    for (const { working } of answer.requirements) expect(working.says).not.toBe('');
  });
});

describe('a case that asks its own questions', () => {
  const asks = (questions: string) =>
    twelvemonth([
      'readiness',
      '--ledger',
      fileIn(folder, `asks-${(files += 1)}.txt`, `${first}9 Oct 2026 vitamin D 68 nmol/L signed\n${clear}${questions}`),
    ]);
  it('ends with 0 when all comes out as expected, a no included', async () => {
    const ran = await asks(
      'readiness for zoledronic acid on 25 Nov 2026 -> ready\nreadiness on 5 Dec 2026 asked on 25 Nov 2026 -> cannot say\n',
    );
    expect(ran).toMatchObject({
      code: 0,
      out: expect.stringMatching(/on 2026-11-25: ready.*as expected\n.*on 2026-12-05: cannot say.*as expected/s),
    });
  });
  it('ends with 1 and says what was expected when it does not', async () => {
    expect(await asks('readiness on 25 Nov 2026 -> not ready\n')).toMatchObject({
      code: 1,
      out: expect.stringContaining('not as expected: not ready'),
    });
  });
});

describe('a case that cannot be read', () => {
  it('is told line by line', async () => {
    const ran = await twelvemonth([
      'readiness',
      '--ledger',
      fileIn(
        folder,
        'wrong.txt',
        'person female, born 1941-06-02\n31 Feb 2026 weight 56 kg measured\n3 Mar 2026 weight 56 stone measured\n',
      ),
    ]);
    expect(ran).toMatchObject({ code: 2, out: '', aside: expect.stringMatching(/line 2.*line 3/s) });
  });
  it('or a file that is not there ends with 3', async () => {
    expect(await twelvemonth(['readiness', '--ledger', 'nowhere.txt'])).toMatchObject({ code: 3 });
  });
});
