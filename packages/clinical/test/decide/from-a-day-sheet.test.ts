/**
 * A day on paper typed in with its mistakes: times out of order are asked about, minutes that stood still do not count, and
 * somebody who came without a place gets the one they had on paper. EU product text 4.2: not under 15 minutes.
 */
import { type Act, type PlainDate, batchSubject, onHand, packsUsedFor, sessionOf } from '@twelvemonth/clinical';
import { describe, expect, test } from 'vitest';
import { DayUnit, onTheDay, startInfusion } from './a-day-unit.ts';

const session = 'thornbeck-2026-11-26';
const at = (time: string): string => `2026-11-26T${time}:00.000+00:00`;
/** It is eleven, and the network is back. */
const typing = (unit: DayUnit): DayUnit => unit.at('2026-11-26T11:00:00.000Z');
const arrival = { session, identifiers: ['full name', 'birth date'], chair: 2 };
const observations = {
  pulsePerMinute: 72,
  systolicMmHg: 130,
  diastolicMmHg: 76,
  temperatureCelsius: 36.8,
  saturationPercent: 97,
  newIrregularPulse: false,
  when: 'before',
};

describe('a time before the step it follows', () => {
  const arrived = (): DayUnit => {
    const unit = typing(onTheDay());
    unit.write('sunniva', 'arrived', arrival, at('09:05'));
    return unit;
  };
  const sentence = 'arrived was at 09:05 on 26 Nov 2026, later than 09:01.';

  test('is asked about, in the words of both times, and written once somebody has looked', () => {
    const unit = arrived();
    const refusals = unit.line('sunniva', 'observations', observations, at('09:01'));
    expect(refusals.map(({ name, says, field }) => [name, says.toLowerCase(), field])).toEqual([
      ['is-it-right', sentence.toLowerCase(), 'line.effectiveAt'],
    ]);
    const confirms = refusals.map(({ says }) => says);
    const line = { kind: 'observations', body: observations, effectiveAt: at('09:01') } as const;
    expect(unit.refused('sunniva', { name: 'record', patient: 'p1', line, confirms })).toEqual([]);
  });

  test.each(['09:05', '09:06'])('%s is not: the same minute and later are in order', (time) => {
    expect(arrived().line('sunniva', 'observations', observations, at(time))).toEqual([]);
  });

  test('at the chair, where the clock stamps, nothing is asked', () => {
    expect(onTheDay().arrive().line('sunniva', 'observations', observations, at('08:45'))).toEqual([]);
  });

  test('an infusion does not start before the cannula or the flush', () => {
    const unit = typing(onTheDay().arrive().observed().asked());
    unit.expect('dana', { name: 'decide', patient: 'p1', decision: 'go', happenedAt: at('09:00') });
    unit.write('dana', 'cannula', { site: 'right forearm', gauge: '22', tries: 1, placed: true }, at('09:30'));
    unit.write(
      'dana',
      'flush',
      { milliliters: 10, ranFreely: true, calciumInLine: false, when: 'before' },
      at('09:40'),
    );
    unit.write('dana', 'preparation', unit.pack(), at('09:10'));
    unit.expect('imre', { ...unit.check(), happenedAt: at('09:15') } as Act);
    const start = (time: string): Act => ({ ...startInfusion, happenedAt: at(time) });
    expect(unit.refused('dana', start('09:20'))).toEqual(['step-out-of-order', 'step-out-of-order']);
    expect(unit.refused('dana', start('09:35'))).toEqual(['step-out-of-order']);
    expect(unit.refused('dana', start('09:40'))).toEqual([]);
  });
});

