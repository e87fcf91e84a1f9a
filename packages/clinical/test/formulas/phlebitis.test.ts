/** Visual infusion phlebitis score, Jackson 1998 (read); rows and examples: clinical fact sheet 2l. */
import { describe, expect, test } from 'vitest';
import { type SiteSigns, phlebitisScale, phlebitisScore } from '@twelvemonth/clinical';

const none: SiteSigns = {
  pain: false,
  painAlongCannula: false,
  redness: false,
  swelling: false,
  induration: false,
  venousCord: false,
  fever: false,
};
const seen = (...signs: (keyof SiteSigns)[]): SiteSigns => ({
  ...none,
  ...Object.fromEntries(signs.map((sign) => [sign, true])),
});

describe('the score from what is seen', () => {
  test.each([
    ['the site is healthy', seen(), 0],
    ['slight redness only', seen('redness'), 1],
    ['slight pain only', seen('pain'), 1],
    ['swelling alone: not defined, 1 and look again', seen('swelling'), 1],
    ['pain along the path alone', seen('painAlongCannula'), 1],
    ['a cord alone: not defined, 1 and look again', seen('venousCord'), 1],
    ['fever alone tells nothing of the site', seen('fever'), 0],
    ['pain and redness', seen('pain', 'redness'), 2],
    ['pain and swelling', seen('pain', 'swelling'), 2],
    ['redness and swelling', seen('redness', 'swelling'), 2],
    ['pain of two sorts is one sign', seen('pain', 'painAlongCannula'), 1],
    ['swelling and hardening are one sign', seen('swelling', 'induration'), 1],
    ['pain, redness and swelling without hardening', seen('pain', 'redness', 'swelling'), 2],
    ['pain along the path, redness, hardening', seen('painAlongCannula', 'redness', 'induration'), 3],
    ['the same with a cord', seen('painAlongCannula', 'redness', 'induration', 'venousCord'), 4],
    ['the same with fever', seen('painAlongCannula', 'redness', 'induration', 'venousCord', 'fever'), 5],
    ['fever without a cord stays 3', seen('painAlongCannula', 'redness', 'induration', 'fever'), 3],
    ['a cord without hardening stays 2', seen('painAlongCannula', 'redness', 'venousCord'), 2],
    ['a cord without redness stays 2', seen('painAlongCannula', 'induration', 'venousCord'), 2],
    ['hardening and redness without pain along the path', seen('redness', 'induration', 'venousCord', 'fever'), 2],
  ])('%s: %s', (_name, signs, expected) => expect(phlebitisScore(signs).score).toBe(expected));
});

describe('what the score asks for', () => {
  test('from 2 on the cannula is resited, below it is watched', () => {
    expect(phlebitisScore(seen()).act).toBe('watch');
    expect(phlebitisScore(seen('redness')).act).toBe('watch, look again');
    expect(phlebitisScore(seen('pain', 'redness')).act).toBe('resite the cannula');
    expect(phlebitisScore(seen('painAlongCannula', 'redness', 'induration')).act).toBe(
      'resite the cannula, consider treatment',
    );
    expect(phlebitisScore(seen('painAlongCannula', 'redness', 'induration', 'venousCord')).act).toBe(
      'resite the cannula, consider treatment',
    );
    expect(phlebitisScore(seen('painAlongCannula', 'redness', 'induration', 'venousCord', 'fever')).act).toBe(
      'start treatment, resite the cannula',
    );
  });
  test('each stage has its name, and the scale is named: another one runs from 0 to 4', () => {
    expect(
      [
        seen(),
        seen('redness'),
        seen('pain', 'redness'),
        seen('painAlongCannula', 'redness', 'induration'),
        seen('painAlongCannula', 'redness', 'induration', 'venousCord'),
        seen('painAlongCannula', 'redness', 'induration', 'venousCord', 'fever'),
      ].map((signs) => phlebitisScore(signs).says),
    ).toEqual([
      'site looks well',
      'possible first signs',
      'early phlebitis',
      'medium stage of phlebitis',
      'advanced phlebitis or start of thrombophlebitis',
      'advanced thrombophlebitis',
    ]);
    expect(phlebitisScale).toContain('0 to 5 (Jackson 1998)');
  });
});
