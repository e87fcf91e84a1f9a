/** Advice-line calls. What is a red flag, and from where: packages/clinical/src/aftercare/danger-signs.ts (each rule names its source). */
import {
  type ActNamed,
  type PlainDate,
  entryText,
  factsOf,
  flagsIn,
  flagsToAsk,
  noRedFlag,
  openCallsOf,
  taskRows,
  unknownCallsOf,
} from '@twelvemonth/clinical';
import { describe, expect, test } from 'vitest';
import { DayUnit, onTheDay } from './a-day-unit.ts';

type Body = ActNamed<'write advice call'>['body'];
const body = (more: Partial<Body> = {}): Body => ({
  caller: 'the person',
  redFlags: [noRedFlag],
  about: 'may she fly on Sunday',
  advice: 'yes, and drink',
  ...more,
});
const call = (more: Partial<Body> = {}): ActNamed<'write advice call'> => ({
  name: 'write advice call',
  patient: 'p1',
  body: body(more),
});
const shaking = 'shaking chills';
const tasks = (unit: DayUnit): string[] =>
  taskRows(unit.patient(), undefined, unit.surroundings({ staff: 'dana', role: 'nurse' }).today).map(({ columns }) =>
    String(columns['task']),
  );

describe('a call about somebody known', () => {
  test('is written by a clerk too, with what was asked, said and advised', () => {
    const unit = onTheDay();
    expect(unit.refused('bettina', call())).toEqual([]);
    expect(unit.newest('advice-call').body).toEqual(body());
    expect(tasks(unit)).not.toContain('answer the red flag');
  });

  test('a red flag is for somebody by name, and waits for an answer from that day on', () => {
    const unit = onTheDay();
    expect(unit.refused('dana', call({ redFlags: [shaking] }))).toEqual(['field-wrong']);
    expect(unit.refused('dana', call({ redFlags: [shaking, noRedFlag], passedTo: 'Halina' }))).toEqual(['field-wrong']);
    unit.expect('dana', call({ redFlags: [shaking], passedTo: 'Halina' }));
    expect(tasks(unit)).toContain('answer the red flag');
    unit.write('halina', 'advice-answered', { about: unit.newest('advice-call').id, outcome: 'seen, chest infection' });
    expect(tasks(unit)).not.toContain('answer the red flag');
    expect(openCallsOf(unit.patient())).toEqual([]);
  });

  test.each(flagsToAsk)('%s: says who acts, and what the person does now', (flag) => {
    const unit = onTheDay();
    unit.expect('bettina', call({ redFlags: [flag], passedTo: 'Halina' }));
    const [told] = flagsIn(unit.newest('advice-call').body.redFlags);
    expect(told?.who.length).toBeGreaterThan(5);
    expect(told?.doNow.length).toBeGreaterThan(10);
    expect(tasks(unit)).toContain('answer the red flag');
  });

  test.each([
    ['thigh, hip or groin pain', 'thigh, hip or groin pain'],
    ['red or painful eye', 'eye pain or redness'],
    ['jaw or tooth trouble', 'jaw pain'],
    ['tingling or cramps', 'tingling or cramps'],
    ['ear pain or discharge', 'other'],
    ['severe pain in bones, joints or muscles', 'other'],
  ] as const)('%s holds the next dose: it is a symptom in the notes too', (flag, what) => {
    const unit = onTheDay();
    unit.expect('bettina', call({ redFlags: [flag], passedTo: 'Halina' }));
    expect(factsOf(unit.patient(), 'symptom').map((told) => told.body.what)).toEqual([what]);
  });

  test('another than the named person may answer: the named one still has it before them', () => {
    const unit = onTheDay();
    unit.expect('bettina', call({ redFlags: [shaking], passedTo: 'Petra Press' }));
    const { id } = unit.newest('advice-call');
    unit.write('dana', 'advice-answered', { about: id, outcome: 'seen at once, ambulance', inPlaceOf: 'Petra Press' });
    expect(tasks(unit)).not.toContain('answer the red flag');
    expect(tasks(unit)).toContain('tell who was named');
    expect(entryText(unit.newest('advice-answered'))).toContain('in place of Petra Press');
    const seen = { about: unit.newest('advice-answered').id, finding: 'read; rang the ward' };
    unit.write('halina', 'looked-again', seen);
    expect(tasks(unit)).not.toContain('tell who was named');
  });
  test('new back pain is asked about, and is written as the symptom that opens a review on treatment (safety rules, course)', () => {
    const unit = onTheDay();
    const back = flagsToAsk.find((name) => name.startsWith('new back pain'));
    expect(back).toBeDefined();
    unit.expect('bettina', call({ redFlags: back === undefined ? [] : [back], passedTo: 'Petra Press' }));
    expect(unit.newest('symptom').body.what).toBe('back pain');
  });
  test('a promise to ring back stands until somebody was reached', () => {
    const unit = onTheDay();
    unit.expect('dana', call({ callBackOn: '2026-11-27' as PlainDate }));
    expect(tasks(unit)).toContain('call back');
    unit.write('bettina', 'call', { route: 'telephone', about: 'advice', reached: false });
    expect(tasks(unit)).toContain('call back');
    unit.write('bettina', 'call', { route: 'telephone', about: 'advice', reached: true });
    expect(tasks(unit)).not.toContain('call back');
  });
});

