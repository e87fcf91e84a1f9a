/**
 * Observations after the dose (hazard 36): told beside those before it, and never taken for them in anything that decides. Vital signs
 * before and after an infusion: a nursing review; the bounds of the score: NEWS2, Royal College of Physicians 2017.
 */
import { bodyKidneysBone, day, factsOf, goVerdict, teaching, visitOn } from '@twelvemonth/clinical';
import { describe, expect, test } from 'vitest';
import { type DayUnit, onTheDay } from './a-day-unit.ts';

const today = '2026-11-26';
const after = {
  pulsePerMinute: 118,
  systolicMmHg: 92,
  diastolicMmHg: 60,
  temperatureCelsius: 38.6,
  saturationPercent: 94,
  breathsPerMinute: 22,
  newIrregularPulse: true,
  onOxygen: false,
  consciousness: 'alert',
  when: 'after',
};
/** What a woman well before and after has. */
const well = { pulsePerMinute: 72, systolicMmHg: 130, temperatureCelsius: 36.8, saturationPercent: 97 };

function given(): DayUnit {
  const unit = onTheDay().running().wait(31);
  unit.expect('dana', { name: 'finish infusion', patient: 'p1', milliliters: 100 });
  unit.write('dana', 'cannula-removed', { site: 'looks well' });
  return unit;
}
const verdictOf = (unit: DayUnit) =>
  goVerdict(unit.patient(), { protocols: [{ from: day('2020-01-01'), protocol: teaching }] } as never, day(today));
const seen = (unit: DayUnit) =>
  verdictOf(unit).items.filter(({ id }) => ['observations', 'temperature', 'systolic', 'pulse'].includes(id));

describe('after the dose', () => {
  test('they are written once nothing runs, and as often as they are taken', () => {
    const unit = onTheDay().running();
    expect(unit.line('dana', 'observations', after).map(({ name }) => name)).toEqual(['step-out-of-order']);
    const done = given();
    expect(done.line('dana', 'observations', after)).toEqual([]);
    expect(done.line('dana', 'observations', { ...well, when: 'after' })).toEqual([]);
    expect(visitOn(done.patient(), day(today))?.observationsAfter).toHaveLength(2);
  });

  test('before anybody was given anything there are none', () => {
    const unit = onTheDay().arrive();
    expect(unit.line('sunniva', 'observations', { ...well, when: 'after' })[0]?.name).toBe('step-out-of-order');
    expect(factsOf(unit.patient(), 'observations')).toEqual([]);
  });

  test('no figure of theirs puts the dose off, and the visit keeps those before', () => {
    const unit = given();
    const [verdict, before] = [seen(unit), visitOn(unit.patient(), day(today))?.observationsBefore?.id];
    expect(verdict.map(({ verdict: is }) => is)).toEqual(['ready', 'ready', 'ready']);
    expect(unit.line('dana', 'observations', after)).toEqual([]);
    expect(seen(unit)).toEqual(verdict);
    expect(visitOn(unit.patient(), day(today))?.observationsBefore?.id).toBe(before);
  });

  test('what is measured once it began is not written as from before it; measured earlier and written late, it is', () => {
    const unit = given();
    const late = { ...well, when: 'before' };
    for (const at of [today, `${today}T09:10:00+00:00`]) {
      const [refused] = unit.line('dana', 'observations', late, at);
      expect([refused?.name, refused?.field]).toEqual(['field-wrong', 'line.body.when']);
      expect(refused?.says).toContain('is not from before it');
    }
    expect(unit.line('dana', 'observations', late, `${today}T08:40:00+00:00`)).toEqual([]);
  });

  test('a correction does not make them those before', () => {
    const unit = given();
    unit.write('dana', 'observations', after, `${today}T09:16:00+00:00`);
    const amends = visitOn(unit.patient(), day(today))?.observationsAfter[0]?.id ?? '';
    const corrected = (body: object) =>
      unit.do('dana', {
        name: 'record',
        patient: 'p1',
        amends,
        line: { kind: 'observations', body, effectiveAt: `${today}T09:16:00+00:00` },
      });
    expect(corrected({ ...after, when: 'before' })[0]?.field).toBe('line.body.when');
    expect(corrected({ ...after, pulsePerMinute: 108 })).toEqual([]);
    expect(visitOn(unit.patient(), day(today))?.observationsAfter[0]?.body.pulsePerMinute).toBe(108);
  });

  test('the finish is not withdrawn from under them', () => {
    const unit = given();
    unit.write('dana', 'observations', after);
    const finished = visitOn(unit.patient(), day(today))?.infusion?.finished?.id ?? '';
    const [refused] = unit.do('dana', { name: 'withdraw', patient: 'p1', entry: finished, reason: 'it still runs' });
    expect(refused).toMatchObject({ name: 'part-of-a-finished-step' });
    expect(refused?.says).toContain('observations');
  });
});

describe('a pulse newly irregular after the dose', () => {
  const leaving = (...all: readonly object[]) => {
    const unit = given();
    unit.write('dana', 'observed', { minutes: 30, well: true });
    for (const body of all) unit.write('dana', 'observations', { ...body, when: 'after' });
    return unit.line('dana', 'left', { cardGiven: true, leaves: 'fit to go' });
  };
  test('is asked about at the door', () => {
    expect(leaving({ ...well, newIrregularPulse: true })[0]?.says).toBe(
      'The pulse was newly irregular after the dose: was a doctor told, and are they fit to go now?',
    );
  });
  test('a later set without the pulse does not settle it; felt regular again, or never irregular, nothing is asked', () => {
    expect(leaving({ newIrregularPulse: true }, well)[0]?.name).toBe('is-it-right');
    expect(leaving({ newIrregularPulse: true }, { newIrregularPulse: false })).toEqual([]);
    expect(leaving({ ...well, newIrregularPulse: false })).toEqual([]);
    expect(leaving()).toEqual([]);
  });
});

test('the reading of the person tells both, with the score of each', () => {
  const unit = given();
  unit.write('dana', 'observations', after);
  const part = bodyKidneysBone(unit.patient(), teaching, day(today)).find(({ title }) => title === 'Observations');
  expect(part?.lines.map(({ what, of }) => `${what} ${of ?? ''}`)).toEqual([
    'observed before the dose, 26 Nov 2026',
    'NEWS2 before the dose, 26 Nov 2026; it decides nothing about a dose',
    'observed after the dose, 26 Nov 2026',
    'NEWS2 after the dose, 26 Nov 2026; it decides nothing about a dose',
  ]);
  // By the published chart: breaths 22 is 2, saturation 94 is 1, air 0, systolic 92 is 2, pulse 118 is 2, alert 0, 38.6 degrees is 1.
  expect(part?.lines[3]?.is).toMatch(/^8, high risk/);
});
