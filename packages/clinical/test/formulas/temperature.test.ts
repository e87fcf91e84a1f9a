/** Degrees Fahrenheit as they were read, and the Celsius by which they are judged: a limit is never missed, no scale taken for the other. */
import { describe, expect, test } from 'vitest';
import { celsiusOfFahrenheit, kindNamed } from '@twelvemonth/clinical';

describe('degrees Fahrenheit', () => {
  // By definition a degree Fahrenheit is 5/9 of a degree Celsius, and 32 F is 0 C: these are exact.
  test.each([
    [32, 0],
    [86, 30],
    [95, 35],
    [98.6, 37],
    [100.4, 38],
    [102.2, 39],
    [104, 40],
    [109.4, 43],
  ])('%f F is %f C', (fahrenheit, celsius) => expect(celsiusOfFahrenheit(fahrenheit)).toBe(celsius));

  test('no limit in whole tenths is missed: whoever reaches it in Fahrenheit reaches it in Celsius too', () => {
    for (let read = 860; read <= 1094; read += 1) {
      const tenths = Math.round(celsiusOfFahrenheit(read / 10) * 10);
      // Whole numbers throughout: a tenth F above 32 F, times 5, against a tenth C times 9.
      const limits = Array.from({ length: 131 }, (_, index) => 300 + index);
      expect([read, limits.filter((limit) => (read - 320) * 5 >= limit * 9 && tenths < limit)]).toEqual([read, []]);
      expect(Math.abs((read - 320) * 5 - tenths * 9) * 2).toBeLessThanOrEqual(9);
    }
  });

  const observed = (more: object) =>
    kindNamed('observations').body.safeParse({ ...more, when: 'before' }) as {
      success: boolean;
      error?: { issues: { path: unknown[]; message: string }[] };
    };
  const why = (more: object): string[] =>
    observed(more).error?.issues.map(({ path, message }) => `${path.join('.')}: ${message}`) ?? [];

  test('stand beside the same in Celsius; two that contradict are asked about', () => {
    expect(observed({ temperatureFahrenheit: 100.4, temperatureCelsius: 38 }).success).toBe(true);
    expect(why({ temperatureFahrenheit: 100.4, temperatureCelsius: 37.1 })).toEqual([
      'temperatureFahrenheit: the temperature in degrees Celsius is missing or another than the one in Fahrenheit: which was read?',
    ]);
    expect(observed({ temperatureFahrenheit: 100.4 }).success).toBe(false);
  });

  test('one scale read as the other is noticed: they share no number', () => {
    expect(why({ temperatureFahrenheit: 37 })).toEqual([
      'temperatureFahrenheit: in degrees Fahrenheit a temperature is between 86 and 109.4',
    ]);
    expect(why({ temperatureCelsius: 98.6 })).toEqual([
      'temperatureCelsius: in degrees Celsius a temperature is between 30 and 43',
    ]);
  });
});
