/**
 * 500 letters: composed, checked for their reading level and made one document that prints, in this process; then printed by a
 * browser as one tagged PDF. And one whole patient pack. Whoever composes can stop between two letters.
 */
import { createHash } from 'node:crypto';
import { day } from '@twelvemonth/clinical';
import {
  type LetterFacts,
  lettersHtml,
  packParts,
  patientPackHtml,
  patientPackOf,
  writeLetter,
} from '@twelvemonth/letters';
import { matters, someone } from '../packages/letters/test/correspondence/everyone.ts';
import { everyone } from '../packages/letters/test/patient-pack/people.ts';
import { launch } from '../tests/support/browser.ts';
import { type Bench, type Figure, bestMilliseconds } from './figure.ts';

const COUNT = 500;

const factsOf = (index: number): LetterFacts => ({
  ...someone,
  today: day('2026-11-25'),
  person: { ...someone.person, name: `Person Number ${index}` },
  matter: matters[index % matters.length] ?? someone.matter,
});

function composed(): string {
  const letters = Array.from({ length: COUNT }, (_, index) => {
    const { letter, notPrintable } = writeLetter(factsOf(index));
    if (notPrintable.length > 0) throw new Error(notPrintable.join('; '));
    return letter;
  });
  return lettersHtml('Letters to send', letters);
}

const digest = (text: string): string => createHash('sha256').update(text).digest('hex');

export const bench: Bench = async () => {
  if (digest(composed()) !== digest(composed())) throw new Error('the same letters came out otherwise');
  const milliseconds = await bestMilliseconds(composed);
  const [facts] = everyone;
  if (facts === undefined) throw new Error('nobody to make a pack for');
  const pack = await bestMilliseconds(() => patientPackHtml(patientPackOf(facts, { parts: packParts }).pack, 'normal'));
  return [
    { what: `${COUNT} letters composed, checked and made one document`, value: milliseconds, unit: 'ms' },
    { what: 'a patient pack of four sheets', value: pack, unit: 'ms' },
    ...(await printed(composed())),
    { what: 'memory of this process', value: process.memoryUsage.rss() / 1e6, unit: 'MB' },
  ];
};

async function printed(html: string): Promise<readonly Figure[]> {
  const browser = await launch();
  try {
    const page = await browser.newPage();
    const began = performance.now();
    await page.setContent(html);
    const pdf = await page.pdf({ preferCSSPageSize: true, tagged: true, outline: true });
    return [
      {
        what: `the same ${COUNT} letters as one tagged PDF, by a browser`,
        value: (performance.now() - began) / 1000,
        unit: 's',
      },
      { what: 'size of that PDF', value: pdf.length / 1e6, unit: 'MB' },
    ];
  } finally {
    await browser.close();
  }
}
