/**
 * What a prescriber reads at a review of the course, word for word, with the entries each line rests on. Sources as in
 * `review-sheet.test.ts`; each answer was read against docs/readiness.md R7 before it was written down.
 */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { reviewCase, reviewInFull } from './answers-in-full/review-told.ts';

const cases = readFileSync(new URL('./answers-in-full/reviews.txt', import.meta.url), 'utf8')
  .split('\n== ')
  .slice(1);

for (const text of cases) {
  const [title = ''] = text.split('\n');
  test(`the review sheet in full: ${title}`, () => {
    const { entries, expected } = reviewCase(text);
    expect(reviewInFull(entries)).toBe(expected);
  });
}
