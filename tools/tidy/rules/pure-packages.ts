import { withoutComments } from '../code-text.ts';
import { isPureCode } from '../places.ts';
import { complaintsAbout, type Rule } from '../rule.ts';

const nodeImport = /(?:\bfrom|\bimport\(?)\s*['"](node:[^'"]+|fs|path|os|crypto|pg)['"]/g;

export const purePackages: Rule = {
  name: 'pure packages import nothing of Node',
  check: (files) =>
    files
      .filter((file) => isPureCode(file.path))
      .flatMap((file) =>
        complaintsAbout(
          file.path,
          withoutComments(file.text),
          nodeImport,
          (match) =>
            `imports ${match[1]} in a pure package: take what you need as an argument and let an app or the store fetch it`,
        ),
      ),
  bad: [{ path: 'packages/clinical/src/hash.ts', text: "import { createHash } from 'node:crypto';" }],
  good: [
    { path: 'packages/store/src/sqlite.ts', text: "import { DatabaseSync } from 'node:sqlite';" },
    { path: 'packages/clinical/src/path.ts', text: "import { path } from './path.ts';" },
  ],
};
