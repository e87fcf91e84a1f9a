import { type Entry, day } from '@twelvemonth/clinical';
import { describe, expect, it } from 'vitest';
import { dryRunAnswerOf, inWords, suggestMapping, tryAgain } from '../src/index.ts';
import { dryRunAnswer } from '../src/contract/import.ts';
import { afterwards, entriesOf, fixture, idFrom, knownFrom, runOf, tableOf, today } from './bring-in.ts';

const names = ['infusion-center-us.csv', 'day-clinic-semicolon.csv', 'two-rows-a-patient.csv'] as const;

describe('the same file again', () => {
  it.each(names)('%s writes nothing new', (name) => {
    const first = runOf(fixture(name));
    const second = runOf(fixture(name), { known: afterwards(first) });
    expect(first.proposals.length).toBeGreaterThan(0);
    expect(second.proposals).toEqual([]);
    expect(second.alreadyHere.flatMap((here) => here.rows)).toEqual(
      first.proposals.flatMap((proposal) => proposal.rows),
    );
    expect(second.waiting.map((waiting) => waiting.row)).toEqual(first.waiting.map((waiting) => waiting.row));
  });

  it.each(names)('%s makes the same ids, so that a send that broke off can be sent again', (name) => {
    const ids = () => runOf(fixture(name)).proposals.map(({ patient, acts }) => [patient, acts.map((act) => act.id)]);
    expect(ids()).toEqual(ids());
    expect(new Set(ids().flat(2)).size).toBe(ids().flat(2).length);
  });

  it('does not bring back what was withdrawn or corrected here', () => {
    const text = 'MRN,Surname,Forename,DOB,Sex,Zol 1\n1,Tarn,Ada,13/06/1941,F,13/05/2025\n';
    const proposal = runOf(text).proposals[0];
    if (proposal === undefined) throw new Error('nothing proposed');
    const entries = entriesOf(proposal);
    const dose = entries.find((entry) => entry.kind === 'dose');
    const withdrawal = {
      ...entries[0],
      id: 'w',
      seq: entries.length + 1,
      kind: 'withdrawal',
      shape: 1,
      body: { entry: dose?.id, reason: 'not hers' },
      effectiveAt: '2026-11-25',
    } as Entry;
    const known = [knownFrom(proposal.patient, [...entries, withdrawal])];
    expect(known[0]?.doses).toEqual([]);
    expect(runOf(text, { known })).toMatchObject({ proposals: [], alreadyHere: [{ rows: [2] }] });
  });
});

describe('another file about the same people', () => {
  it('adds only what is new, to the same notes', () => {
    const known = afterwards(runOf('MRN,Surname,Forename,DOB,Sex,Zol 1\n999-1,Tarn,Ada,13/06/1941,F,13/05/2025\n'));
    const run = runOf(
      'Hospital number;Name;Date of birth;Infusion 1;Infusion 2\n9991;TARN, Ada;1941-06-13;13.05.2025;20.05.2026\n',
      { known },
    );
    expect(
      run.proposals.map(({ patient, isNew, acts, alreadyHere }) => [
        patient === known[0]?.patient,
        isNew,
        inWords(acts),
        alreadyHere,
      ]),
    ).toEqual([[true, false, ['20 May 2026  dose zoledronic acid 5 mg, this service'], 1]]);
  });
});

