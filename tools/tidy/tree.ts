/** The files of the project as git knows them: committed ones and new ones, never ignored ones. */
import { execFileSync } from 'node:child_process';
import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { SourceFile } from './rule.ts';

export const root = fileURLToPath(new URL('../../', import.meta.url));

const textFile = /\.(?:ts|tsx|mjs|js|json|md|css|html|svg|yml|yaml|txt|csv|sql|sh)$|^[^.]+$|(?:^|\/)\.[^/]+$/;

/** Pictures are files a document may link to; there is no text in them to look at. */
const picture = /\.(?:png|jpg)$/;

export function projectFiles(): SourceFile[] {
  // A checkout that another user owns (a container, a build machine) is still ours to read.
  const listed = execFileSync(
    'git',
    ['-c', 'safe.directory=*', 'ls-files', '-z', '--cached', '--others', '--exclude-standard'],
    {
      cwd: root,
      encoding: 'utf8',
    },
  );
  return [...new Set(listed.split('\0'))]
    .filter(
      (path) =>
        (textFile.test(path) || picture.test(path)) &&
        statSync(join(root, path), { throwIfNoEntry: false })?.isFile() === true,
    )
    .map((path) => ({ path, text: picture.test(path) ? '' : readFileSync(join(root, path), 'utf8') }));
}
