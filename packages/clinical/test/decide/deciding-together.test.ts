/**
 * Entries about deciding together: a copied risk, the talk, capacity and consent. Capacity: Mental Capacity Act 2005 sections
 * 1 to 3 (`from memory`); who covers what in a talk: practice page 1a rows 10 and 11 (common practice, no source).
 */
import { describe, expect, test } from 'vitest';
import { type Act, type KindName, day, kindNamed, taskRows, teaching } from '@twelvemonth/clinical';
import { DayUnit } from './a-day-unit.ts';

const write = (kind: KindName, body: object, effectiveAt = '2026-11-24'): Act => ({
  name: 'record',
  patient: 'p1',
  line: { kind, body, effectiveAt },
});
const someone = (): DayUnit => new DayUnit().register();
const risk = (more: object): object => ({
  of: 'major fracture',
  percent: 20,
  years: 10,
  instrument: 'sheet 3',
  veryFrail: false,
  ...more,
});
const cannot = {
  answer: 'cannot decide this',
  because: 'did not keep it in mind for a minute',
  tried: 'morning, hearing aid, pictures',
  mayReturn: 'not known',
};

describe('a risk is copied as the instrument gave it', () => {
  test.each([{}, { lowPercent: 20, highPercent: 20 }, { lowPercent: 15, highPercent: 26 }, { percent: 0.4 }])(
    'written: %j',
    (more) => {
      someone().expect('dana', write('baseline-risk', risk(more)));
    },
  );
  test.each([
    { percent: 0 },
    { percent: 100 },
    { percent: -1 },
    { years: 0 },
    { years: 11 },
    { years: 2.5 },
    { instrument: ' ' },
    { lowPercent: 10 },
    { highPercent: 30 },
    { lowPercent: 21, highPercent: 30 },
    { lowPercent: 10, highPercent: 19.9 },
    { veryFrail: undefined },
  ])('refused beside its field: %j', (more) => {
    expect(someone().refused('dana', write('baseline-risk', risk(more)))).toEqual(['field-wrong']);
  });
  test('a clerk does not write one', () => {
    expect(someone().refused('bettina', write('baseline-risk', risk({})))).toEqual(['not-yours-to-do']);
  });
});

describe('a talk', () => {
  const talk = (more: object): object => ({ ...(kindNamed('talk').example as object), ...more });
  test.each(['not now', 'more time'])('"%s" names the day of the next question, after the talk', (decision) => {
    const unit = someone();
    expect(unit.refused('dana', write('talk', talk({ decision, askAgainOn: undefined })))).toEqual(['field-wrong']);
    expect(unit.refused('dana', write('talk', talk({ decision, askAgainOn: '2026-11-24' })))).toEqual(['field-wrong']);
    unit.expect('dana', write('talk', talk({ decision, askAgainOn: '2026-11-25' })));
  });
  test('the next question waits for a nurse on its day, until there is another talk', () => {
    const unit = someone();
    const asks = () =>
      taskRows(unit.patient(), teaching, day('2026-12-01')).filter(({ columns }) => columns['task'] === 'ask again');
    unit.expect('dana', write('talk', talk({ decision: 'more time', askAgainOn: '2026-12-08' })));
    expect(asks().map(({ columns }) => [columns['due_day'], columns['owner']])).toEqual([[day('2026-12-08'), 'nurse']]);
    unit.expect('dana', write('talk', talk({ decision: 'this treatment', askAgainOn: undefined })));
    expect(asks()).toEqual([]);
  });
  test('whether it could be said back is always said', () => {
    expect(someone().refused('dana', write('talk', talk({ teachBack: undefined })))).toEqual(['field-wrong']);
  });
});

describe('capacity', () => {
  test('who cannot decide gives no consent; someone decides in their best interest', () => {
    const unit = someone();
    unit.expect('dana', write('capacity', cannot));
    expect(unit.refused('dana', write('consent', { decision: 'given', how: 'spoken' }))).toEqual([
      'cannot-decide-this',
    ]);
    unit.expect('dana', write('consent', { decision: 'best interest', basis: 'bones', consulted: 'her daughter' }));
  });
  test('found able again, they consent themselves', () => {
    const unit = someone();
    unit.expect('dana', write('capacity', cannot));
    unit.expect('dana', write('capacity', { answer: 'can decide this' }));
    unit.expect('dana', write('consent', { decision: 'given', how: 'spoken' }));
  });
  test('it is written at once, also beside a consent given before: that one no longer counts (docs/readiness.md R8)', () => {
    const unit = someone();
    unit.expect('dana', write('consent', { decision: 'given', how: 'spoken' }));
    unit.expect('dana', write('capacity', cannot));
  });
  test('what was tried to help is part of it', () => {
    expect(someone().refused('dana', write('capacity', { ...cannot, tried: undefined }))).toEqual(['field-wrong']);
  });
});
