import { describe, expect, it } from 'vitest';
import { suggestMapping } from '../src/index.ts';
import { tableOf } from './bring-in.ts';

const suggestionFor = (header: string, ...rows: readonly string[]) =>
  suggestMapping(tableOf([header, ...rows].join('\n')), 'x');
const meaningOf = (heading: string, cell: string) => suggestionFor(`Colour,${heading}`, `1,${cell}`).mapping.columns[1];
const doubtsOf = (header: string, ...rows: readonly string[]) =>
  suggestionFor(header, ...rows).doubts.map(({ says }) => says);

describe('what headings usually mean', () => {
  it.each([
    ['Surname', 'Tarn', 'family name'],
    ['Pt Surname', 'Tarn', 'family name'],
    ['Forename(s)', 'Ada', 'given name'],
    ['DOB', '13/06/1941', 'birth date'],
    ['D.O.B.', '13/06/1941', 'birth date'],
    ['NHS No', '999 1', 'number'],
    ['Hospital Number', '999 1', 'number'],
    ['M/F', 'F', 'sex'],
    ['Creat (umol/l)', '88', 'creatinine umol/L'],
    ['Cr mg/dl', '0.9', 'creatinine mg/dL'],
    ['25OHD', '48', 'vitamin D'],
    ['Vitamin D3 level nmol/L', '48', 'vitamin D nmol/L'],
    ['Adj Ca', '2.31', 'adjusted calcium mmol/L'],
    ['Ca (corrected) mg/dl', '9.4', 'adjusted calcium mg/dL'],
    ['Calcium mmol/L', '2.2', 'calcium mmol/L'],
    ['Wt kg', '56', 'weight kg'],
    ['Weight date', '13/06/2026', 'weight date'],
    ['Last zol', '13/06/2025', 'last dose date'],
    ['Date of last infusion', '13/06/2025', 'last dose date'],
    ['Inf 1', '13/06/2025', 'dose 1 date'],
    ['Zol #2', '13/06/2025', 'dose 2 date'],
    ['3rd dose date', '13/06/2025', 'dose 3 date'],
    ['Second infusion', '13/06/2025', 'dose 2 date'],
    ['Date given', '13/06/2025', 'dose date'],
    ['Lot no', 'PA-1', 'dose batch'],
    ['Denosumab last given', '13/06/2025', 'denosumab date'],
    ['GP surgery', 'Penrose', 'family doctor'],
    ['Date of hip op', '13/06/2025', 'hip repair date'],
    ['Fracture site', 'NOF', 'fracture site'],
    ['Fx date', '13/06/2025', 'fracture date'],
    ['Allergies', 'NKDA', 'allergy'],
    ['Date of death', '13/06/2025', 'died on'],
    ['Bloods', '13/06/2025', 'bloods date'],
    // Never a dose, never a result.
    ['Next infusion due', '13/06/2027', 'ignore'],
    ['Due date', '13/06/2027', 'ignore'],
    ['CrCl', '41', 'ignore'],
    ['Creatinine clearance', '41', 'ignore'],
    ['Age', '84', 'ignore'],
    ['Shoe size', '5', 'ignore'],
  ])('%s: %s is read as %s', (heading, cell, expected) => {
    const { meaning, unit } = meaningOf(heading, cell) ?? {};
    expect(unit === undefined ? meaning : `${meaning} ${unit}`).toBe(expected);
  });
});

describe('what is only supposed is said', () => {
  const person = 'MRN,Surname,Forename,DOB,Sex';
  const who = (n: number) => `${n},Tarn,Ada,1${n}/06/1941,F`;
  it.each([
    ['a unit from values', `${person},Bloods,Creat`, [`${who(3)},13/10/2026,88`], 'from the values umol/L is supposed'],
    [
      'a unit that could be two',
      `${person},Bloods,Vit D`,
      [`${who(3)},13/10/2026,48`],
      'could be nmol/L or ng/mL: choose',
    ],
    [
      'a heading against its values',
      `${person},Bloods,Creat mg/dL`,
      [`${who(3)},13/10/2026,88`, `${who(4)},13/10/2026,71`, `${who(5)},13/10/2026,102`],
      'the heading says mg/dL, but the values look like umol/L',
    ],
    [
      'an order of dates nothing tells',
      person,
      ['1,Tarn,Ada,03/04/1941,F'],
      'nothing tells whether the day or the month stands first',
    ],
    ['years of two figures', 'MRN,Surname,Forename,DOB,Sex', ['1,Tarn,Ada,13/04/41,F'], 'years have two figures'],
    ['several rows of a person', person, [who(3), who(3)], 'several rows are read as one person'],
    ['two columns for one thing', `${person},Gender`, [`${who(3)},F`], 'is already taken as sex'],
    ['no sex', 'MRN,Surname,Forename,DOB', ['1,Tarn,Ada,13/04/1941'], 'no column holds the sex'],
    ['a value without a date column', `${person},Weight kg`, [`${who(3)},56`], 'its values cannot count'],
    ['an unknown heading', `${person},Shoe size`, [`${who(3)},5`], 'the column is left out'],
    [
      'commas and points',
      'MRN;Surname;Forename;DOB;Sex;Bloods;Ca;Crea',
      ['1;Tarn;Ada;13.04.1941;F;13.10.2026;2,31;88.5'],
      'with a comma in 1 cells and with a point in 1',
    ],
    [
      'dates under a heading of a value',
      `${person},Vit D`,
      [`${who(3)},13/10/2026`],
      'the cells are dates: taken as vitamin D date',
    ],
  ])('%s', (_, header, rows, says) => {
    expect(doubtsOf(header, ...rows).join('\n')).toContain(says);
  });

  it('nothing of a file that says everything', () => {
    expect(
      doubtsOf(`${person},Bloods taken,Creat umol/L,Wt kg,Weighed`, `${who(3)},13/10/2026,88,56,13/10/2026`),
    ).toEqual([]);
  });
});
