/** At the chair: who they are is asked once more, and one pair of hands does not try for ever. Hazards 24 and 32. */
import { type Act, entryText } from '@twelvemonth/clinical';
import { describe, expect, test } from 'vitest';
import { onTheDay } from './a-day-unit.ts';

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
