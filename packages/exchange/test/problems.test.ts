// Every problem a row can have, by an example a nurse would recognise. The look-alike and unit hazards: practice.md 8-12, 63.
import { describe, expect, it } from 'vitest';
import { inWords } from '../src/index.ts';
import { afterwards, problemsOf, problemsWith, runOf } from './bring-in.ts';

describe('a value in the wrong unit', () => {
  it.each([
    ['Creatinine (umol/L)', '0.9', 'looks-like-other-unit'],
    ['Creatinine (mg/dL)', '88', 'looks-like-other-unit'],
    ['Adj Ca mmol/L', '9.4', 'looks-like-other-unit'],
    ['Adj Ca mg/dL', '2.3', 'looks-like-other-unit'],
    ['Albumin g/L', '4.1', 'looks-like-other-unit'],
    ['Vit D ng/mL', '140', 'unusual-value'],
    ['Weight kg', '310', 'impossible-value'],
    ['Weight kg', '140', 'unusual-value'],
    ['Weight kg', '24', 'impossible-value'],
    ['Weight lb', '48', 'looks-like-other-unit'],
    ['Height cm', '64', 'looks-like-other-unit'],
    ['Adj Ca mmol/L', '22', 'impossible-value'],
    ['Creatinine (umol/L)', '88 kg', 'unit-of-something-else'],
  ])('%s %s: %s', (heading, cell, problem) => {
    expect(problemsWith(heading, cell)).toEqual([problem]);
  });

  it('is believed where the cell itself says the unit', () => {
    expect(problemsWith('Creatinine (umol/L)', '0.9 mg/dL')).toEqual([]);
    expect(problemsWith('Weight kg', '9st 4lb')).toEqual(['converted']);
  });

  it('is not asked of a value below a limit: "<20" stays "<20"', () => {
    expect(problemsWith('Vit D nmol/L', '<20')).toEqual([]);
    expect(problemsWith('Creatinine (umol/L)', '<20')).toEqual([]);
  });

  it('of no unit at all stops the mapping where two units are possible, and is only supposed where one is', () => {
    const vitaminD = runOf(registerOf('Vit D', ['48', '22', '61']));
    expect(vitaminD.mappingProblems).toMatchObject([{ column: 'Vit D' }]);
    expect(vitaminD.proposals).toEqual([]);
    expect(runOf(registerOf('Creat', ['71', '88', '102'])).mappingProblems).toEqual([]);
  });
});

const registerOf = (heading: string, cells: readonly string[]): string =>
  `MRN,Surname,Forename,DOB,Bloods date,${heading}\n${cells.map((cell, index) => `999 20${index},${['Tarn', 'Quill', 'Ombersley'][index]},Ada,1${index + 3}/06/194${index},20/10/2026,${cell}`).join('\n')}\n`;

describe('a weight in pounds under kilograms', () => {
  const two = (first: string, second: string) =>
    runOf(
      `MRN,Surname,Forename,DOB,Weight kg,Weight date\n999 1,Tarn,Ada,13/06/1941,${first},13/05/2026\n999 1,Tarn,Ada,13/06/1941,${second},13/10/2026\n`,
    );

  it('is caught against the same person', () => {
    expect(problemsOf(two('56', '123'), 3)).toEqual(['weight-like-other-unit']);
    expect(problemsOf(two('123', '56'), 3)).toEqual(['weight-like-other-unit']);
  });
  it('is remarked on when a weight jumps by more than a seventh', () => {
    expect(problemsOf(two('56', '66'), 3)).toEqual(['weight-jump']);
    expect(problemsOf(two('56', '57.5'), 3)).toEqual([]);
  });
  it('is not doubted once the cell says its unit', () => {
    expect(problemsOf(two('56', '123 lb'), 3)).toEqual([]);
    expect(problemsOf(two('56', '123 kg'), 3)).toEqual([]);
  });
});

const person = (
  cells: Partial<Record<'mrn' | 'surname' | 'forename' | 'dob' | 'sex' | 'dose' | 'second', string>>,
): string => {
  const row = {
    mrn: '999 300 1',
    surname: 'Tarn',
    forename: 'Ada',
    dob: '13/06/1941',
    sex: 'F',
    dose: '13/05/2025',
    second: '',
    ...cells,
  };
  return Object.values(row).join('\t');
};
const people = (...rows: readonly string[]): string =>
  `MRN\tSurname\tForename\tDOB\tSex\tZol 1\tZol 2\n${rows.join('\n')}\n`;
