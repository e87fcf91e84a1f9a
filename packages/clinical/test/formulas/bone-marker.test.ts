/** Bone marker response. IOF-ECTS 2017 (PMC5302161, read): a fall beyond the least significant change, P1NP 38 %, CTX 56 %. */
import { describe, expect, test } from 'vitest';
import { markerResponse, ratioText, scaled } from '@twelvemonth/clinical';

describe('a marker has responded when it fell by more than its least significant change', () => {
  test.each([
    ['P1NP', '60', '37.1', '38.17', true],
    ['P1NP', '60', '37.2', '38.00', false],
    ['P1NP', '60', '37.3', '37.83', false],
    ['CTX', '500', '219.9', '56.02', true],
    ['CTX', '500', '220', '56.00', false],
    ['CTX', '500', '500', '0.00', false],
    ['CTX', '500', '610', '-22.00', false],
  ] as const)('%s from %s to %s: a fall of %s %%, responded: %s', (marker, from, to, fall, responded) => {
    const response = markerResponse(marker, scaled(from), scaled(to));
    expect(ratioText(response.fallPercent, 2)).toBe(fall);
    expect(response.responded).toBe(responded);
  });
  test('38 % exactly is not more than 38 %, which floats get wrong', () => {
    expect((100 * (0.1 - 0.062)) / 0.1).toBeGreaterThan(38);
    expect(markerResponse('P1NP', scaled('0.1'), scaled('0.062')).responded).toBe(false);
  });
});
