import { describe, expect, it } from 'vitest';
import { readRegister, registerLimits } from '../src/index.ts';
import { tableOf } from './bring-in.ts';

const header = 'MRN,Surname,Forename,DOB';
const refusalOf = (text: string): string | undefined => {
  const read = readRegister(text);
  return 'refused' in read ? read.refused.problem : undefined;
};

describe('reading a file as a table', () => {
  it.each([[','], [';'], ['\t'], ['|']] as const)('finds the separator %j', (separator) => {
    const table = tableOf(`${header}\n999 1,Tarn,Ada,1941-06-02\n`.replaceAll(',', separator));
    expect([table.separator, table.header, table.rows[0]?.cells]).toEqual([
      separator,
      ['MRN', 'Surname', 'Forename', 'DOB'],
      ['999 1', 'Tarn', 'Ada', '1941-06-02'],
    ]);
  });

  it('is not misled by decimal commas in a file with semicolons', () => {
    expect(tableOf('Nr;Name;Crea;Ca;Gew\n1;A B;71,5;2,35;58,4\n2;C D;80,5;2,30;61,2\n').separator).toBe(';');
  });

  it('believes a first line that states the separator', () => {
    const table = tableOf(`sep=;\n${header.replaceAll(',', ';')}\n1;Tarn;Ada;1941\n`);
    expect([table.separator, table.rows[0]?.row]).toEqual([';', 3]);
  });

  it('passes over titles above the header and counts rows as the spreadsheet does', () => {
    const table = tableOf(
      `Osteoporosis register,,,\nprinted by J Bloggs,,,\n\n${header}\n999 1,Tarn,Ada,1941-06-02\n\n999 2,Penn,Bo,1942-06-02\n`,
    );
    expect([table.passedOver, table.rows.map((row) => row.row)]).toEqual([3, [5, 7]]);
  });

  it('passes over a header that is repeated at the top of each page', () => {
    const table = tableOf(`${header}\n1,Tarn,Ada,1941\n${header}\n2,Penn,Bo,1942\n`);
    expect([table.rows.length, table.passedOver]).toEqual([2, 1]);
  });

  it('takes off a byte order mark', () => {
    expect(tableOf(`\uFEFF${header}\n1,Tarn,Ada,1941\n`).header[0]).toBe('MRN');
  });

  it('keeps quoted separators, quotation marks and line breaks', () => {
    expect(tableOf(`${header},Notes\n1,"Tarn, Dr",Ada,1941,"said ""no"",\nthen yes"\n`).rows[0]?.cells).toEqual([
      '1',
      'Tarn, Dr',
      'Ada',
      '1941',
      'said "no",\nthen yes',
    ]);
  });

  it('reads files with any line ends', () => {
    for (const end of ['\n', '\r\n', '\r'])
      expect(tableOf([header, '1,Tarn,Ada,1941', '2,Penn,Bo,1942'].join(end)).rows.length).toBe(2);
  });

  it('fills short rows and keeps cells beyond the header', () => {
    const table = tableOf(`${header}\n1,Tarn\n2,Penn,Bo,1942,extra,,more\n`);
    expect(table.rows.map(({ cells, beyond }) => [cells, beyond])).toEqual([
      [['1', 'Tarn', '', ''], []],
      [
        ['2', 'Penn', 'Bo', '1942'],
        ['extra', 'more'],
      ],
    ]);
  });

  it('gives every column a name of its own', () => {
    expect(tableOf('MRN,Date,Date,,Surname\n1,a,b,c,d\n').header).toEqual([
      'MRN',
      'Date',
      'Date (2)',
      'column 4',
      'Surname',
    ]);
  });

  it('says in which line a quotation mark opens and never closes', () => {
    const read = readRegister(`${header}\n1,"Tarn,Ada,1941\n2,Penn,Bo,1942\n`);
    expect(read).toMatchObject({
      refused: { problem: 'quotes-do-not-close', says: expect.stringMatching(/line \d+/) },
    });
  });

  it.each([
    ['an empty file', '', 'no-header'],
    ['one column', 'just a note\nanother\n', 'no-header'],
    ['no rows', `${header}\n`, 'no-rows'],
    [
      'too many columns',
      `${Array.from({ length: registerLimits.columns + 1 }, (_, n) => `c${n}`).join(',')}\n1\n`,
      'too-many-columns',
    ],
    ['a cell too long', `${header}\n1,${'x'.repeat(registerLimits.cellCharacters + 1)},Ada,1941\n`, 'cell-too-long'],
    ['too many rows', `${header}\n${'1,Tarn,Ada,1941\n'.repeat(registerLimits.rows + 1)}`, 'too-many-rows'],
  ])('refuses %s by name', (_, text, problem) => {
    expect(refusalOf(text)).toBe(problem);
  });

  it('reads a file at its limits', () => {
    expect(tableOf(`${header}\n${'1,Tarn,Ada,1941\n'.repeat(registerLimits.rows)}`).rows.length).toBe(
      registerLimits.rows,
    );
  });
});