const problemsOfPerson = (cells: Parameters<typeof person>[0]) =>
  problemsOf(runOf(people(person(cells)), { mapping: { dateOrder: 'day month year' } }), 2);

describe('who it is', () => {
  it.each([
    [{ mrn: '' }, 'number-missing'],
    [{ surname: '' }, 'name-missing'],
    [{ dob: '' }, 'birth-date-missing'],
    [{ dob: '1941' }, 'birth-date-in-part'],
    [{ dob: '13/06/1905' }, 'age-implausible'],
    [{ dob: '13/06/2011' }, 'very-young'],
    [{ dob: '13/06/2027' }, 'in-the-future'],
    [{ sex: '' }, 'sex-not-known'],
    [{ sex: 'unknown' }, 'sex-not-known'],
    [{ sex: 'lady' }, 'sex-not-read'],
    [{ surname: '=cmd|calc' }, 'formula-text'],
    [{ surname: '@SUM(1)' }, 'formula-text'],
    [{ surname: 'T\uFFFDrn' }, 'broken-characters'],
    [{ surname: 'x'.repeat(300) }, 'does-not-fit'],
  ])('%j: %s', (cells, problem) => {
    expect(problemsOfPerson(cells)).toEqual([problem]);
  });

  it('never takes a year for the first of January', () => {
    const run = runOf(people(person({ dob: '1941' })), { mapping: { dateOrder: 'day month year' } });
    expect(run.proposals[0]?.acts[0]?.act.lines[0]?.body).toMatchObject({ born: '1941' });
  });
});

describe('doses', () => {
  it.each([
    [{ dose: '13/05/1940' }, ['before-the-medicine', 'before-birth']],
    [{ dose: '13/05/1989' }, ['before-the-medicine']],
    [{ dose: '13/05/2025', second: '13/06/2025' }, ['doses-near']],
    [{ dose: '13/05/2025', second: '14/05/2026' }, []],
    [{ dose: '26/11/2026' }, ['in-the-future']],
    [{ dose: '31/06/2025' }, ['no-such-date']],
    [{ dose: 'June 2025' }, ['date-in-part']],
    [{ dose: '45790' }, ['day-number']],
    [{ dose: 'declined' }, ['date-not-read']],
  ])('%j: %j', (cells, problems) => {
    expect(problemsOfPerson(cells)).toEqual(problems);
  });

  it('a dose written twice is one dose', () => {
    const run = runOf('MRN,Surname,Forename,DOB,Sex,Zol 1,Last zol\n1,Tarn,Ada,13/06/1941,F,13/05/2025,13/05/2025\n');
    expect(inWords(run.proposals[0]?.acts ?? []).filter((line) => line.includes(' dose '))).toEqual([
      '13 May 2025  dose zoledronic acid 5 mg, this service',
    ]);
  });

  it('a last dose before another dose is remarked on', () => {
    expect(
      problemsOf(
        runOf('MRN,Surname,Forename,DOB,Sex,Zol 1,Last zol\n1,Tarn,Ada,13/06/1941,F,13/05/2025,13/05/2024\n'),
        2,
      ),
    ).toEqual(['last-dose-not-the-last']);
  });

  it.each([
    ['Zoledronate 4mg', 'dose zoledronic acid 4 mg'],
    ['zoledronic acid', 'dose zoledronic acid 5 mg'],
    ['Denosumab', 'dose denosumab 60 mg'],
  ])('%s is read as %s', (medicine, expected) => {
    const run = runOf(`MRN,Surname,Forename,DOB,Sex,Drug,Date given\n1,Tarn,Ada,13/06/1941,F,${medicine},13/05/2025\n`);
    expect(inWords(run.proposals[0]?.acts ?? []).join()).toContain(expected);
  });

  it('a medicine that cannot be read is not taken for zoledronic acid', () => {
    const run = runOf(
      'MRN,Surname,Forename,DOB,Sex,Drug,Date given\n1,Tarn,Ada,13/06/1941,F,Zoledronate 8mg,13/05/2025\n',
    );
    expect(problemsOf(run, 2)).toEqual(['medicine-not-read']);
    expect(run.proposals).toEqual([]);
  });

  it('"next due" is no dose', () => {
    const run = runOf(
      'MRN,Surname,Forename,DOB,Sex,Zol 1,Next infusion due\n1,Tarn,Ada,13/06/1941,F,13/05/2025,13/05/2026\n',
    );
    expect(inWords(run.proposals[0]?.acts ?? []).filter((line) => line.includes(' dose '))).toHaveLength(1);
  });
});

