/** What an American unit types: told as it was read with the unit it is reckoned in beside it, and judged in that, never guessed. */
import { expect, test } from 'vitest';
import { type Fact, type KindName, day, entryText, inAmerican } from '@twelvemonth/clinical';

const said = (kind: KindName, body: unknown): string =>
  entryText({ kind, body, on: day('2026-11-24'), at: undefined } as unknown as Fact);
const measured = (value: string, unit: string, comparator = '') => ({ comparator, value, unit });

// Factors: 1 lb = 0.45359237 kg and 1 in = 2.54 cm by definition; 88.4, 4.008 and 2.496 as in units.test.ts.
test.each<[KindName, unknown, string]>([
  ['weight', { quantity: measured('141.5', 'lb'), method: 'measured' }, 'weight 141.5 lb (64.2 kg), measured'],
  ['weight', { quantity: measured('64.2', 'kg'), method: 'measured' }, 'weight 64.2 kg, measured'],
  ['height', { quantity: measured('63', 'in'), which: 'measured now' }, 'height 63 in (160.0 cm), measured now'],
  [
    'result',
    { analyte: 'creatinine', quantity: measured('0.9', 'mg/dL') },
    'creatinine 0.9 mg/dL (79.6 umol/L) (sample of 24 Nov 2026)',
  ],
  [
    'result',
    { analyte: 'adjusted calcium', quantity: measured('9.4', 'mg/dL') },
    'adjusted calcium 9.4 mg/dL (2.35 mmol/L) (sample of 24 Nov 2026)',
  ],
  [
    'result',
    { analyte: 'vitamin D', quantity: measured('8', 'ng/mL', '<') },
    'vitamin D <8 ng/mL (<20.0 nmol/L) (sample of 24 Nov 2026)',
  ],
  [
    'result',
    { analyte: 'albumin', quantity: measured('4.0', 'g/dL') },
    'albumin 4.0 g/dL (40 g/L) (sample of 24 Nov 2026)',
  ],
  [
    'observations',
    { temperatureCelsius: 38.2, temperatureFahrenheit: 100.8, when: 'before' },
    'observations before the dose: temperature 100.8 degrees F (38.2 degrees C)',
  ],
])('%s %o', (kind, body, text) => expect(said(kind, body)).toBe(text));

test('sentences of ours in American words; what merely looks like one of them stays', () => {
  expect(inAmerican('Take bloods (creatinine) and weigh; bloods of 24 Nov 2026 not signed')).toBe(
    'Draw labs (creatinine) and weigh; labs of 24 Nov 2026 not signed',
  );
  expect(inAmerican('How do you take paracetamol?')).toBe('How do you take acetaminophen?');
  expect(inAmerican('With a fit or a faint: ring the emergency number.')).toBe('With a seizure or a faint: call 911.');
  expect(inAmerican('Adrenaline 500 micrograms')).toBe('Epinephrine (adrenaline) 500 micrograms');
  expect(inAmerican('ring them, or write; whom to ring; Ring us.')).toBe('call them, or write; whom to call; Call us.');
  expect(inAmerican('diarrhoea, oedema, clear and colourless')).toBe('diarrhea, edema, clear and colorless');
  expect(inAmerican('during the day, a string, hearing, the ring finger')).toBe(
    'during the day, a string, hearing, the ring finger',
  );
  expect(inAmerican('ill-since-bloods, bloodstream, a fitting')).toBe('ill-since-bloods, bloodstream, a fitting');
});
