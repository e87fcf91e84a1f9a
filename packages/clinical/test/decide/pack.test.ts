/**
 * The pack that is scanned for a dose. Product numbers are the example numbers of the GS1 General Specifications or made with
 * their check digit rule; "usable through the date" is that of the same document ("Expiration date"). Hazards 23, 37, 38.
 */
import { type Act, type Fact, type PlainDate, entryText } from '@twelvemonth/clinical';
import { describe, expect, test } from 'vitest';
import { type DayUnit, onTheDay, startInfusion, resumeInfusion } from './a-day-unit.ts';

const ours = '09506000134352';
const fourMilligrams = '09506000140445';
const stranger = '05012345678900';

/** A unit whose pharmacist has listed its packs, with somebody who may have the dose. */
function listed(): DayUnit {
  const unit = onTheDay();
  unit.expect('priya', {
    name: 'set formulary',
    unit: 'thornbeck',
    body: {
      packs: [
        { productNumber: ours, product: 'zoledronic acid 5 mg in 100 mL' },
        { productNumber: fourMilligrams, product: 'zoledronic acid 4 mg in 100 mL' },
      ],
      packsCarrySerial: true,
    },
  });
  return unit.go();
}
const scan = (productNumber = ours, serial: string | undefined = 'S1042') => ({
  code: `01${productNumber}1728043010PA-2391${serial === undefined ? '' : `␝21${serial}`}`,
  productNumber,
  ...(serial === undefined ? {} : { serial }),
});
type Pack = Partial<Fact<'preparation'>['body']>;
const prepare = (unit: DayUnit, more: Pack, patient = 'p1') =>
  unit.line('dana', 'preparation', unit.pack(more), unit.today(), patient);
const names = (refusals: readonly { name: string }[]): string[] => refusals.map(({ name }) => name);
const stop = (more: Partial<Extract<Act, { name: 'stop batch' }>['body']> = {}): Act => ({
  name: 'stop batch',
  body: { batch: 'PA-2391', why: 'batch recall', reason: 'particles', ...more },
});

describe('a pack is scanned', () => {
  test('a listed pack in date is prepared, and its scan stands in the record', () => {
    const unit = listed();
    expect(prepare(unit, { scan: scan() })).toEqual([]);
    expect(entryText(unit.newest('preparation'))).toContain('scanned, serial S1042');
  });

  test('neither scanned nor said why: refused, with both ways out in the remedy', () => {
    const [refusal] = prepare(listed(), {});
    expect(refusal).toMatchObject({ name: 'pack-not-scanned', field: 'line.body.scan' });
    expect(refusal?.remedy).toContain('why it was not scanned');
  });

  test('typed with a reason is possible, and marked wherever the record is read', () => {
    const unit = listed();
    expect(prepare(unit, { typedBecause: 'the code cannot be read' })).toEqual([]);
    expect(entryText(unit.newest('preparation'))).toContain('typed, not scanned: the code cannot be read');
  });

  test('where nobody has listed the packs a pack is typed, and the record says so', () => {
    const unit = onTheDay().go();
    expect(prepare(unit, {})).toEqual([]);
    expect(entryText(unit.newest('preparation'))).toContain('typed, not scanned');
  });

  test('a pack the unit does not keep is refused', () =>
    expect(names(prepare(listed(), { scan: scan(stranger) }))).toEqual(['not-in-the-formulary']));

  test('the 4 mg bag is refused by its code, whatever the preparer says it is', () => {
    expect(names(prepare(listed(), { scan: scan(fourMilligrams) }))).toEqual(['wrong-product']);
    expect(names(prepare(listed(), { scan: scan(fourMilligrams), product: 'zoledronic acid 4 mg in 100 mL' }))).toEqual(
      ['wrong-product'],
    );
  });

  test.each([
    ['the last day it may be used', '2026-11-26', []],
    ['the day after', '2026-11-25', ['pack-expired']],
  ])('%s', (_, expiresOn, refusals) =>
    expect(names(prepare(listed(), { scan: scan(), expiresOn: expiresOn as PlainDate }))).toEqual(refusals),
  );
});

