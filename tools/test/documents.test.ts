/** The examples in the documents are run: a page that shows notes as text shows notes that can be read. */
import { describe, expect, it } from 'vitest';
import { parseLedger, printLedger } from '../../packages/clinical/src/index.ts';
import { projectFiles } from '../tidy/tree.ts';

const fence = /^```(notes(?: with mistakes)?)\n([^]*?)^```$/gm;

const blocks = projectFiles()
  .filter((file) => file.path.endsWith('.md'))
  .flatMap((file) =>
    [...file.text.matchAll(fence)].map((match, index) => ({
      name: `${file.path}, block ${index + 1}`,
      kind: match[1] ?? '',
      text: match[2] ?? '',
    })),
  );

const problemsOf = (text: string): readonly string[] => {
  const read = parseLedger(text);
  return read.ok ? [] : read.problems.map((problem) => `${problem.line}: ${problem.says}`);
};

describe('notes shown in a document', () => {
  it('are there to be run', () => {
    expect(new Set(blocks.map((block) => block.kind))).toEqual(new Set(['notes', 'notes with mistakes']));
  });

  it.for(blocks.filter((block) => block.kind === 'notes'))(
    'can be read, and are printed so that they read the same: $name',
    ({ text }) => {
      expect(problemsOf(text)).toEqual([]);
      const read = parseLedger(text);
      const again = parseLedger(read.ok ? printLedger(read.drafts) : '');
      expect(again.ok && read.ok && again.drafts).toEqual(read.ok && read.drafts);
    },
  );

  it.for(blocks.filter((block) => block.kind === 'notes with mistakes'))(
    'are refused line by line where they say so: $name',
    ({ text }) => {
      expect(problemsOf(text)).toHaveLength(text.trimEnd().split('\n').length);
    },
  );
});