describe('minutes it stood still, as they stand on the sheet', () => {
  const started = (): DayUnit => {
    const unit = onTheDay().go().prepared();
    unit.expect('imre', unit.check());
    typing(unit).expect('dana', { ...startInfusion, happenedAt: at('10:00') });
    return unit;
  };
  const ended = (time: string, pausedMinutes: number | undefined, more: object = {}): Act => ({
    name: 'finish infusion',
    patient: 'p1',
    milliliters: 100,
    timedBy: 'Dana, wall clock of the bay',
    happenedAt: at(time),
    ...(pausedMinutes === undefined ? {} : { pausedMinutes }),
    ...more,
  });

  // 10:00 to 10:17 with 5 minutes of pause ran 12; with 2 it ran 15.
  test.each<[number, string[]]>([
    [5, ['ran-too-fast']],
    [3, ['ran-too-fast']],
    [2, []],
    [0, []],
  ])('17 minutes with %i of pause', (paused, names) => {
    expect(started().refused('dana', ended('10:17', paused))).toEqual(names);
  });

  test('the dose has the minutes it ran, and the end those it stood still', () => {
    const unit = started();
    unit.expect('dana', ended('10:40', 10));
    expect(unit.newest('dose').body.minutes).toBe(30);
    expect(unit.newest('infusion-finished').body.pausedMinutes).toBe(10);
  });

  test('at the chair pauses are timed by the clock, not typed', () => {
    const now = { ...ended('10:40', 10), happenedAt: undefined } as Act;
    expect(started().refused('dana', now)).toContain('field-wrong');
  });
});

describe('somebody who came without a place', () => {
  const place = (more: object = {}): Act => ({ name: 'book', patient: 'p2', session, place: 2, ...more });
  /** The day after; they were here on paper. */
  const dayAfter = (): DayUnit => {
    const unit = onTheDay();
    unit.ready('p2');
    return unit.at('2026-11-27T09:00:00.000Z');
  };

  test('is put on the list of that day, and their visit is typed in', () => {
    const unit = dayAfter();
    expect(unit.refused('imre', place())).toEqual(['session-past']);
    expect(unit.refused('imre', place({ happenedAt: at('09:30') }))).toEqual([]);
    expect(sessionOf(unit.record(`session/${session}`))?.taken.get(2)).toBe('p2');
    expect(unit.line('sunniva', 'arrived', arrival, at('09:31'), 'p2')).toEqual([]);
  });

  test.each<[string, object, string[]]>([
    ['a time of another day', { happenedAt: '2026-11-25T09:30:00.000+00:00' }, ['field-wrong']],
    ['a time to come', { happenedAt: '2026-11-28T09:30:00.000+00:00' }, ['in-the-future']],
    ['a place that is somebody’s', { happenedAt: at('09:30'), place: 1 }, ['place-taken']],
  ])('not with %s', (_, more, names) => {
    expect(dayAfter().refused('imre', place(more))).toEqual(expect.arrayContaining(names));
  });
});

describe('a pack opened on paper and typed in after the shelf was counted', () => {
  /** Twelve came in; one was opened at 09:10, on paper; at ten the shelf was counted. */
  const counted = (packs: number): DayUnit => {
    const unit = onTheDay().arrive().observed().asked();
    unit.expect('priya', {
      name: 'receive packs',
      body: {
        unit: 'thornbeck',
        batch: 'PA-2391',
        product: 'zoledronic acid 5 mg in 100 mL',
        expiresOn: '2028-04-30' as PlainDate,
        packs: 12,
      },
    });
    const body = { unit: 'thornbeck', batch: 'PA-2391', packs };
    unit.at('2026-11-26T10:00:00.000Z').expect('priya', { name: 'count packs', body });
    typing(unit).expect('dana', { name: 'decide', patient: 'p1', decision: 'go', happenedAt: at('09:00') });
    unit.write('dana', 'cannula', { site: 'right forearm', gauge: '22', tries: 1, placed: true }, at('09:05'));
    unit.write(
      'dana',
      'flush',
      { milliliters: 10, ranFreely: true, calciumInLine: false, when: 'before' },
      at('09:06'),
    );
    unit.write('dana', 'preparation', unit.pack(), at('09:10'));
    return unit;
  };
  const onShelf = (unit: DayUnit) =>
    onHand(
      unit.record(batchSubject('PA-2391')),
      'thornbeck',
      packsUsedFor(unit.patient(), () => 'thornbeck'),
    );

  // 12 received, 1 opened at 09:10: eleven lay there at ten, and lie there still.
  test('is not taken off the count a second time', () => {
    expect(onShelf(counted(11)).packs).toBe(11);
  });

  test('belongs before the count: what the sum said then is told with it', () => {
    expect(onShelf(counted(11)).counted).toMatchObject({ packs: 11, saidThen: 11 });
    expect(onShelf(counted(12)).counted).toMatchObject({ packs: 12, saidThen: 11 });
  });
});
