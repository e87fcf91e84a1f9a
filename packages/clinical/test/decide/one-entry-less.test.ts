/**
 * A medicine that may start, and every entry it rests on taken away, one at a time: either that cannot be done any more, or the
 * start is refused. Nothing unknown counts as safe, also not what was known a minute ago. And what is told in the last minute.
 */
import { describe, expect, test } from 'vitest';
import { DayUnit, startInfusion, resumeInfusion } from './a-day-unit.ts';

const readyToStart = (): DayUnit => {
  const unit = new DayUnit().booked().at('2026-11-26T08:40:00.000Z').go().prepared();
  unit.expect('imre', unit.check());
  return unit;
};

/** How she came to us, and a weight of two days ago beside that of the day: the dose does not rest on these. */
const notRestedUpon = ['referral', 'triage', 'body weight 56.2 kg'];

/** Part of a step that was finished: it stays. */
const stays = ['part-of-a-finished-step'];

const entries = readyToStart()
  .patient()
  .all.map(({ kind, body }, index) => {
    const shown = 'quantity' in body && kind === 'weight' ? `body weight ${body.quantity.value} kg` : kind;
    return { index, shown, detail: 'analyte' in body ? body.analyte : '' };
  });

describe('ready to start', () => {
  test('with all of them it starts', () => {
    expect(readyToStart().do('dana', startInfusion)).toEqual([]);
  });
  test.each(entries)('without $shown $detail', ({ index, shown }) => {
    const unit = readyToStart();
    const entry = unit.patient().all[index];
    if (entry === undefined) throw new Error('no such entry');
    const kept = unit.do(entry.author, { name: 'withdraw', patient: 'p1', entry: entry.id, reason: 'typed in error' });
    const refused = unit.do('dana', startInfusion);
    const outcome =
      kept.length > 0 ? kept.map(({ name }) => name) : refused.length > 0 ? 'does not start' : 'starts without it';
    const expected = notRestedUpon.includes(shown) ? ['starts without it'] : ['does not start', stays];
    expect(expected).toContainEqual(outcome);
  });
});

test.each(['identifiers', 'alongTheLine'] as const)('without the answer to %s it does not start', (field) => {
  const { [field]: _, ...silent } = startInfusion;
  expect(readyToStart().do('dana', silent)).toMatchObject([{ name: 'field-wrong', field }]);
});

describe('told between the second check and the start', () => {
  test.each([
    ['a no to this dose', 'dana', 'refusal', { to: 'this dose', words: 'not today after all' }],
    ['consent asked again, not given', 'dana', 'consent', { decision: 'not given' }],
    ['an illness', 'dana', 'illness', { what: 'vomiting since the night', sort: 'illness' }],
    ['pain in the thigh', 'dana', 'symptom', { what: 'thigh, hip or groin pain' }],
    ['a painful eye', 'dana', 'symptom', { what: 'eye pain or redness' }],
    ['a tooth to be drawn', 'dana', 'dental', { answer: 'work pending' }],
    ['pregnancy', 'dana', 'pregnancy', { answer: 'pregnant' }],
    ['an allergy to the medicine', 'dana', 'allergy', { answer: 'bisphosphonate', reaction: 'wheeze' }],
    ['a dose given elsewhere', 'dana', 'dose', { medicine: 'zoledronic acid 5 mg', setting: 'ward' }],
    ['a bone tablet', 'dana', 'medicine', { name: 'alendronic acid 70 mg', sort: 'bisphosphonate tablet' }],
    [
      'a creatinine nobody has signed',
      'dana',
      'result',
      { analyte: 'creatinine', quantity: { comparator: '', value: '120', unit: 'umol/L' } },
    ],
    ['an end of care here', 'dana', 'closed', { reason: 'goes back to the family doctor' }],
  ] as const)('%s: it does not start', (_, who, kind, body) => {
    const unit = readyToStart();
    unit.write(who, kind, body);
    expect(unit.do('dana', startInfusion)).not.toEqual([]);
  });
});

test('a no said while it stands still: it does not run on, until they consent again', () => {
  const unit = readyToStart();
  unit.expect('dana', startInfusion);
  unit.expect('dana', { name: 'pause infusion', patient: 'p1', reason: 'wants to talk' });
  unit.write('dana', 'refusal', { to: 'this dose', words: 'no more of it' });
  const resume = resumeInfusion;
  expect(unit.do('dana', resume).map(({ says }) => says)).toEqual(['They said no to this dose.']);
  unit.write('dana', 'consent', { decision: 'given', how: 'spoken' });
  expect(unit.do('dana', resume)).toEqual([]);
});
