/** What to write instead: the example of an entry kind as a line of text. */
import { kindNamed, kindNames } from '../kinds/index.ts';
import { referencesOf, usualPerson, usualZone } from './draft-line.ts';
import { printLedger } from './print-ledger.ts';

const standIn = { kind: 'left', shape: kindNamed('left').shape, body: kindNamed('left').example };

/** The example of a kind as a line. */
export function exampleOf(kind: (typeof kindNames)[number]): string {
  const { shape, example } = kindNamed(kind);
  const draft = { subject: usualPerson, kind, shape, body: example, effectiveAt: '2026-03-03', zone: usualZone };
  // What it names must be there for the line to be written in words.
  const named = referencesOf(draft).map((id) => ({ ...draft, ...standIn, id }));
  return (
    printLedger([...named, draft])
      .trim()
      .split('\n')
      .at(-1) ?? ''
  );
}

const commonExamples = [
  'weight',
  'result',
  'vitamin-d-loading',
  'dose',
  'prescription',
  'consent',
  'allergy',
  'pregnancy',
] as const;

/** The example whose first word stands on the line, else a few to choose from. */
export function remedyFor(text: string): string {
  const said = new Set(text.toLowerCase().match(/[a-z-]{3,}/g) ?? []);
  const scored = kindNames
    .map((kind) => {
      const words =
        exampleOf(kind)
          .slice('3 Mar 2026'.length)
          .toLowerCase()
          .match(/[a-z-]{3,}/g) ?? [];
      const first = words[0] !== undefined && said.has(words[0]) ? 3 : 0;
      return { kind, score: first + words.filter((word) => said.has(word)).length };
    })
    .filter(({ score }) => score >= 3)
    .toSorted((a, b) => b.score - a.score);
  const best = scored[0];
  return best === undefined ? `for example: ${commonExamples.map(exampleOf).join(' / ')}` : exampleOf(best.kind);
}