describe('a call about somebody not found', () => {
  const waiting = (unit: DayUnit) => unknownCallsOf(unit.record('unit/thornbeck'));
  const unknown = (more: Partial<Body> = {}): ActNamed<'write unknown call'> => ({
    name: 'write unknown call',
    unit: 'thornbeck',
    body: { ...body(more), nameSaid: 'Mrs Arkwright?' },
  });

  test('waits at the unit; found, it stands in their notes with the time it was made and holds what it holds', () => {
    const unit = onTheDay();
    unit.expect('bettina', unknown({ redFlags: ['red or painful eye'], passedTo: 'Halina' }));
    const made = unit.now;
    const [waits] = waiting(unit);
    expect(flagsIn(waits?.body.redFlags ?? [])).toHaveLength(1);
    unit.wait(50);
    const settle = {
      name: 'settle unknown call',
      unit: 'thornbeck',
      body: { call: waits?.id ?? '', patient: 'p1', outcome: 'birth date agrees' },
    } as const;
    unit.expect('dana', settle);
    expect(waiting(unit)).toEqual([]);
    const found = unit.newest('advice-call');
    expect(Date.parse(found.at ?? '')).toBe(Date.parse(made));
    expect(found.body.takenFrom).toBe(waits?.id);
    expect(factsOf(unit.patient(), 'symptom').map((told) => told.body.what)).toEqual(['eye pain or redness']);
    expect(tasks(unit)).toContain('answer the red flag');
    expect(unit.refused('dana', settle)).toEqual(['step-already-done']);
  });

  test('written down without a network it stands at the time it was made, and never in the future', () => {
    const unit = onTheDay();
    const made = `${unit.now.slice(0, 19)}Z`;
    unit.wait(40);
    unit.expect('bettina', { ...unknown(), happenedAt: made });
    expect(Date.parse(waiting(unit)[0]?.at ?? '')).toBe(Date.parse(made));
    unit.expect('bettina', { name: 'write advice call', patient: 'p1', body: body(), happenedAt: made });
    expect(Date.parse(unit.newest('advice-call').at ?? '')).toBe(Date.parse(made));
    expect(unit.refused('bettina', { ...unknown(), happenedAt: '2099-01-01T09:00+00:00' })).toEqual(['in-the-future']);
  });

  test('or it is nobody of ours, with what was done', () => {
    const unit = onTheDay();
    unit.expect('dana', unknown());
    const settle = (patient?: string) =>
      ({
        name: 'settle unknown call',
        unit: 'thornbeck',
        body: {
          call: waiting(unit)[0]?.id ?? '',
          ...(patient === undefined ? {} : { patient }),
          outcome: 'her own surgery',
        },
      }) as const;
    expect(unit.refused('dana', settle('p9'))).toEqual(['unknown-patient']);
    unit.expect('dana', settle());
    expect(waiting(unit)).toEqual([]);
  });
});
