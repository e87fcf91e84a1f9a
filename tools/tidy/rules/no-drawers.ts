import { isCode } from '../places.ts';
import type { Rule } from '../rule.ts';

// "service" alone is a word of the job here: what a nurse runs (docs/words.md).
const drawer =
  /^(?:utils?|helpers?|common|shared|misc|managers?|services|lib|stuff)$|[-.](?:utils?|helpers?|managers?)$/i;

export const noDrawers: Rule = {
  name: 'no file or folder is a drawer',
  check: (files) =>
    files
      .filter((file) => isCode(file.path) || file.path.endsWith('.css'))
      .flatMap((file) => {
        const parts = file.path.replace(/(?:\.test)?\.\w+$/, '').split('/');
        const found = parts.find((part) => drawer.test(part));
        return found === undefined
          ? []
          : [
              {
                path: file.path,
                line: 1,
                says: `"${found}" is a drawer: name the file for the one thing it holds, and put it beside what uses it`,
              },
            ];
      }),
  bad: [
    { path: 'packages/clinical/src/utils/dates.ts', text: '' },
    { path: 'apps/web/src/date-helpers.ts', text: '' },
    { path: 'packages/store/test/common.test.ts', text: '' },
  ],
  good: [{ path: 'packages/clinical/src/calendar/day.ts', text: '' }],
};