describe('a serial number is given once', () => {
  /** A second person at the chair beside. */
  const two = (): DayUnit => {
    const unit = listed();
    unit.now = '2026-11-24T09:00:00.000Z';
    unit.booked('p2', 2).at('2026-11-26T09:10:00.000Z').go('p2');
    return unit;
  };

  test('not to a second person', () => {
    const unit = two();
    expect(prepare(unit, { scan: scan() })).toEqual([]);
    const [refusal] = prepare(unit, { scan: scan() }, 'p2');
    expect(refusal).toMatchObject({ name: 'pack-used-before', field: 'line.body.scan' });
    expect(refusal?.says).toBe('The pack with serial S1042 was scanned for somebody else on 26 Nov 2026.');
    expect(prepare(unit, { scan: scan(ours, 'S1043') }, 'p2')).toEqual([]);
  });

  test('not with another batch in the code either: a serial is one pack of a product', () => {
    const unit = two();
    expect(prepare(unit, { scan: scan() })).toEqual([]);
    expect(names(prepare(unit, { scan: scan(), batch: 'PA-9999' }, 'p2'))).toEqual(['pack-used-before']);
  });

  test('the same serial of another product is another pack', () => {
    const unit = two();
    expect(prepare(unit, { scan: scan() })).toEqual([]);
    expect(names(prepare(unit, { scan: scan(fourMilligrams) }, 'p2'))).toEqual(['wrong-product']);
  });

  test('misread, withdrawn and scanned again for the same person on the same day is the same pack', () => {
    const unit = listed();
    expect(prepare(unit, { scan: scan() })).toEqual([]);
    const { id } = unit.newest('preparation');
    unit.expect('dana', { name: 'withdraw', patient: 'p1', entry: id, reason: 'minutes misread' });
    expect(prepare(unit, { scan: scan(), minutes: 45 })).toEqual([]);
  });

  test('a scan is not corrected into another one', () => {
    const unit = listed();
    expect(prepare(unit, { scan: scan() })).toEqual([]);
    const correct = (more: Pack) =>
      unit.do('dana', {
        name: 'record',
        patient: 'p1',
        amends: unit.newest('preparation').id,
        line: { kind: 'preparation', body: unit.pack(more), effectiveAt: unit.today() },
      });
    expect(names(correct({ scan: scan(ours, 'S2') }))).toEqual(['part-of-a-finished-step']);
    expect(names(correct({ scan: scan(), expiresOn: '2026-01-31' as PlainDate }))).toEqual(['pack-expired']);
    expect(correct({ scan: scan(), minutes: 45 })).toEqual([]);
  });
});

