// What the reader proposes, the clinical core accepts: the same decisions as the service makes when a file is brought in.
import {
  type Author,
  type DecisionContext,
  type Ledgers,
  type Surroundings,
  carryOut,
  day,
  everyDay,
  noFormulary,
  recordOf,
  standingOf,
  subject,
  teaching,
} from '@twelvemonth/clinical';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type DryRun, dryRun, suggestMapping } from '../src/index.ts';
import { fixture, idFrom, runOf, tableOf, today } from './bring-in.ts';

const by: Author = { staff: 'nurse', role: 'nurse in charge' };
const context: DecisionContext = { protocols: [{ from: day('2000-01-01'), protocol: teaching }], calendar: everyDay };

/** Carries out every act of a dry run; the refusals, as sentences. */
function refusalsOf(run: DryRun): { readonly refusals: readonly string[]; readonly ledgers: Ledgers } {
  const ledgers: Ledgers = new Map();
  const refusals: string[] = [];
  for (const { acts, rows } of run.proposals) {
    for (const { id, act } of acts) {
      const now: Surroundings = {
        ledgers,
        context,
        formulary: noFormulary,
        by,
        today,
        moment: '2026-11-25T09:00:00.000+00:00',
        zone: 'Europe/London',
        clock: { boot: 'b', uptimeMilliseconds: 0, wall: '2026-11-25T09:00:00.000Z' },
      };
      const said = carryOut(ledgers, { id, act, at: '2026-11-25T09:00:00.000Z' }, now);
      refusals.push(
        ...said.map(({ name, says, field }) => `rows ${rows.join(', ')}: ${name}: ${says} (${field ?? ''})`),
      );
    }
  }
  return { refusals, ledgers };
}

describe('a proposal is accepted', () => {
  it.each(['infusion-center-us.csv', 'day-clinic-semicolon.csv', 'two-rows-a-patient.csv'])('of %s', (name) => {
    const { refusals, ledgers } = refusalsOf(runOf(fixture(name)));
    expect(refusals).toEqual([]);
    for (const [of, entries] of ledgers)
      expect(standingOf(recordOf(of, entries), teaching, today).standing).not.toBe('not accounted for');
  });

  it('of any register with a number, a name and a birth date', () => {
    const dates = fc.constantFrom('', '13/05/2024', '13/05/2025', '14/06/2026', '25/11/2026', '20/01/2019', '1/2/2010');
    const row = fc.record({
      mrn: fc.nat({ max: 999_999 }).map((n) => `999 ${n}`),
      surname: fc.constantFrom('Tarn', 'Quill', 'Ombersley', 'Vask-Penn', '=Odd'),
      forename: fc.constantFrom('Ada', 'Bo', 'Ilse'),
      dob: fc.integer({ min: 1920, max: 1990 }).map((year) => `13/06/${year}`),
      sex: fc.constantFrom('F', 'M', ''),
      zol1: dates,
      last: dates,
      denosumab: dates,
      bloods: dates,
      creatinine: fc.constantFrom('', '79', '102', '<20', '310'),
      calcium: fc.constantFrom('', '2.31', '2.05', '2.71'),
      vitaminD: fc.constantFrom('', '<20', '48', '91'),
      weight: fc.constantFrom('', '56.2', '81', '9st 4lb', '120 lb'),
      weighed: dates,
      height: fc.constantFrom('', '160', `5'4"`),
      fracture: fc.constantFrom('', 'NOF', 'wrist', 'toe', 'L2'),
      fractureDate: dates,
      hip: dates,
      allergy: fc.constantFrom('', 'NKDA', 'alendronate', 'latex'),
      consent: fc.constantFrom('', 'signed 13/05/2026', 'declined', 'Y'),
      dental: fc.constantFrom('', 'ok 13/05/2026', 'extraction planned'),
      died: fc.constantFrom('', '', '', '25/11/2026', '13/05/2025'),
      notes: fc.string({ maxLength: 20 }).map((text) => text.replaceAll(/[\t\r\n"]/g, ' ')),
    });
    const header =
      'MRN\tSurname\tForename\tDOB\tSex\tZol 1\tLast zol\tDenosumab\tBloods date\tCreat umol/L\tAdj Ca mmol/L\tVit D nmol/L\tWt kg\tWeighed\tHt cm\tFracture\tFracture date\tHip repair\tAllergies\tConsent\tDental\tDied\tNotes';
    let proposed = 0;
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 6 }), (rows) => {
        const table = tableOf(`${header}\n${rows.map((cells) => Object.values(cells).join('\t')).join('\n')}\n`);
        const mapping = {
          ...suggestMapping(table, 'x').mapping,
          dateOrder: 'day month year' as const,
          rowsPerPerson: 'several' as const,
        };
        const run = dryRun({ table, mapping, known: [], today, unit: 'thornbeck', fingerprint: 'f', idFrom });
        proposed += run.proposals.length;
        expect(refusalsOf(run).refusals).toEqual([]);
      }),
      { seed: 20261125, numRuns: 300 },
    );
    expect(proposed).toBeGreaterThan(300);
  });
});

it('a file proposes notes of patients and nothing else', () => {
  const { ledgers } = refusalsOf(runOf(fixture('two-rows-a-patient.csv')));
  expect([...ledgers.keys()].every((of) => of.startsWith(subject('patient', '')))).toBe(true);
});
