import { isCode } from '../places.ts';
import type { Complaint, Rule, SourceFile } from '../rule.ts';

const mostLines = 350;
/** A list of cases reads well at a length at which code does not. */
const mostLinesOfTests = 600;
const limitOf = (path: string): number => (/(?:^|\/)tests?\//.test(path) ? mostLinesOfTests : mostLines);

/** Files that may be longer, each with its reason. The shorter this table, the better. */
const longFiles: Readonly<Record<string, string>> = {};

const linesOf = (file: SourceFile): number => file.text.trimEnd().split('\n').length;

function check(files: readonly SourceFile[]): Complaint[] {
  const looked = files.filter((file) => isCode(file.path) || file.path.endsWith('.css'));
  const tooLong = looked
    .filter((file) => linesOf(file) > limitOf(file.path) && longFiles[file.path] === undefined)
    .map((file) => ({
      path: file.path,
      line: limitOf(file.path) + 1,
      says: `has ${linesOf(file)} lines, more than ${limitOf(file.path)}: move the second thing it holds into a file of its own`,
    }));
  const stale = looked
    .filter((file) => linesOf(file) <= limitOf(file.path) && longFiles[file.path] !== undefined)
    .map((file) => ({ path: file.path, line: 1, says: 'is short again: take it off the list in file-length.ts' }));
  return [...tooLong, ...stale];
}

export const fileLength: Rule = {
  name: `no file is longer than ${mostLines} lines (of tests ${mostLinesOfTests}) without a reason`,
  check,
  bad: [
    { path: 'packages/clinical/src/all.ts', text: 'const x = 1;\n'.repeat(mostLines + 1) },
    { path: 'packages/clinical/test/all.test.ts', text: 'const x = 1;\n'.repeat(mostLinesOfTests + 1) },
  ],
  good: [{ path: 'packages/clinical/src/day.ts', text: 'const x = 1;\n'.repeat(mostLines) }],
};
