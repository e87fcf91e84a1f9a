/**
 * A real mix of ages, sexes and creatinines through the engine: survival::flchain (R package survival, LGPL), 7,874 residents
 * of one county from 50 years on, creatinine in mg/dL, missing in about one of six. The set has no weights, so these are
 * invented from a seed. Every person gets a verdict, and the kidney's verdict is the one R's clearances ask for.
 */
import { describe, expect, test } from 'vitest';
import {
  type DecisionContext,
  type Verdict,
  addMonths,
  day,
  everyDay,
  plainDate,
  readiness,
  teaching,
  verdictOn,
} from '@twelvemonth/clinical';
import { diceOf } from '../oracle/dice.ts';
import { asked, bloods, born, clear, personOf, weighed } from '../person.ts';
import { type Table, fromR, missingFromR } from './run-r.ts';

const context: DecisionContext = { protocols: [{ from: day('2015-01-01'), protocol: teaching }], calendar: everyDay };
const FLOOR = 35;
/** A double this near the limit may lie on either side of it; the exact engine decides there. */
const HAIR = 1e-9;

type Person = {
  readonly age: number;
  readonly sex: 'female' | 'male';
  readonly mgPerDl: string | undefined;
  readonly kg: string;
};

/** What the script wants besides, the same for everyone. */
const unasked = {
  cm: '160',
  calcium: '2.3',
  albumin: '40',
  ng: '20',
  density: '0.7',
  later: '0.7',
  precision: '0.01',
  marker: '50',
  'marker.later': '40',
  ml: '100',
  minutes: '15',
  set: '20',
  breaths: '16',
  saturation: '97',
  scale: '1',
  oxygen: '0',
  systolic: '130',
  pulse: '70',
  tenths: '368',
  conscious: 'A',
  hours: '0',
};

function peopleOf(table: Table): Person[] {
  const d = diceOf(7);
  return table.map((row) => ({
    age: Number(row['age']),
    sex: row['sex'] === 'F' ? 'female' : 'male',
    mgPerDl: row['creatinine'] === 'NA' ? undefined : row['creatinine'],
    kg: (d.whole(360, 1100) / 10).toFixed(1),
  }));
}

function answerFor({ age, sex, mgPerDl, kg }: Person): {
  readonly together: Verdict;
  readonly kidneys: Verdict | undefined;
} {
  const lines = [
    ...clear,
    born(plainDate(addMonths(asked, -12 * age)), sex),
    weighed('2026-11-20', kg),
    ...bloods('2026-11-20', {
      ...(mgPerDl === undefined ? {} : { creatinine: `${mgPerDl} mg/dL` }),
      'adjusted calcium': '2.35 mmol/L',
      'vitamin D': '70 nmol/L',
    }),
  ];
  const answer = readiness(personOf(lines), context, asked);
  const { verdict, requirements } = verdictOn(answer, asked);
  return {
    together: verdict,
    kidneys: requirements.find(({ requirement }) => requirement === 'kidney-function')?.verdict,
  };
}

const missing = missingFromR('survival');
if (missing !== undefined)
  test(`OPTIONAL, NOT RUN HERE: the people of flchain through the engine (${missing})`, () =>
    expect(missing).toMatch(/is not/));
else
  describe('the people of flchain', () => {
    test('every one gets a verdict, and the kidney’s is the one R’s clearances ask for', () => {
      const people = peopleOf(fromR([], 'flchain'));
      expect(people).toHaveLength(7874);
      const measured = people.filter(({ mgPerDl }) => mgPerDl !== undefined);
      const clearances = fromR(
        measured.map(({ age, sex, kg, mgPerDl }) => ({
          age: String(age),
          sex,
          kg,
          umol: String(Number(mgPerDl) * 88.4),
          ...unasked,
        })),
      );
      const counted: Record<string, number> = {};
      const apart: string[] = [];
      let next = 0;
      for (const person of people) {
        const { together, kidneys } = answerFor(person);
        counted[together] = (counted[together] ?? 0) + 1;
        if (person.mgPerDl === undefined) {
          if (kidneys !== 'cannot say') apart.push(`no creatinine, yet ${kidneys}: ${JSON.stringify(person)}`);
          continue;
        }
        const by = clearances[next++];
        const lower = Math.min(Number(by?.['clearance.umol']), Number(by?.['clearance.mg']));
        const expected = lower >= FLOOR ? 'ready' : 'not ready';
        if (Math.abs(lower - FLOOR) > HAIR && kidneys !== expected)
          apart.push(`${kidneys}, R has ${lower}: ${JSON.stringify(person)}`);
      }
      expect(apart.slice(0, 5)).toEqual([]);
      expect(next).toBe(measured.length);
      // Agreement about nothing would be seen: all three verdicts are there, and the missing ones are those without creatinine.
      expect(counted['cannot say']).toBe(people.length - measured.length);
      expect(counted['ready']).toBeGreaterThan(1000);
      expect(counted['not ready']).toBeGreaterThan(100);
    });
  });
