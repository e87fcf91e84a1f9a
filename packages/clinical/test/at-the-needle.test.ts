/** What is told before a needle goes in. Hazards 72 to 74; common practice, no source. */
import { describe, expect, test } from 'vitest';
import { atTheNeedle, day } from '@twelvemonth/clinical';
import { type Line, at, personOf } from './person.ts';

const told = (...lines: readonly Line[]) => atTheNeedle(personOf(lines), day('2026-11-26')).join(' ');
const allergic = (substance: string): Line => at('2026-01-05', 'allergy', { answer: 'other', substance });

describe('before the needle', () => {
  test.each([
    ['chlorhexidine wipes', 'Allergic to chlorhexidine: another skin cleaner.', 'latex or plaster'],
    ['Latex', 'Allergic to latex: no latex', 'chlorhexidine or plaster'],
    ['sticking plaster', 'Allergic to plaster: another dressing.', 'chlorhexidine or latex'],
  ])('an allergy to %s is told where the skin is cleaned; the others are asked about', (substance, says, others) => {
    expect(told(allergic(substance))).toContain(says);
    expect(told(allergic(substance))).toContain(`No allergy to ${others} is recorded. Ask.`);
  });
  test('"none known" is no answer about these, and another allergy says nothing of them', () => {
    const asked = 'No allergy to chlorhexidine, latex or plaster is recorded. Ask.';
    expect(told()).toContain(asked);
    expect(told(at('2026-01-05', 'allergy', { answer: 'none known' }), allergic('penicillin'))).toContain(asked);
  });
  test('who takes something that thins the blood, until it is stopped', () => {
    const apixaban = at('2026-03-01', 'medicine', { name: 'apixaban', sort: 'anticoagulant' });
    expect(told(apixaban)).toMatch(/Takes apixaban: press on the site until it is dry.*A fall now is a bleed/);
    const stopped = at('2026-06-01', 'medicine', {
      name: 'Apixaban',
      sort: 'anticoagulant',
      stoppedOn: '2026-06-01' as never,
    });
    expect(told(apixaban, stopped)).not.toContain('apixaban');
  });
  test('an earlier faint is told with its day; where there was none it is asked', () => {
    expect(told()).toContain('Ever fainted at a needle? Then lying down.');
    expect(told(at('2025-11-20', 'reaction', { what: 'fainted at the cannula', severity: 'mild' }))).toContain(
      '20 Nov 2025: fainted at the cannula. Lying down this time.',
    );
  });
});
