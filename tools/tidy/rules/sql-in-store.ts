import { withoutComments } from '../code-text.ts';
import { isProductCode } from '../places.ts';
import { complaintsAbout, type Rule } from '../rule.ts';

// All lower or all upper case: a sentence on a screen ("Select people from the list") starts with one capital.
const statement =
  /\bselect\s+[\w*.,()\s"]+?\s+from\s+[\w"]+|\bSELECT\s[^;]+?\sFROM\s+|\b(?:insert\s+into|INSERT\s+INTO|delete\s+from|DELETE\s+FROM|create\s+table|CREATE\s+TABLE|drop\s+table|DROP\s+TABLE)\s+["\w]+|\b(?:update\s+\w+\s+set\s+\w+\s*=|UPDATE\s+\w+\s+SET\s)|\b(?:pragma|PRAGMA)\s+\w+/g;
const driver = /import\s+(?!type\b)[^;]*?from\s*['"](kysely(?:\/[\w-]+)?|pg|node:sqlite)['"]/g;

export const sqlInStore: Rule = {
  name: 'only packages/store speaks SQL',
  check: (files) =>
    files
      .filter((file) => isProductCode(file.path) && !file.path.startsWith('packages/store/'))
      .flatMap((file) => {
        const code = withoutComments(file.text);
        return [
          ...complaintsAbout(
            file.path,
            code,
            statement,
            (match) => `speaks SQL ("${match[0].slice(0, 40)}"): give the store a function with a name for it`,
          ),
          ...complaintsAbout(
            file.path,
            code,
            driver,
            (match) => `uses ${match[1]}: ask the store for the handle or for a named function`,
          ),
        ];
      }),
  bad: [
    { path: 'apps/server/src/routes/people.ts', text: 'db.exec(`select name, born from person where id = ?`);' },
    { path: 'apps/server/src/auth.ts', text: "import { DatabaseSync } from 'node:sqlite';" },
    { path: 'apps/cli/src/wipe.ts', text: "run('delete from entry');" },
  ],
  good: [
    { path: 'packages/store/src/read.ts', text: "sql('select * from entry')" },
    { path: 'apps/web/src/people.tsx', text: "const words = 'Select people from the list';" },
    { path: 'apps/server/src/auth.ts', text: "import type { Kysely } from 'kysely';" },
  ],
};