describe('dates whose order nothing tells', () => {
  const text = people(person({ dob: '03/04/1941', dose: '05/06/2025' }));
  it('stop the mapping until someone says the order', () => {
    const run = runOf(text);
    expect(run.mappingProblems.map((problem) => problem.says)).toEqual([
      'nothing tells whether the day or the month stands first in the dates',
    ]);
    expect(run.waiting[0]?.problems.map((problem) => problem.problem)).toEqual(['two-dates', 'two-dates']);
  });
  it('are read once it is said', () => {
    expect(inWords(runOf(text, { mapping: { dateOrder: 'month day year' } }).proposals[0]?.acts ?? [])[0]).toContain(
      'born 1941-03-04',
    );
  });
  it('wait where a column is plainly written both ways round', () => {
    const run = runOf(
      people(
        person({ mrn: '1', dose: '13/05/2025' }),
        person({ mrn: '2', surname: 'Quill', dose: '05/13/2025' }),
        person({ mrn: '3', surname: 'Ombersley', dose: '05/14/2025' }),
        person({ mrn: '4', surname: 'Vask', dose: '05/06/2025' }),
      ),
      { mapping: { dateOrder: 'day month year' } },
    );
    expect(run.waiting.find((waiting) => waiting.row === 5)?.problems.map((problem) => problem.problem)).toEqual([
      'two-dates',
    ]);
  });
});

describe('people who look alike', () => {
  const decide = (...rows: readonly string[]) => runOf(people(...rows), { mapping: { dateOrder: 'day month year' } });
  it('wait when birth date and name nearly agree under two numbers', () => {
    const run = decide(person({ mrn: '1', surname: 'Lindqvist' }), person({ mrn: '2', surname: 'Lindquist' }));
    expect([problemsOf(run, 2), problemsOf(run, 3)]).toEqual([['looks-like-someone'], ['looks-like-someone']]);
  });
  it('wait when the names stand the other way round', () => {
    expect(problemsOf(decide(person({ mrn: '1' }), person({ mrn: '2', surname: 'Ada', forename: 'Tarn' })), 3)).toEqual(
      ['looks-like-someone'],
    );
  });
  it('are remarked on when only the given name and the birth date agree', () => {
    expect(problemsOf(decide(person({ mrn: '1' }), person({ mrn: '2', surname: 'Hollingbourne' })), 3)).toEqual([
      'may-be-someone',
    ]);
  });
  it('are not seen in two people with one name and two birth dates', () => {
    expect(problemsOf(decide(person({ mrn: '1' }), person({ mrn: '2', dob: '14/06/1941' })), 3)).toEqual([]);
  });
  it('wait when the number is somebody else in the notes', () => {
    const known = afterwards(decide(person({ mrn: '1' })));
    const run = runOf(people(person({ mrn: '1', surname: 'Hollingbourne', forename: 'Bo' })), {
      known,
      mapping: { dateOrder: 'day month year' },
    });
    expect(problemsOf(run, 2)).toEqual(['number-of-another-person']);
  });
  it('wait when one number stands on two rows of a file with one row a person', () => {
    const run = runOf(people(person({}), person({})), {
      mapping: { dateOrder: 'day month year', rowsPerPerson: 'one' },
    });
    expect([problemsOf(run, 2), problemsOf(run, 3)]).toEqual([['number-twice'], ['number-twice']]);
  });
  it('are found in the notes too', () => {
    const known = afterwards(decide(person({ mrn: '1' })));
    const run = runOf(people(person({ mrn: '2', surname: 'Tarm' })), {
      known,
      mapping: { dateOrder: 'day month year' },
    });
    expect(problemsOf(run, 2)).toEqual(['looks-like-someone']);
  });
});