describe('a row that waited', () => {
  const text = fixture('day-clinic-semicolon.csv');
  const { mapping } = suggestMapping(tableOf(text), 'clinic');
  const { waiting } = runOf(text);
  const again = (
    row: number,
    change: Record<string, string>,
    more: { sameAs?: string; notTheSame?: boolean } = {},
    known = afterwards(runOf(text)),
  ) => {
    const cells = { ...waiting.find((one) => one.row === row)?.cells, ...change };
    return tryAgain({
      waiting,
      row,
      cells,
      mapping,
      known,
      today,
      unit: 'thornbeck',
      fingerprint: idFrom(text),
      idFrom,
      ...more,
    });
  };

  it('is proposed once its cell is corrected', () => {
    expect(again(5, { Born: '29.02.1944' })).toMatchObject({
      outcome: 'proposed',
      proposal: { rows: [5], isNew: true },
    });
  });
  it('still waits while something is wrong', () => {
    expect(again(5, { Born: '30.02.1944' })).toMatchObject({
      outcome: 'still waits',
      problems: [{ problem: 'no-such-date' }],
    });
  });
  it('believes a unit that is written into the cell', () => {
    const tried = again(6, { 'Crea µmol/l': '0,9 mg/dL' });
    expect(
      tried.outcome === 'proposed' && inWords(tried.proposal.acts).filter((line) => line.includes('creatinine')),
    ).toEqual(['9 Nov 2026   creatinine 0.9 mg/dL']);
  });
  it('is a new person when someone says that it is not the one it looks like', () => {
    expect(again(8, {}, { notTheSame: true })).toMatchObject({ outcome: 'proposed', proposal: { isNew: true } });
  });
  it('goes to the notes of the one it is when someone says so', () => {
    const sister = again(2, {}, { notTheSame: true });
    if (sister.outcome !== 'proposed') throw new Error('row 2 was not proposed');
    const known = [knownFrom(sister.proposal.patient, entriesOf(sister.proposal))];
    const tried = again(8, { '1st infusion': '10.04.2025' }, { sameAs: sister.proposal.patient }, known);
    expect(tried).toMatchObject({
      outcome: 'proposed',
      proposal: { patient: sister.proposal.patient, isNew: false },
    });
    expect(tried.outcome === 'proposed' && inWords(tried.proposal.acts)).toEqual([
      '10 Apr 2025  dose zoledronic acid 5 mg, this service',
    ]);
  });

  it('takes the rows of the same person that waited for it with it', () => {
    const rows = fixture('two-rows-a-patient.csv');
    const run = runOf(rows);
    const cells = { ...run.waiting.find((one) => one.row === 5)?.cells, 'Date of birth': '25/12/40' };
    const tried = tryAgain({
      waiting: run.waiting,
      row: 5,
      cells,
      mapping: suggestMapping(tableOf(rows), 'x').mapping,
      known: [],
      today,
      unit: 'thornbeck',
      fingerprint: idFrom(rows),
      idFrom,
    });
    expect(tried).toMatchObject({ outcome: 'proposed', proposal: { rows: [4, 5] } });
  });
});

describe('a long history', () => {
  it('is cut into acts of at most sixty lines, doses first', () => {
    const visits = Array.from(
      { length: 16 },
      (_, index) =>
        `1,Tarn,Ada,13/06/1941,F,13/05/20${String(10 + index).padStart(2, '0')},13/04/20${String(10 + index).padStart(2, '0')},7${index % 10},2.3${index % 10},6${index % 10}`,
    );
    const run = runOf(
      `MRN,Surname,Forename,DOB,Sex,Date given,Bloods date,Creat umol/L,Adj Ca mmol/L,Vit D nmol/L\n${visits.join('\n')}\n`,
    );
    const acts = run.proposals[0]?.acts ?? [];
    expect(acts.map(({ act }) => [act.isNew, act.lines.length])).toEqual([
      [true, 60],
      [false, 6],
    ]);
    expect(acts[0]?.act.lines.slice(2, 18).every((line) => line.kind === 'dose')).toBe(true);
  });
});

describe('the answer that crosses the wire', () => {
  it.each(names)('%s fits the contract', (name) => {
    const table = tableOf(fixture(name));
    const { mapping, doubts } = suggestMapping(table, name);
    const answer = dryRunAnswerOf({
      file: name,
      fingerprint: idFrom(name),
      table,
      mapping,
      run: runOf(fixture(name)),
      doubts,
    });
    expect(dryRunAnswer.parse(answer)).toEqual(answer);
    expect(answer.counts.newPeople).toBe(runOf(fixture(name)).proposals.length);
  });
});

it('asks on the day it is asked: what lay ahead is taken in when its day has come', () => {
  const text = 'MRN,Surname,Forename,DOB,Sex,Zol 1\n1,Tarn,Ada,13/06/1941,F,26/11/2026\n';
  expect(runOf(text).waiting).toHaveLength(1);
  const table = tableOf(text);
  const rows = [
    { row: 2, cells: Object.fromEntries(table.header.map((name, index) => [name, table.rows[0]?.cells[index] ?? ''])) },
  ];
  expect(
    tryAgain({
      waiting: rows,
      row: 2,
      cells: rows[0]?.cells ?? {},
      mapping: suggestMapping(table, 'x').mapping,
      known: [],
      today: day('2026-11-26'),
      unit: 'thornbeck',
      fingerprint: 'f',
      idFrom,
    }).outcome,
  ).toBe('proposed');
});
