// The files were written as other hospitals keep them before the reader existed; what is expected of them was read off by eye.
import { describe, expect, it } from 'vitest';
import { inWords, suggestMapping } from '../src/index.ts';
import { fixture, problemsOf, runOf, tableOf } from './bring-in.ts';

const names = ['infusion-center-us.csv', 'day-clinic-semicolon.csv', 'two-rows-a-patient.csv'] as const;
const meaningsOf = (name: string) =>
  suggestMapping(tableOf(fixture(name)), name).mapping.columns.map(({ column, meaning, unit }) => [
    column,
    meaning,
    unit,
  ]);

describe('an American infusion centre: titles above the header, pounds, mg/dL, month first', () => {
  const run = runOf(fixture(names[0]));

  it('is mapped from its headings alone', () => {
    expect(meaningsOf(names[0])).toEqual([
      ['MRN', 'number', undefined],
      ['Last Name', 'family name', undefined],
      ['First Name', 'given name', undefined],
      ['DOB', 'birth date', undefined],
      ['Gender', 'sex', undefined],
      ['Zoledronate #1', 'dose 1 date', undefined],
      ['Zoledronate #2', 'dose 2 date', undefined],
      ['Zoledronate #3', 'dose 3 date', undefined],
      ['Lab Draw Date', 'bloods date', undefined],
      ['Scr (mg/dL)', 'creatinine', 'mg/dL'],
      ['Corrected Calcium (mg/dL)', 'adjusted calcium', 'mg/dL'],
      ['Vit D 25-OH (ng/mL)', 'vitamin D', 'ng/mL'],
      ['Wt (lb)', 'weight', 'lb'],
      ['Wt Date', 'weight date', undefined],
      ['Allergies', 'allergy', undefined],
      ['Cell Phone', 'telephone', undefined],
    ]);
    expect(suggestMapping(tableOf(fixture(names[0])), 'x').mapping.dateOrder).toBe('month day year');
  });

  it('keeps values, comparators and units as the laboratory printed them', () => {
    expect(run.proposals.map((proposal) => inWords(proposal.acts))).toEqual([
      [
        '14 Jun 2024  person female, born 1944-03-22, named Maribel Okonjo-Reyes, number 999-410-0011',
        '25 Nov 2026  contact telephone "07700 900311"',
        '14 Jun 2024  referral from "register brought in", reason "brought in with a register", unit thornbeck, tier routine',
        '14 Jun 2024  dose zoledronic acid 5 mg, this service',
        '20 Jun 2025  dose zoledronic acid 5 mg, this service',
        '25 Nov 2026  allergy none known',
        '28 Oct 2026  weight 127 lb reported',
        '28 Oct 2026  creatinine 0.8 mg/dL',
        '28 Oct 2026  adjusted calcium 9.4 mg/dL',
        '28 Oct 2026  vitamin D 41 ng/mL',
      ],
      [
        '30 Sep 2025  person male, born 1939-11-02, named Desmond Vanterpool, number 999-410-0022',
        '25 Nov 2026  contact telephone "07700 900312"',
        '30 Sep 2025  referral from "register brought in", reason "brought in with a register", unit thornbeck, tier routine',
        '30 Sep 2025  dose zoledronic acid 5 mg, this service',
        '25 Nov 2026  allergy other Penicillin',
        '3 Nov 2026   weight 171.5 lb reported',
        '3 Nov 2026   creatinine 1.12 mg/dL',
        '3 Nov 2026   adjusted calcium 9.1 mg/dL',
        '3 Nov 2026   vitamin D <20 ng/mL',
      ],
      [
        '16 Nov 2026  person male, born 1943, named Leopold Ashgrove, number 999-410-0066',
        '25 Nov 2026  contact telephone "07700 900316"',
        '16 Nov 2026  referral from "register brought in", reason "brought in with a register", unit thornbeck, tier routine',
        '25 Nov 2026  allergy bisphosphonate "Alendronate - esophagitis"',
        '16 Nov 2026  creatinine 1.3 mg/dL',
        '16 Nov 2026  adjusted calcium 9.9 mg/dL',
        '16 Nov 2026  vitamin D 61 ng/mL',
      ],
    ]);
  });

  it('holds back what cannot be: another unit, another order of the date, a day that has not come', () => {
    expect(
      run.waiting.map(({ row, problems }) => [row, problems.map(({ column, problem }) => `${column}: ${problem}`)]),
    ).toEqual([
      [7, ['Scr (mg/dL): looks-like-other-unit']],
      [8, ['Corrected Calcium (mg/dL): looks-like-other-unit']],
      [9, ['DOB: no-such-date']],
      [11, ['Lab Draw Date: in-the-future', 'Wt Date: in-the-future']],
    ]);
    expect(problemsOf(run, 10)).toEqual(['birth-date-in-part']);
  });
});

