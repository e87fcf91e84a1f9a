/**
 * One device holds a running dose (hazard 78; common practice, no source: one tablet goes with one drip). Another may take it
 * over, which is asked about and written; trouble is stopped from wherever it is seen.
 */
import { describe, expect, test } from 'vitest';
import { type Act, type Surroundings, day, decide, entryText, heldAt, visitOn } from '@twelvemonth/clinical';
import { DayUnit, onTheDay, people, resumeInfusion } from './a-day-unit.ts';

class WithDevices extends DayUnit {
  device: Surroundings['device'];
  override surroundings(by: Parameters<DayUnit['surroundings']>[0]): Surroundings {
    return { ...super.surroundings(by), ...(this.device === undefined ? {} : { device: this.device }) };
  }
  at_(name: string, more: { takesOver?: boolean; waited?: boolean } = {}): this {
    this.device = { id: name, name: `screen ${name}`, takesOver: false, waited: false, ...more };
    return this;
  }
  holder(): string | undefined {
    const visit = visitOn(this.patient(), day(this.today()));
    return visit === undefined ? undefined : heldAt(this.patient(), visit)?.body.device.name;
  }
}
const running = (): WithDevices => {
  const unit = new WithDevices();
  onTheDay(unit);
  unit.at_('A').running();
  return unit;
};
const pause: Act = { name: 'pause infusion', patient: 'p1', reason: 'pain' };
const resume: Act = resumeInfusion;
const finish: Act = { name: 'finish infusion', patient: 'p1', milliliters: 100 };
const look = (unit: WithDevices): string[] =>
  unit.line('dana', 'site-check', { looks: 'well' }, unit.now.replace('Z', '+00:00')).map(({ name }) => name);

describe('a running dose', () => {
  test('is held where it was started', () => {
    expect(running().holder()).toBe('screen A');
  });
  test('is finished there without a question, and elsewhere only by taking it over, which is written', () => {
    const unit = running();
    unit.wait(31);
    expect(unit.at_('B').refused('dana', finish)).toEqual(['held-elsewhere']);
    unit.at_('B', { takesOver: true }).expect('dana', finish);
    expect(entryText(unit.newest('dose-held'))).toBe('the drip was taken over at screen B from screen A');
    expect(running().wait(31).refused('dana', finish)).toEqual([]);
  });
  test('is paused from anywhere at once: who stops it holds it from then on', () => {
    const unit = running();
    unit.at_('B').expect('imre', pause);
    expect(unit.holder()).toBe('screen B');
    expect(unit.at_('A').refused('dana', resume)).toEqual(['held-elsewhere']);
    expect(unit.at_('B').refused('imre', resume)).toEqual([]);
  });
  test('may be looked at from anywhere while the network is there', () => {
    expect(look(running().at_('B'))).toEqual([]);
  });
});

describe('what was written without the network', () => {
  test('where the dose is held is taken', () => {
    expect(look(running().at_('A', { waited: true }))).toEqual([]);
  });
  test('at a device that does not hold it, or from which it was taken over, comes to a person', () => {
    const unit = running();
    expect(look(unit.at_('C', { waited: true }))).toEqual(['held-elsewhere']);
    unit.at_('B', { takesOver: true }).wait(31).expect('dana', finish);
    expect(look(unit.at_('A', { waited: true }))).toEqual(['held-elsewhere']);
    expect(look(unit.at_('A', { waited: true, takesOver: true }))).toEqual([]);
  });
});

test('an act of which no device is known asks nothing and holds nothing', () => {
  const unit = new WithDevices();
  onTheDay(unit).running();
  expect(unit.holder()).toBeUndefined();
  expect('drafts' in decide(pause, unit.surroundings(people.dana))).toBe(true);
});
