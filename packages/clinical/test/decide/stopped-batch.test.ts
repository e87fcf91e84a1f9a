/**
 * A batch is stopped, for one maker or for every pack with its number, lifted one stop at a time, and what of it is in a hand or
 * runs. What nobody may make an exception for (a recalled product) is the safety page's. Hazards 37, 38.
 */
import {
  type Act,
  batchSubject,
  dosesWithoutBatch,
  factsOf,
  isToldBefore,
  lineLookedAlong,
  packInUse,
  day,
  standingStops,
  stopOf,
  toTellOf,
  toldOf,
} from '@twelvemonth/clinical';
import { describe, expect, test } from 'vitest';
import { type DayUnit, onTheDay } from './a-day-unit.ts';

const one = '09506000134352';
const other = '09506000140445';
type StopBody = Extract<Act, { name: 'stop batch' }>['body'];
const stop = (more: Partial<StopBody> = {}): Act => ({
  name: 'stop batch',
  body: { batch: 'PA-2391', why: 'batch recall', reason: 'particles', ...more },
});
const lift = (more: { stop?: string } = {}): Act => ({
  name: 'release batch',
  body: { batch: 'PA-2391', reason: 'looked at', ...more },
});
const batch = (unit: DayUnit) => unit.record(batchSubject('PA-2391'));
const stops = (unit: DayUnit) => standingStops(batch(unit)).map(({ body }) => [body.why, body.productNumber]);

describe('stopped twice', () => {
  test('one maker’s packs are stopped, then every pack with the number: the second is written and holds the others too', () => {
    const unit = onTheDay();
    unit.expect('priya', stop({ productNumber: one }));
    expect(stopOf(batch(unit), other)).toBeUndefined();
    unit.expect('priya', stop());
    expect(stopOf(batch(unit), other)?.body.why).toBe('batch recall');
    expect(unit.refused('priya', stop({ productNumber: other }))).toEqual(['already-stopped']);
    expect(unit.refused('priya', stop())).toEqual(['already-stopped']);
  });

  test('a quarantine after a recall is refused, a recall after a quarantine is not', () => {
    const unit = onTheDay();
    unit.expect('priya', stop({ why: 'quarantine' }));
    expect(unit.refused('priya', stop({ why: 'quarantine' }))).toEqual(['already-stopped']);
    unit.expect('priya', stop());
    expect(unit.refused('priya', stop({ why: 'quarantine' }))).toEqual(['already-stopped']);
  });

  test('lifting the quarantine of one maker leaves the recall of the other', () => {
    const unit = onTheDay();
    unit.expect('priya', stop({ productNumber: one }));
    unit.expect('priya', stop({ why: 'quarantine', productNumber: other }));
    const quarantine = standingStops(batch(unit)).find(({ body }) => body.why === 'quarantine')?.id ?? '';
    expect(unit.refused('priya', lift())).toEqual(['field-wrong']);
    unit.expect('priya', lift({ stop: quarantine }));
    expect(stops(unit)).toEqual([['batch recall', one]]);
    expect(unit.refused('priya', lift({ stop: quarantine }))).toEqual(['not-stopped']);
    unit.expect('priya', lift());
    expect(stops(unit)).toEqual([]);
    expect(unit.refused('priya', lift())).toEqual(['not-stopped']);
  });
});

const resume: Act = { name: 'resume infusion', patient: 'p1', alongTheLine: lineLookedAlong };

describe('a pack in use', () => {
  const used = (unit: DayUnit) => packInUse(unit.patient(), day(unit.today()))?.state;

  test('prepared, running, standing still, given and still here; nobody who has left', () => {
    expect(used(onTheDay().go())).toBeUndefined();
    expect(used(onTheDay().go().prepared())).toBe('prepared');
    const unit = onTheDay().running();
    expect(used(unit)).toBe('runs');
    unit.wait(5).expect('dana', { name: 'pause infusion', patient: 'p1', reason: 'asked for' });
    expect(used(unit)).toBe('stands still');
    unit.wait(1).expect('dana', resume);
    unit.wait(31).expect('dana', { name: 'finish infusion', patient: 'p1', milliliters: 100 });
    expect(used(unit)).toBe('given');
  });

  test('recalled while it stands still: it does not run again, and what was given is written', () => {
    const unit = onTheDay().running().wait(10);
    unit.expect('dana', { name: 'pause infusion', patient: 'p1', reason: 'recall notice' });
    unit.expect('priya', stop());
    expect(unit.refused('dana', resume)).toEqual(['batch-stopped']);
    expect(
      unit.refused('dana', {
        name: 'finish infusion',
        patient: 'p1',
        milliliters: 30,
        stoppedBecause: 'batch recalled while it ran',
      }),
    ).toEqual([]);
    expect(unit.newest('dose').body.partMilliliters).toBe(30);
  });

  test('a stop of another maker’s packs does not hold it', () => {
    const unit = onTheDay().running().wait(10);
    unit.expect('dana', { name: 'pause infusion', patient: 'p1', reason: 'asked for' });
    expect(unit.newest('preparation').body.scan).toBeUndefined();
    unit.expect('priya', stop({ productNumber: other }));
    // Typed, so nobody can tell whose it is: any stop holds.
    expect(unit.refused('dana', resume)).toEqual(['batch-stopped']);
  });
});