describe('a day clinic on the continent: semicolons, decimal commas, points in dates', () => {
  const run = runOf(fixture(names[1]));

  it('is mapped from its headings alone', () => {
    expect(
      meaningsOf(names[1]).map(([, meaning, unit]) => (unit === undefined ? meaning : `${meaning} in ${unit}`)),
    ).toEqual([
      'number',
      'family name',
      'given name',
      'birth date',
      'sex',
      'dose 1 date',
      'dose 2 date',
      'dose 3 date',
      'bloods date',
      'creatinine in umol/L',
      'adjusted calcium in mmol/L',
      'vitamin D in nmol/L',
      'weight in kg',
      'height in cm',
      'note',
    ]);
  });

  it('reads a cell with a line break and a comma as a decimal sign', () => {
    expect(run.proposals.map((proposal) => inWords(proposal.acts))).toEqual([
      [
        '17 Sep 2024  person female, born 1945-12-02, named Ottilie Baumgartner-Holt, number "999 520 1002"',
        String.raw`17 Sep 2024  referral from "register brought in", reason "From the register: Remarks: lives alone;\nhard of hearing; Weight kg: 63", unit thornbeck, tier routine`,
        '17 Sep 2024  dose zoledronic acid 5 mg, this service',
        '25 Nov 2026  height 158 cm measured now',
        '26 Oct 2026  creatinine 92.5 umol/L',
        '26 Oct 2026  adjusted calcium 2.28 mmol/L',
        '26 Oct 2026  vitamin D 47 nmol/L',
      ],
    ]);
  });

  it('holds back look-alikes, a stray point, a date that does not exist, mg/dL among umol/L, a planned dose', () => {
    expect(run.waiting.map(({ row, problems }) => [row, problems.map(({ problem }) => problem)])).toEqual([
      [2, ['looks-like-someone']],
      [4, ['decimal-point']],
      [5, ['no-such-date']],
      [6, ['looks-like-other-unit']],
      [7, ['in-the-future']],
      [8, ['looks-like-someone']],
    ]);
  });

  it('says of a weight without a date that it cannot count', () => {
    expect(problemsOf(run, 3)).toEqual(['value-without-date']);
  });
});

describe('a hospital that writes one row for each infusion', () => {
  const run = runOf(fixture(names[2]));

  it('joins the rows of a person', () => {
    expect(run.proposals.map(({ rows, who }) => [rows, who])).toEqual([
      [[2, 3], 'PELLING, Rosamund (999 630 2001)'],
      [[6, 7], 'Tarn-Osei, Winifred (999 630 2003)'],
      [[9, 10], 'Cawdrey, Philippa (999 630 2005)'],
    ]);
    expect(inWords(run.proposals[0]?.acts ?? []).filter((line) => /dose|creatinine|weight/.test(line))).toEqual([
      '21 Mar 2024  dose zoledronic acid 5 mg, this service, batch PA-1180',
      '27 Mar 2025  dose zoledronic acid 5 mg, this service, batch PA-1544',
      '21 Mar 2024  weight 61.5 kg reported',
      '27 Mar 2025  weight 60.9 kg reported',
      '1 Mar 2024   creatinine 74 umol/L',
      '10 Mar 2025  creatinine 78 umol/L',
    ]);
  });

  it('takes the medicine from its own column: denosumab is not zoledronic acid', () => {
    expect(inWords(run.proposals[1]?.acts ?? []).filter((line) => line.includes('dose '))).toEqual([
      '2 Feb 2026   dose denosumab 60 mg, this service, batch PA-1701',
    ]);
  });

  it('lets a whole person wait when two of their rows disagree, the innocent row too', () => {
    expect(run.waiting.map(({ row, problems }) => [row, problems.map(({ problem }) => problem)])).toEqual([
      [4, ['waits-with-another-row']],
      [5, ['rows-disagree']],
      [8, ['letter-for-figure']],
    ]);
  });

  it('keeps a formula as text', () => {
    expect(problemsOf(run, 9)).toContain('formula-text');
  });
});

describe('every register', () => {
  it.each(names)('%s: each row is proposed or waits, once', (name) => {
    const run = runOf(fixture(name));
    const rows = [
      ...run.proposals.flatMap((proposal) => proposal.rows),
      ...run.alreadyHere.flatMap((here) => here.rows),
      ...run.waiting.map((waiting) => waiting.row),
    ];
    expect(rows.toSorted((a, b) => a - b)).toEqual(tableOf(fixture(name)).rows.map((row) => row.row));
  });

  it.each(names)('%s: every waiting row says what is wrong and what to do', (name) => {
    for (const { problems } of runOf(fixture(name)).waiting) {
      expect(problems).not.toEqual([]);
      for (const problem of problems) expect([problem.says, problem.remedy]).not.toContain('');
    }
  });
});
