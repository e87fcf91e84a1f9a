import { withoutComments } from '../code-text.ts';
import { isProductCode } from '../places.ts';
import { complaintsAbout, type Complaint, type Rule, type SourceFile } from '../rule.ts';

const authority = 'docs/words.md';

/** The rows of the table under "Retired words" in docs/words.md: word, what to say instead. */
function retired(words: string): { readonly word: string; readonly instead: string }[] {
  const section = words.split(/^## /m).find((part) => part.startsWith('Retired words')) ?? '';
  return section
    .split('\n')
    .map((line) => line.split('|').map((cell) => cell.trim()))
    .filter((cells) => cells.length >= 4 && cells[1] !== 'retired' && !/^-+$/.test(cells[1] ?? ''))
    .map((cells) => ({ word: cells[1] ?? '', instead: cells[2] ?? '' }));
}

/** Other people's words live in the formats that cross a wire; `slot=` is an attribute of the web's own. */
const isForeign = (path: string): boolean =>
  path.startsWith('packages/exchange/src/fhir/') || path === 'packages/planning/src/day/shared-format.ts';

function check(files: readonly SourceFile[]): Complaint[] {
  const words = files.find((file) => file.path === authority);
  const table = retired(words?.text ?? '');
  if (table.length === 0)
    return [{ path: authority, line: 1, says: 'has no table under "Retired words": this rule reads it there' }];
  return files
    .filter((file) => isProductCode(file.path) && !isForeign(file.path))
    .flatMap((file) => {
      const code = withoutComments(file.text);
      return table.flatMap(({ word, instead }) => {
        const pattern = new RegExp(
          `\\b${word}s?\\b(?!=)|\\b${word}(?=[A-Z])|(?<=[a-z])${word[0]?.toUpperCase()}${word.slice(1)}s?(?![a-z])`,
          'g',
        );
        return complaintsAbout(
          file.path,
          code,
          pattern,
          () => `says "${word}", a retired word: say ${instead} (docs/words.md)`,
        );
      });
    });
}

const words = { path: authority, text: '## Retired words\n| retired | say |  |\n|---|---|---|\n| slot | place | |\n' };

export const retiredWords: Rule = {
  name: 'retired words stay retired',
  check,
  bad: [words, { path: 'packages/planning/src/day.ts', text: 'const slots = 4; const freeSlot = 1;' }],
  good: [
    words,
    { path: 'apps/web/src/dialog.tsx', text: '<Button slot="close">Close</Button> // a slot of the browser' },
  ],
};
