/**
 * Shares of competing ends and their limits on every step of survival::mgus2 (R package survival, LGPL; 1,384 people), asked of
 * R itself. The values committed beside incidence-limits.test.ts are from other people.
 */
import { describe, expect, test } from 'vitest';
import { type Observed, incidenceOf, stepOn } from '@twelvemonth/clinical';
import { missingFromR, printedByR } from './run-r.ts';

/** Doubles against doubles after some hundred steps. */
const CLOSE = 1e-9;

const missing = missingFromR('survival');
if (missing !== undefined)
  test(`OPTIONAL, NOT RUN HERE: incidence and its limits against R (${missing})`, () =>
    expect(missing).toMatch(/is not/));
else
  describe('1,384 people', () => {
    test('every step has R’s share, standard error and limits', () => {
      const rows = printedByR('incidence.R');
      const people = rows
        .filter(({ row }) => row === 'person')
        .map(({ days, end }): Observed<string> => ({ days: Number(days), end: end ?? '' }));
      expect(people).toHaveLength(1384);
      const steps = incidenceOf(people, ['pcm', 'death']);
      const asked = rows.filter(({ row }) => row === 'step');
      expect(asked).toHaveLength(2 * steps.length);
      const apart = asked.filter(({ days, end = '', share, error, lower, upper }) => {
        const step = stepOn(steps, Number(days));
        const limits = step?.limits[end];
        const pairs =
          Number(share) === 0
            ? [[step?.share[end], 0] as const]
            : [
                [step?.share[end], Number(share)] as const,
                [limits?.standardError, Number(error)] as const,
                [limits?.lower, Number(lower)] as const,
                [limits?.upper, Number(upper)] as const,
              ];
        return pairs.some(([ours, theirs]) => !(Math.abs((ours ?? Number.NaN) - theirs) <= CLOSE));
      });
      expect(apart.slice(0, 3)).toEqual([]);
      expect(asked.filter(({ share }) => Number(share) > 0).length).toBeGreaterThan(400);
    });
  });
