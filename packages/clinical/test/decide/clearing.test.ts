/** Who may say of what was told that it no longer holds a dose, and of how much at once (docs/readiness.md R10). */
import { expect, test } from 'vitest';
import type { Act } from '@twelvemonth/clinical';
import { type DayUnit, onTheDay } from './a-day-unit.ts';

const measured = (): DayUnit => onTheDay().arrive().observed();
const clears = (unit: DayUnit, kind: 'checklist' | 'symptom', question?: string): Act => ({
  name: 'record',
  patient: 'p1',
  line: {
    kind: 'symptom-cleared',
    body: {
      entry: unit.newest(kind).id,
      finding: 'looked into: nothing that holds',
      ...(question === undefined ? {} : { question }),
    },
    effectiveAt: unit.today(),
  },
});

test('each answer of a checklist is cleared by itself, and only one that holds and stays', () => {
  const unit = measured().asked('p1', { teeth: 'yes', 'drunk-enough': 'no' });
  for (const question of [undefined, 'eye', 'drunk-enough', 'nothing of the kind'])
    expect(unit.refused('halina', clears(unit, 'checklist', question))).toEqual(['field-wrong']);
  unit.expect('dana', clears(unit, 'checklist', 'teeth'));
});

// Common practice, no source: new thigh, hip or groin pain is X-rayed and a prescriber looks before any further dose.
test('thigh pain is cleared by a prescriber, told on the checklist or at any time', () => {
  const unit = measured().asked('p1', { thigh: 'yes' });
  expect(unit.refused('dana', clears(unit, 'checklist', 'thigh'))).toEqual(['not-yours-to-do']);
  unit.expect('halina', clears(unit, 'checklist', 'thigh'));
  unit.write('dana', 'symptom', { what: 'thigh, hip or groin pain' });
  expect(unit.refused('dana', clears(unit, 'symptom'))).toEqual(['not-yours-to-do']);
  expect(unit.refused('halina', clears(unit, 'symptom', 'thigh'))).toEqual(['field-wrong']);
  unit.expect('halina', clears(unit, 'symptom'));
});
