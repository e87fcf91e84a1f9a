/** At the chair: who they are is asked once more, and one pair of hands does not try for ever. Hazards 24 and 32. */
import { type Act, entryText } from '@twelvemonth/clinical';
import { describe, expect, test } from 'vitest';
import { onTheDay } from './a-day-unit.ts';
import { putOff } from './put-off-act.ts';

const start = (identifiers?: Extract<Act, { name: 'start infusion' }>['identifiers']): Act => ({
  name: 'start infusion',
  patient: 'p1',
  plannedMinutes: 30,
  ...(identifiers === undefined ? {} : { identifiers }),
});

describe('two identifiers at the chair', () => {
  test('without them the medicine does not start; with them they stand in the record', () => {
    const unit = onTheDay().go().prepared();
    unit.expect('imre', unit.check());
    const [refusal] = unit.do('dana', start());
    expect(refusal).toMatchObject({ name: 'field-wrong', field: 'identifiers' });
    expect(unit.refused('dana', start(['full name', 'number']))).toEqual([]);
    expect(entryText(unit.newest('infusion-started'))).toContain('full name and number matched at the chair');
  });
});

describe('failed tries at the cannula', () => {
  const tried = (placed: boolean, tries: number) => ({ site: 'right forearm', gauge: '22', tries, placed });

  // Two tries: protocol number, common practice, no source.
  test('after two by one operator another is asked, who may try', () => {
    const unit = onTheDay().go();
    unit.write('dana', 'cannula', tried(false, 1));
    unit.write('dana', 'cannula', tried(false, 1));
    const [refusal] = unit.line('dana', 'cannula', tried(true, 1));
    expect(refusal).toMatchObject({ name: 'another-operator', field: 'line.body.tries' });
    expect(unit.line('imre', 'cannula', tried(true, 1))).toEqual([]);
  });

  test('one failed try is no reason', () => {
    const unit = onTheDay().go();
    unit.write('dana', 'cannula', tried(false, 1));
    expect(unit.line('dana', 'cannula', tried(true, 1))).toEqual([]);
  });
});

describe('interrupted between second check and start', () => {
  // Ten minutes: protocol number, common practice, no source.
  const checked = () => {
    const unit = onTheDay().go().prepared();
    unit.expect('imre', unit.check());
    return unit;
  };
  const anew = (packAgain: Extract<Act, { name: 'start infusion' }>['packAgain']): Act => ({
    ...(start(['full name', 'number']) as Extract<Act, { name: 'start infusion' }>),
    packAgain,
  });
  const product = 'zoledronic acid 5 mg in 100 mL';

  test('within the minutes nothing more is asked', () =>
    expect(
      checked()
        .wait(10)
        .refused('dana', start(['full name', 'number'])),
    ).toEqual([]));
  test('after them the pack is read once more, and stands in the record', () => {
    const unit = checked().wait(11);
    expect(unit.do('dana', start(['full name', 'number']))[0]).toMatchObject({
      name: 'field-wrong',
      field: 'packAgain',
    });
    expect(unit.refused('dana', anew({ product, batchLastFour: '2391' }))).toEqual([]);
    expect(entryText(unit.newest('infusion-started'))).toContain('pack read once more');
  });
  describe('the clock cannot make it shorter', () => {
    test('put back, the machine still up: the minutes are those it was up', () => {
      const unit = checked().wait(11);
      // The wall clock is put back ten minutes; how long the machine is up goes on.
      unit.at(new Date(Date.parse(unit.now) - 10 * 60_000).toISOString());
      unit.bootedAt = new Date(Date.parse(unit.bootedAt) - 10 * 60_000).toISOString();
      expect(unit.do('dana', start(['full name', 'number']))[0]?.says).toContain('11 minutes went by');
    });
    test('put back over a restart: it cannot be measured, and is asked again', () => {
      const unit = checked().wait(11);
      unit.at(new Date(Date.parse(unit.now) - 30 * 60_000).toISOString());
      unit.boot = 'b2';
      unit.bootedAt = new Date(Date.parse(unit.now) - 60_000).toISOString();
      expect(unit.do('dana', start(['full name', 'number']))[0]?.says).toContain('cannot be measured');
    });
  });
  test.each([
    ['another product', { product: 'zoledronic acid 4 mg in 100 mL', batchLastFour: '2391' }],
    ['another batch', { product, batchLastFour: '2392' }],
  ] as const)('%s than the one that was checked does not run', (_, packAgain) =>
    expect(checked().wait(11).refused('dana', anew(packAgain))).toEqual(['wrong-product']),
  );
});

// Hazard 89: a transport that waits is no reason to go unfit. Common practice, no source.
describe('how they go', () => {
  const unfit = () => {
    const unit = onTheDay().arrive();
    unit.expect('dana', putOff('unwell'));
    return unit;
  };
  test('who is not fit to go goes with a word about who took over, or what was said', () => {
    for (const leaves of ['taken over by others', 'against advice']) {
      const unit = unfit();
      const [refused] = unit.line('dana', 'left', { cardGiven: true, leaves });
      expect([refused?.name, refused?.field]).toEqual(['field-wrong', 'line.body.note']);
      unit.write('dana', 'left', { cardGiven: true, leaves, note: 'ward 4, Dr A. Penrose told' });
      expect(entryText(unit.newest('left'))).toBe(`left, ${leaves}, card given: ward 4, Dr A. Penrose told`);
    }
  });
  test('fit to go needs no more', () => {
    const unit = unfit();
    unit.write('dana', 'left', { cardGiven: true, leaves: 'fit to go' });
    expect(entryText(unit.newest('left'))).toBe('left, fit to go, card given');
  });
});
