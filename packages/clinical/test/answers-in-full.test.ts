/**
 * What a nurse reads when asking "why?" of each requirement, in full: verdict, cause, working, thresholds, cautions and what may be
 * done, span by span (docs/readiness.md R1 to R14, A1, A2). Each answer was read against that page before it was
 * written down; after a change of wording `answers-in-full/write.ts` writes them anew, to be read again.
 */
import { expect, test } from 'vitest';
import { answerInFull, caseFrom, casesIn, days, judgeOf } from './answers-in-full/told.ts';

/** What is settled today lasts so long at least: a prescription, a dental check. */
const SETTLED_DAYS = 300;

const files = ['person.txt', 'bloods.txt', 'vitamin-d.txt', 'medicines-and-course.txt', 'course-events.txt'];

for (const text of files.flatMap((file) => casesIn(file))) {
  const [title = ''] = text.split('\n');
  test(`${title}: the answer, word for word, and only announced days change it`, () => {
    const one = caseFrom(text);
    const { text: answer, begins } = answerInFull(one);
    expect(answer).toBe(one.expected);
    const announced = judgeOf(one).changes;
    expect(begins.slice(1).filter((day) => !announced.includes(day))).toEqual([]);
  });

  test(`${title}: once its blocker is settled in the person's favour it no longer blocks`, () => {
    const one = caseFrom(text);
    const judge = judgeOf(one);
    const seen = new Set<string>();
    for (const day of days().slice(0, SETTLED_DAYS)) {
      const path = judge.path(day);
      if (path.is !== 'blocked' || path.by.settled === undefined || seen.has(path.by.what)) continue;
      seen.add(path.by.what);
      const settled = judgeOf(one, path.by.settled(one.evidence)).path(day);
      expect(settled.is === 'blocked' ? settled.by.what : settled.is).not.toBe(path.by.what);
    }
  });
}