describe('who is told', () => {
  test('told of the quarantine is not told of the recall', () => {
    const unit = onTheDay();
    unit.expect('priya', stop({ why: 'quarantine' }));
    unit.wait(1).write('bettina', 'told-of-batch', { batch: 'PA-2391', how: 'telephone' });
    const told = toldOf(unit.patient(), 'PA-2391');
    if (told === undefined) throw new Error('not told');
    expect(isToldBefore(told, toTellOf(batch(unit)))).toBe(false);
    unit.wait(1).expect('priya', stop());
    expect(isToldBefore(told, toTellOf(batch(unit)))).toBe(true);
    unit.wait(1).write('bettina', 'told-of-batch', { batch: 'PA-2391', how: 'telephone' });
    const again = toldOf(unit.patient(), 'PA-2391');
    expect(again !== undefined && isToldBefore(again, toTellOf(batch(unit)))).toBe(false);
  });

  test('a quarantine of another maker written later does not make them untold', () => {
    const unit = onTheDay();
    unit.expect('priya', stop({ productNumber: one }));
    unit.wait(1).write('bettina', 'told-of-batch', { batch: 'PA-2391', how: 'telephone' });
    unit.wait(1).expect('priya', stop({ why: 'quarantine', productNumber: other }));
    const told = toldOf(unit.patient(), 'PA-2391');
    expect(told !== undefined && isToldBefore(told, toTellOf(batch(unit)))).toBe(false);
  });

  test('somebody whose care was closed is told without being taken in again', () => {
    const unit = onTheDay();
    unit.write('imre', 'closed', { reason: 'moved away' });
    expect(unit.line('bettina', 'told-of-batch', { batch: 'PA-2391', how: 'letter' })).toEqual([]);
  });

  test('of somebody who has died relatives or the family doctor are told', () => {
    const unit = onTheDay();
    unit.write('bettina', 'died', { source: 'family doctor' });
    const how = (way: string) => unit.line('bettina', 'told-of-batch', { batch: 'PA-2391', how: way });
    expect(how('telephone')).toMatchObject([{ name: 'field-wrong', field: 'line.body.how' }]);
    expect(how('through a relative or carer')).toEqual([]);
  });
});

test('a dose of which nobody wrote the batch is said, one taken daily at home is not', () => {
  const unit = onTheDay();
  unit.write('dana', 'dose', { medicine: 'zoledronic acid 5 mg', setting: 'ward' }, '2024-11-20');
  unit.write('dana', 'dose', { medicine: 'zoledronic acid 5 mg', setting: 'ward', batch: 'PA-1' }, '2025-11-20');
  unit.write('dana', 'dose', { medicine: 'teriparatide', setting: 'home' }, '2019-01-04');
  expect(dosesWithoutBatch(unit.patient()).map(({ on }) => on)).toEqual([day('2024-11-20')]);
});

describe('a receipt that was mistyped', () => {
  const received = (expiresOn: string): Act => ({
    name: 'receive packs',
    body: {
      unit: 'thornbeck',
      batch: 'PA-2391',
      product: 'zoledronic acid 5 mg in 100 mL',
      expiresOn: expiresOn as never,
      packs: 10,
    },
  });
  const withdraw = (unit: DayUnit, entry = factsOf(batch(unit), 'batch-received')[0]?.id ?? ''): Act => ({
    name: 'withdraw receipt',
    unit: 'thornbeck',
    batch: 'pa-2391',
    entry,
    reason: 'the pack says 2028',
  });

  test('is withdrawn, and what the packs really say is received', () => {
    const unit = onTheDay();
    unit.expect('priya', received('2027-04-30'));
    expect(unit.refused('priya', received('2028-04-30'))).toEqual(['pack-differs-from-stock']);
    const [receipt] = factsOf(batch(unit), 'batch-received');
    expect(unit.refused('bettina', withdraw(unit))).toEqual(['not-yours-to-do']);
    unit.expect('imre', withdraw(unit));
    expect(unit.refused('imre', withdraw(unit, receipt?.id))).toEqual(['no-such-entry']);
    unit.expect('priya', received('2028-04-30'));
    expect(factsOf(batch(unit), 'batch-received').map(({ body }) => body.expiresOn)).toEqual(['2028-04-30']);
    expect(unit.go().line('dana', 'preparation', unit.pack())).toEqual([]);
  });
});

describe('a figure too many', () => {
  const of = { unit: 'thornbeck', batch: 'PA-2391' } as const;
  const twelve = (): DayUnit => {
    const unit = onTheDay();
    unit.expect('priya', {
      name: 'receive packs',
      body: { ...of, product: 'zoledronic acid 5 mg in 100 mL', expiresOn: '2028-04-30' as never, packs: 12 },
    });
    return unit.wait(1);
  };
  test('more than can lie there is not taken out', () => {
    const unit = twelve();
    const out = (packs: number): Act => ({ name: 'take out packs', body: { ...of, packs, why: 'broken' } });
    expect(unit.refused('imre', out(13))).toEqual(['does-not-add-up']);
    expect(unit.refused('imre', out(12))).toEqual([]);
    expect(unit.wait(1).refused('imre', out(1))).toEqual(['does-not-add-up']);
  });
  test('more than ever came is counted only with a word about it', () => {
    const unit = twelve();
    expect(unit.refused('imre', { name: 'count packs', body: { ...of, packs: 120 } })).toEqual(['does-not-add-up']);
    expect(
      unit.refused('imre', { name: 'count packs', body: { ...of, packs: 14, note: 'two from the ward' } }),
    ).toEqual([]);
  });
});
