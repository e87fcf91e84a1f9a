/** Who flips: the register answers as readiness does, asked once under each protocol, whatever number is moved. */
import { describe, expect, test } from 'vitest';
import {
  type Day,
  type DecisionContext,
  type NumberKey,
  type PersonAsked,
  type Protocol,
  type ProtocolSheet,
  addDays,
  day,
  everyDay,
  protocolFrom,
  readiness,
  recordOf,
  registerCompared,
  teaching,
  teachingSheet,
  verdictOn,
} from '@twelvemonth/clinical';
import { caseOf } from './oracle/random-ledgers.ts';
import { bloods, born, clear, personOf, weighed } from './person.ts';

const made = (sheet: ProtocolSheet): Protocol => {
  const found = protocolFrom(sheet);
  if (!('protocol' in found)) throw new Error('an empty number');
  return found.protocol;
};
const moved = (key: NumberKey, value: string): Protocol =>
  made({ ...teachingSheet, numbers: { ...teachingSheet.numbers, [key]: { ...teachingSheet.numbers[key], value } } });

const today = day('2026-11-25');
const context = { protocols: [{ from: day('2015-01-01'), protocol: teaching }], calendar: everyDay };

describe('one person near a limit', () => {
  const record = personOf([
    born('1942-01-15'),
    ...clear,
    ...bloods('2026-11-20', { creatinine: '80 umol/L', 'adjusted calcium': '2.31 mmol/L', 'vitamin D': '71 nmol/L' }),
    weighed('2026-11-20', '48.5'),
  ]);
  const register = registerCompared([{ record, context, today, place: undefined }]);

  test('nobody flips under the numbers in force', () => {
    expect(register.flips(teaching)).toEqual([]);
  });
  test('a stricter limit flips the verdict, and says what it was and would be', () => {
    const [flip] = register.flips(moved('clearanceFloor', '36'));
    expect(flip).toMatchObject({ verdictChanges: true, from: { verdict: 'ready' }, to: { verdict: 'not ready' } });
    expect(flip?.from.headline()).toBe('ready, near the limit');
    expect(flip?.to.headline()).toContain('not ready: kidney function at 84');
  });
  test('bloods that count for fewer days move the end of the window and not the verdict', () => {
    const [flip] = register.flips(moved('bloodsValidDays', '28'));
    expect(flip).toMatchObject({ verdictChanges: false, windowChanges: true });
    expect(flip?.from.window?.last).toBe(day('2027-01-14'));
    expect(flip?.to.window?.last).toBe(day('2026-12-18'));
  });
  test('a number that cannot touch them flips nobody', () => {
    expect(register.flips(moved('observeLaterMinutes', '60'))).toEqual([]);
  });
});

/** What is moved, a little and a lot, both ways. */
const drafts: readonly Protocol[] = [
  moved('clearanceFloor', '36'),
  moved('clearanceFloor', '30'),
  moved('bloodsValidDays', '28'),
  moved('weightValidDays', '400'),
  moved('vitaminDFloor', '75'),
  moved('calciumLow', '2.30'),
  moved('wellDaysBeforeSample', '14'),
  moved('resultDays', '7'),
  moved('pregnancyAnswerDays', '7'),
  moved('hipRepairDays', '90'),
  moved('maxConsecutiveDoses', '2'),
  moved('denosumabIntervalMonths', '9'),
  made({ ...teachingSheet, resultDaysCounted: 'working days', vitaminDPolicy: 'load without a level' }),
  made({ ...teachingSheet, hipRepairNeedsLoading: true }),
  made({ ...teachingSheet, dayQuestions: [] }),
];

test('on 150 random ledgers and 15 drafts, those who flip are those whose readiness differs', () => {
  const people = Array.from({ length: 150 }, (_, index): PersonAsked => {
    const found = caseOf(7_000 + index);
    const asked = (found.from + (index % 10)) as Day;
    return {
      record: recordOf('patient/person', found.entries),
      context: {
        // For every fourth a stricter version is adopted already and comes into force a month on.
        protocols: [
          { from: 0, protocol: teaching },
          ...(index % 4 === 1 ? [{ from: asked + 30, protocol: moved('clearanceFloor', '40') }] : []),
        ],
        calendar: found.calendar,
      },
      today: asked,
      place: index % 3 === 0 ? undefined : addDays(asked, (index * 7) % 60),
    };
  });
  const said = ({ record, today: asked, place }: PersonAsked, by: DecisionContext) => {
    const whole = readiness(record, by, asked);
    const { window } = whole;
    const { verdict, headline } = verdictOn(whole, place ?? asked);
    return { verdict, headline, first: window?.first, last: window?.last };
  };
  const register = registerCompared(people);
  let flipped = 0;
  for (const draft of drafts) {
    const expected = people.flatMap((person, index) => {
      const under = { ...person.context, protocols: [{ from: 0, protocol: draft }] };
      const [from, to] = [said(person, person.context), said(person, under)];
      const verdictChanges = from.verdict !== to.verdict;
      const windowChanges = from.first !== to.first || from.last !== to.last;
      return verdictChanges || windowChanges ? [{ index, from, to, verdictChanges, windowChanges }] : [];
    });
    const found = [...register.eachFlip(draft)].flatMap((flip, index) =>
      flip === undefined
        ? []
        : [
            {
              index,
              from: {
                verdict: flip.from.verdict,
                headline: flip.from.headline(),
                first: flip.from.window?.first,
                last: flip.from.window?.last,
              },
              to: {
                verdict: flip.to.verdict,
                headline: flip.to.headline(),
                first: flip.to.window?.first,
                last: flip.to.window?.last,
              },
              verdictChanges: flip.verdictChanges,
              windowChanges: flip.windowChanges,
            },
          ],
    );
    expect(found).toEqual(expected);
    flipped += found.length;
  }
  // Enough of both, or the comparison says nothing.
  expect(flipped).toBeGreaterThan(100);
  expect(flipped).toBeLessThan(150 * drafts.length);
});