describe('a stopped batch', () => {
  test.each(['PA-2391', 'pa-2391', ' PA-2391 ', 'PA - 2391'])('typed as "%s" is the same batch', (batch) => {
    const unit = listed();
    unit.expect('imre', stop());
    const [refusal] = prepare(unit, { batch, typedBecause: 'the code cannot be read' });
    expect(refusal).toMatchObject({ name: 'batch-stopped', field: 'line.body.batch' });
  });

  test('a quarantine stops like a batch recall; another batch is free', () => {
    const unit = listed();
    unit.expect('dana', stop({ why: 'quarantine' }));
    expect(names(prepare(unit, { scan: scan() }))).toEqual(['batch-stopped']);
    expect(prepare(unit, { batch: 'PA-2392', scan: scan(ours, 'S7') })).toEqual([]);
  });

  test('of another maker’s product stops that product, and whoever typed without a product number', () => {
    const unit = listed();
    unit.expect('imre', stop({ productNumber: stranger }));
    expect(names(prepare(unit, { typedBecause: 'the code cannot be read' }))).toEqual(['batch-stopped']);
    expect(prepare(unit, { scan: scan() })).toEqual([]);
  });

  test('stopped between the check and the start: it is not started', () => {
    const unit = listed();
    unit.write('dana', 'cannula', { site: 'right forearm', gauge: '22', tries: 1, placed: true });
    unit.write('dana', 'flush', { milliliters: 10, ranFreely: true, calciumInLine: false, when: 'before' });
    expect(prepare(unit, { scan: scan() })).toEqual([]);
    unit.expect('imre', unit.check());
    unit.expect('priya', stop());
    expect(unit.refused('dana', startInfusion)).toEqual(['batch-stopped']);
    unit.expect('priya', { name: 'release batch', body: { batch: 'PA-2391', reason: 'another maker’s batch' } });
    expect(unit.refused('dana', startInfusion)).toEqual([]);
  });
  test('stopped while the infusion stands still: it does not run again, and can be stopped for good', () => {
    const unit = onTheDay().running();
    unit.wait(5).expect('dana', { name: 'pause infusion', patient: 'p1', reason: 'the pump alarms' });
    unit.expect('priya', stop());
    expect(unit.refused('dana', resumeInfusion)).toEqual(['batch-stopped']);
    unit.expect('dana', { name: 'finish infusion', patient: 'p1', milliliters: 16, stoppedBecause: 'batch recalled' });
  });

  test('only a pharmacist lets a batch be used again, and only one that is stopped', () => {
    const unit = listed();
    const release: Act = { name: 'release batch', body: { batch: 'PA-2391', reason: 'looked at' } };
    expect(unit.refused('priya', release)).toEqual(['not-stopped']);
    unit.expect('dana', stop({ why: 'quarantine' }));
    expect(unit.refused('imre', release)).toEqual(['not-yours-to-do']);
    expect(unit.refused('dana', stop({ why: 'quarantine' }))).toEqual(['already-stopped']);
    // What began as a quarantine may turn out to be a recall, not the other way round.
    unit.expect('imre', stop());
    expect(unit.refused('imre', stop({ why: 'quarantine' }))).toEqual(['already-stopped']);
  });
});

describe('the packs of a unit', () => {
  const set = (packs: Extract<Act, { name: 'set formulary' }>['body']['packs']): Act => ({
    name: 'set formulary',
    unit: 'thornbeck',
    body: { packs, packsCarrySerial: false },
  });
  test('are the pharmacist’s to list, each once', () => {
    const unit = onTheDay();
    const pack = { productNumber: ours, product: 'zoledronic acid 5 mg in 100 mL' } as const;
    expect(unit.refused('dana', set([pack]))).toEqual(['not-yours-to-do']);
    expect(unit.refused('priya', set([pack, pack]))).toEqual(['field-wrong']);
    expect(unit.refused('priya', { ...set([pack]), unit: 'nowhere' } as Act)).toEqual(['unknown-unit']);
  });
});

describe('the checker reads the rate off the pump', () => {
  /** 100 mL in so many minutes: mL x 60 / minutes (nursing texts); the pump may show the whole or the tenth below, never more. */
  test.each([
    [30, 200, []],
    [15, 400, []],
    [45, 133, []],
    [45, 133.3, []],
    [30, 201, ['pump rate']],
    [30, 400, ['pump rate']],
    [45, 134, ['pump rate']],
    [30, 199, ['pump rate']],
  ])('prepared for %i minutes, the pump shows %d mL/h', (minutes, pumpMillilitersPerHour, differs) => {
    const unit = listed();
    expect(prepare(unit, { scan: scan(), minutes })).toEqual([]);
    const { minutes: _, ...reading } = unit.reading();
    unit.expect('imre', {
      name: 'second check',
      patient: 'p1',
      preparation: unit.newest('preparation').id,
      reading: { ...reading, pumpMillilitersPerHour },
    });
    expect(unit.newest('second-check').body.differs).toEqual(differs);
  });

  test.each([
    ['neither', {}],
    ['both', { pumpMillilitersPerHour: 200, minutes: 30 }],
  ])('%s is no reading', (_, more) => {
    const unit = listed();
    expect(prepare(unit, { scan: scan() })).toEqual([]);
    const { minutes: _minutes, ...reading } = unit.reading();
    const preparation = unit.newest('preparation').id;
    expect(
      unit.refused('imre', { name: 'second check', patient: 'p1', preparation, reading: { ...reading, ...more } }),
    ).toEqual(['field-wrong']);
  });
});
