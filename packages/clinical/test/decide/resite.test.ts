/**
 * Swelling or pain while it runs: stop, look, resite (safety page, "The day"). Another cannula, its old site written down,
 * flushed, before it runs again; never a second pack (product text of zoledronic acid 5 mg: one infusion of 5 mg); after two
 * failed tries another operator (common practice, no source). From a score of 2 on the cannula is resited: Jackson 1998.
 */
import { describe, expect, test } from 'vitest';
import { type Act, day, entryText, visitOn } from '@twelvemonth/clinical';
import { type DayUnit, onTheDay, resumeInfusion } from './a-day-unit.ts';

const stop: Act = {
  name: 'pause infusion',
  patient: 'p1',
  reason: 'swelling or pain at the site',
  because: 'the site',
};
const again: Act = resumeInfusion;
const stopped = (seen: readonly string[] = ['swelling']): DayUnit => {
  const unit = onTheDay().running().wait(5);
  unit.expect('dana', stop);
  if (seen.length > 0) unit.write('dana', 'site-check', { looks: 'not well', seen });
  return unit;
};
const cannula = (more: object = {}) => ({ site: 'left forearm', gauge: '22', tries: 1, placed: true, ...more });
const flush = { milliliters: 10, ranFreely: true, calciumInLine: false, when: 'before' };
const steps = (unit: DayUnit) =>
  Object.fromEntries((visitOn(unit.patient(), day(unit.today()))?.steps ?? []).map(({ step, state }) => [step, state]));

describe('before it runs again', () => {
  test('somebody has looked at the site', () => {
    const unit = stopped([]);
    expect(unit.do('dana', again)[0]?.says).toContain('Nobody has looked at the site');
    unit.write('dana', 'site-check', { looks: 'well' });
    expect(unit.refused('dana', again)).toEqual([]);
  });
  test('a pause for another cause asks for no look', () => {
    const unit = onTheDay().running().wait(5);
    unit.expect('dana', { name: 'pause infusion', patient: 'p1', reason: 'to the toilet' });
    expect(unit.refused('dana', again)).toEqual([]);
  });
  test('a site that is not well needs another cannula, whose step waits with what was seen', () => {
    const unit = stopped();
    expect(unit.refused('dana', again)).toEqual(['step-out-of-order']);
    expect(steps(unit)).toMatchObject({ cannula: 'waiting', flush: 'done', infusion: 'running' });
    unit.write('dana', 'cannula-removed', { site: 'swollen' });
    unit.write('dana', 'cannula', cannula());
    expect(steps(unit)).toMatchObject({ cannula: 'done', flush: 'waiting', infusion: 'running' });
    expect(unit.refused('dana', again)).toEqual(['step-out-of-order']);
    unit.write('dana', 'flush', flush);
    unit.expect('dana', again);
    expect(steps(unit)).toMatchObject({ cannula: 'done', flush: 'done', infusion: 'running', removal: 'to come' });
  });
  test.each([
    [['redness'], []],
    [['fever'], []],
    [['pain'], ['step-out-of-order']],
    [['pain along the cannula'], ['step-out-of-order']],
    [['redness', 'hardening'], ['step-out-of-order']],
  ])('%j: %j', (seen, refused) => expect(stopped(seen).refused('dana', again)).toEqual(refused));
  test('a later "looks well" does not take back what was seen; withdrawn with a reason it is', () => {
    const unit = stopped();
    unit.write('dana', 'site-check', { looks: 'well' });
    expect(unit.refused('dana', again)).toEqual(['step-out-of-order']);
    const wrong = stopped();
    const entry = wrong.newest('site-check').id;
    wrong.expect('dana', { name: 'withdraw', patient: 'p1', entry, reason: 'written for the next chair' });
    wrong.write('dana', 'site-check', { looks: 'well' });
    expect(wrong.refused('dana', again)).toEqual([]);
  });
  test('the old cannula is out, and how its site looks stands in the record', () => {
    const unit = stopped();
    expect(unit.line('dana', 'cannula', cannula()).map(({ name }) => name)).toEqual(['step-out-of-order']);
    unit.expect('dana', {
      name: 'record together',
      patient: 'p1',
      lines: [
        { kind: 'cannula-removed', body: { site: 'swollen' }, effectiveAt: unit.today() },
        { kind: 'cannula', body: cannula(), effectiveAt: unit.today() },
      ],
    });
    expect(entryText(unit.newest('cannula-removed'))).toBe('cannula removed, site swollen');
  });
  test('out and none placed again: nothing runs', () => {
    const unit = onTheDay().running().wait(5);
    unit.expect('dana', { name: 'pause infusion', patient: 'p1', reason: 'to the toilet' });
    unit.write('dana', 'cannula-removed', { site: 'looks well' });
    expect(unit.do('dana', again)[0]?.says).toContain('no cannula in place');
  });
  test('the pause does not count towards the running time', () => {
    const unit = stopped();
    unit.wait(30).write('dana', 'cannula-removed', { site: 'swollen' });
    unit.write('dana', 'cannula', cannula());
    unit.write('dana', 'flush', flush);
    unit.expect('dana', again);
    unit.wait(9);
    const finish: Act = { name: 'finish infusion', patient: 'p1', milliliters: 100 };
    expect(unit.refused('dana', finish)).toEqual(['too-early-to-finish']);
    expect(unit.wait(1).refused('dana', finish)).toEqual([]);
  });
});

describe('while it stands still', () => {
  test('after two failed tries another operator is asked', () => {
    const unit = stopped();
    unit.write('dana', 'cannula-removed', { site: 'swollen' });
    unit.write('dana', 'cannula', cannula({ tries: 2, placed: false }));
    expect(unit.line('dana', 'cannula', cannula()).map(({ name }) => name)).toEqual(['another-operator']);
    expect(unit.line('imre', 'cannula', cannula())).toEqual([]);
  });
  test('no second pack is prepared, also where the first preparation is withdrawn: never over 5 mg in total', () => {
    const unit = stopped();
    unit.do('imre', { name: 'withdraw', patient: 'p1', entry: unit.newest('preparation').id, reason: 'another bag' });
    expect(unit.line('dana', 'preparation', unit.pack()).map(({ name }) => name)).toContain('more-than-the-dose');
  });
  test('it can be stopped for good without another cannula: a part dose', () => {
    const unit = stopped();
    unit.write('dana', 'cannula-removed', { site: 'swollen' });
    unit.expect('dana', { name: 'finish infusion', patient: 'p1', milliliters: 30, stoppedBecause: 'no vein left' });
    expect(unit.newest('dose').body.partMilliliters).toBe(30);
    expect(steps(unit)).toMatchObject({ cannula: 'done', infusion: 'done', removal: 'done', observe: 'waiting' });
  });
});
