/**
 * The anaphylaxis card against the published guideline: Resuscitation Council UK, Emergency treatment of anaphylaxis, May 2021
 * (adults: 500 micrograms IM, 0.5 mL of 1 mg/mL, again after 5 minutes; refractory: no improvement after two doses).
 */
import { expect, it } from 'vitest';
import { cardLines, guidelineDecides, notFirst, thinkOfIt } from '../src/anaphylaxis/card-lines.ts';

const words = cardLines.map(({ does, detail }) => `${does}. ${detail ?? ''}`);

it('the volume on the card holds the dose on the card, and both are those of the guideline', () => {
  const line = words.find((each) => each.startsWith('Adrenaline')) ?? '';
  const micrograms = Number(/(\d+) micrograms/.exec(line)?.[1]);
  const milliliters = Number(/([\d.]+) mL of/.exec(line)?.[1]);
  const milligramsPerMilliliter = Number(/of ([\d.]+) mg\/mL/.exec(line)?.[1]);
  expect(micrograms).toBe(500);
  expect(milliliters * milligramsPerMilliliter * 1000).toBe(micrograms);
  expect(line).toMatch(/thigh muscle \(IM\).*Adults/);
});

it('the drip is stopped first, then help is called, then adrenaline is given, before anything else', () => {
  expect(words.slice(0, 3).map((each) => each.split(/[ .]/)[0])).toEqual(['Stop', 'Call', 'Adrenaline']);
});

it('adrenaline is given again after 5 minutes, and two doses without improvement are refractory', () => {
  expect(words.some((each) => /after 5 minutes: adrenaline once more\. The same dose/.test(each))).toBe(true);
  expect(words.some((each) => /after 2 doses: refractory/.test(each))).toBe(true);
});

it('every line says where it is from and how far that was seen', () => {
  for (const { source } of [...cardLines, thinkOfIt, notFirst]) expect(source).toMatch(/read|from memory/);
});

it('the local guideline is said to decide, and no number to ring is made up', () => {
  expect(guidelineDecides).toMatch(/^Your local guideline decides/);
  expect(words.find((each) => each.startsWith('Call for help'))).not.toMatch(/\d/);
});
