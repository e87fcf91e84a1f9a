/** Packs on a shelf: what came in, less what was opened or taken out, from the last count on. Sums worked out by hand beside each. */
import { type Act, batchSubject, batchesOf, onHand, packSubject, packsUsedFor, toldOf } from '@twelvemonth/clinical';
import { describe, expect, test } from 'vitest';
import { type DayUnit, onTheDay } from './decide/a-day-unit.ts';

const of = { unit: 'thornbeck', batch: 'PA-2391' } as const;
const received = (packs: number, more: Partial<Extract<Act, { name: 'receive packs' }>['body']> = {}): Act => ({
  name: 'receive packs',
  body: {
    ...of,
    product: 'zoledronic acid 5 mg in 100 mL',
    expiresOn: '2028-04-30' as never,
    packs,
    ...more,
  },
});
const counted = (packs: number): Act => ({ name: 'count packs', body: { ...of, packs } });
const takenOut = (packs: number): Act => ({ name: 'take out packs', body: { ...of, packs, why: 'broken' } });

const lies = (unit: DayUnit, at = 'thornbeck') => {
  const used = packsUsedFor(unit.patient(), (session) => (session.startsWith('thornbeck') ? 'thornbeck' : undefined));
  return onHand(unit.record(batchSubject('PA-2391')), at, at === 'thornbeck' ? used : []);
};
const later = (unit: DayUnit, who: Parameters<DayUnit['do']>[0], act: Act): void => unit.wait(1).expect(who, act);

describe('how many packs lie at a unit', () => {
  test('received 10 and 5, 2 broken, 1 opened: 12', () => {
    const unit = onTheDay();
    later(unit, 'priya', received(10));
    later(unit, 'priya', received(5));
    later(unit, 'imre', takenOut(2));
    unit.go().prepared();
    expect(lies(unit)).toMatchObject({ packs: 12, opened: 1, counted: undefined });
  });

  test('a count begins the sum again, and keeps what the sum said then', () => {
    const unit = onTheDay();
    later(unit, 'priya', received(10));
    unit.wait(1).go().prepared();
    later(unit, 'imre', counted(8));
    later(unit, 'priya', received(4));
    expect(lies(unit)).toMatchObject({ packs: 12, counted: { packs: 8, saidThen: 9 } });
  });

  test('a second count is held against the first', () => {
    const unit = onTheDay();
    later(unit, 'priya', received(10));
    later(unit, 'imre', counted(7));
    later(unit, 'imre', takenOut(1));
    later(unit, 'imre', counted(6));
    expect(lies(unit)).toMatchObject({ packs: 6, counted: { packs: 6, saidThen: 6 } });
  });

  test('more opened than ever came in is said, not hidden', () => {
    const unit = onTheDay();
    unit.go().prepared();
    expect(lies(unit).packs).toBe(-1);
  });

  test('packs of another unit are not counted here', () => {
    const unit = onTheDay();
    later(unit, 'priya', received(10));
    expect(lies(unit, 'saltmere').packs).toBe(0);
  });

  test('a preparation withdrawn and made again from the same pack is one pack', () => {
    const unit = onTheDay();
    later(unit, 'priya', received(10));
    unit.go().prepared();
    const entry = unit.newest('preparation').id;
    unit.expect('dana', { name: 'withdraw', patient: 'p1', entry, reason: 'misread' });
    unit.write('dana', 'preparation', unit.pack());
    expect(lies(unit).packs).toBe(9);
  });
});

describe('what is received', () => {
  test('is not past its date, and is what the batch was before', () => {
    const unit = onTheDay();
    expect(unit.refused('priya', received(1, { expiresOn: '2026-11-25' as never }))).toEqual(['pack-expired']);
    unit.expect('priya', received(10));
    expect(unit.refused('priya', received(1, { expiresOn: '2028-05-31' as never }))).toEqual([
      'pack-differs-from-stock',
    ]);
    expect(unit.refused('priya', received(1, { product: 'zoledronic acid 4 mg' }))).toEqual([
      'pack-differs-from-stock',
    ]);
  });

  test('a pack of the batch with another month on it is not prepared', () => {
    const unit = onTheDay();
    unit.expect('priya', received(10));
    const [refusal] = unit.go().line('dana', 'preparation', unit.pack({ expiresOn: '2028-09-30' as never }));
    expect(refusal).toMatchObject({ name: 'pack-differs-from-stock', field: 'line.body.expiresOn' });
    expect(unit.line('dana', 'preparation', unit.pack({ expiresOn: '2028-04-15' as never }))).toEqual([]);
  });

  test('a batch nobody received is not counted: the number was misread', () => {
    const unit = onTheDay();
    expect(unit.refused('imre', counted(3))).toEqual(['unknown-batch']);
    expect(unit.refused('imre', takenOut(3))).toEqual(['unknown-batch']);
    expect(unit.refused('bettina', received(3))).toEqual(['not-yours-to-do']);
  });
});

describe('batch trace', () => {
  test('finds a dose of this service, one of a ward, and a pack that was opened and not given', () => {
    const unit = onTheDay();
    unit.write('dana', 'dose', { medicine: 'zoledronic acid 5 mg', setting: 'ward', batch: 'pa 1111' }, '2025-11-20');
    unit.write('dana', 'weight', { quantity: { comparator: '', value: '56.0', unit: 'kg' }, method: 'measured' });
    expect(batchesOf(unit.patient()).map(({ batch, dose }) => [batch, dose?.body.setting])).toEqual([
      ['pa 1111', 'ward'],
    ]);
    const other = onTheDay().go().prepared();
    expect(batchesOf(other.patient()).map(({ batch, dose }) => [batch, dose])).toEqual([['PA-2391', undefined]]);
    const given = onTheDay().running().wait(31);
    given.expect('dana', { name: 'finish infusion', patient: 'p1', milliliters: 100 });
    expect(batchesOf(given.patient())).toMatchObject([
      { batch: 'PA-2391', dose: { body: { setting: 'this service' } }, preparation: { kind: 'preparation' } },
    ]);
  });

  test('who was told, by the newest word, however the batch is written', () => {
    const unit = onTheDay();
    unit.write('bettina', 'told-of-batch', { batch: 'pa-2391', how: 'letter' }, '2026-11-25');
    unit.write('bettina', 'told-of-batch', { batch: 'PA-2391', how: 'telephone', note: 'well' });
    expect(toldOf(unit.patient(), ' PA-2391')?.body.how).toBe('telephone');
    expect(toldOf(unit.patient(), 'PA-2392')).toBeUndefined();
  });
});

test.each([
  ['PA-2391', 'batch/PA-2391'],
  [' pa-2391 ', 'batch/PA-2391'],
  ['A/1-2%', 'batch/A_2f_1-2_25_'],
  ['A_1', 'batch/A_5f_1'],
])('the notes of batch "%s" are %s', (batch, subject) => expect(batchSubject(batch)).toBe(subject));

test('serials that differ only in case are different packs', () =>
  expect(packSubject('09506000134352', 'a1')).not.toBe(packSubject('09506000134352', 'A1')));