describe('words', () => {
  const withColumn = (heading: string, cell: string) =>
    runOf(`MRN,Surname,Forename,DOB,Sex,${heading}\n1,Tarn,Ada,13/06/1941,F,${cell}\n`);
  it.each([
    ['Consent', 'Y', ['consent-not-brought-in'], false],
    ['Consent', 'signed 13/05/2026', ['consent-not-brought-in'], false],
    ['Priority', 'purple', ['word-not-read'], false],
    ['Dental', 'ok', ['word-not-read'], false],
    ['Dental', 'ok 13/05/2026', [], true],
    ['Dental', 'extraction planned', [], true],
    ['Allergies', 'NKDA', [], true],
    ['Allergies', 'Latex', [], true],
  ] as const)('%s "%s": %j', (heading, cell, problems, entry) => {
    const run = withColumn(heading, cell);
    expect(problemsOf(run, 2)).toEqual(problems);
    const kinds = run.proposals[0]?.acts[0]?.act.lines.map((line) => line.kind) ?? [];
    expect(kinds.some((kind) => ['consent', 'dental', 'allergy'].includes(kind))).toBe(entry);
  });

  it('consent is never made out of a tick', () => {
    expect(
      inWords(withColumn('Consent', 'Y').proposals[0]?.acts ?? []).filter((line) => line.includes('consent given')),
    ).toEqual([]);
  });

  // Where the thigh bone is named without its neck a prescriber says which part it was: common practice, no source.
  it.each([
    ['NOF', 'hip'],
    ['subtrochanteric', 'thigh shaft'],
    ['shaft of femur', 'thigh shaft'],
    ['R femur', 'thigh shaft'],
    ['ribs x2', 'ribs'],
    ['humerus', 'upper arm'],
    ['proximal humerus', 'shoulder'],
  ])('a fracture told as "%s" is one of the %s', (cell, site) => {
    expect(
      withColumn('Fracture site', cell).proposals[0]?.acts[0]?.act.lines.find((line) => line.kind === 'fracture')?.body,
    ).toMatchObject({ site });
  });

  it('another bone keeps its name', () => {
    expect(
      withColumn('Fracture site', 'toe').proposals[0]?.acts[0]?.act.lines.find((line) => line.kind === 'fracture')
        ?.body,
    ).toMatchObject({ site: 'other', bone: 'toe' });
  });

  it('an allergy to a bisphosphonate is one, whatever its name', () => {
    for (const cell of ['alendronic acid - rash', 'Zoledronate anaphylaxis', 'bisphosphonates']) {
      expect(
        withColumn('Allergies', cell).proposals[0]?.acts[0]?.act.lines.find((line) => line.kind === 'allergy')?.body,
      ).toMatchObject({ answer: 'bisphosphonate' });
    }
  });
});

describe('facts the notes have otherwise', () => {
  const file = (creatinine: string, allergy = 'NKDA') =>
    `MRN,Surname,Forename,DOB,Sex,Bloods date,Creat umol/L,Allergies\n1,Tarn,Ada,13/06/1941,F,13/10/2026,${creatinine},${allergy}\n`;
  const known = afterwards(runOf(file('79')));
  it('a result of the same day with another number waits', () => {
    expect(problemsOf(runOf(file('97'), { known }), 2)).toEqual(['differs-from-notes']);
  });
  it('the same number written with another zero is the same', () => {
    expect(runOf(file('79.0'), { known }).alreadyHere).toHaveLength(1);
  });
  it('another allergy waits', () => {
    expect(problemsOf(runOf(file('79', 'Latex'), { known }), 2)).toEqual(['allergy-differs']);
  });
});

describe('two rows of one file that contradict each other', () => {
  const rows = (first: string, second: string) =>
    runOf(
      `MRN,Surname,Forename,DOB,Sex,Bloods date,Creat umol/L\n1,Tarn,Ada,13/06/1941,F,13/10/2026,${first}\n1,Tarn,Ada,13/06/1941,F,13/10/2026,${second}\n`,
    );
  it('the same test of the same day with another number waits, both rows: neither is guessed to be right', () => {
    const run = rows('79', '97');
    expect([problemsOf(run, 2), problemsOf(run, 3)]).toEqual([['waits-with-another-row'], ['rows-disagree']]);
    expect(run.proposals).toEqual([]);
  });
  it('the same number twice is one result', () => {
    expect(
      inWords(rows('79', '79.0').proposals[0]?.acts ?? []).filter((line) => line.includes('creatinine')),
    ).toHaveLength(1);
  });
});

describe('a date without its year', () => {
  it.each(['13 Oct', '13/10', 'Oct 13', '13.10.'])('"%s" waits: no year is completed', (cell) => {
    const run = runOf(`MRN,Surname,Forename,DOB,Sex,Bloods date,Creat umol/L\n1,Tarn,Ada,13/06/1941,F,${cell},79\n`);
    expect(run.waiting.map(({ row }) => row)).toEqual([2]);
    expect(['date-not-read', 'date-in-part']).toContain(problemsOf(run, 2)[0]);
    expect(run.proposals).toEqual([]);
  });
});
