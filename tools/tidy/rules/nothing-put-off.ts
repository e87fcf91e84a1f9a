import { isRuleOfStyle } from '../places.ts';
import { complaintsAbout, type Rule } from '../rule.ts';

const putOff = /\b(?:TODO|FIXME|XXX|HACK)\b/g;
const silenced =
  /(?:@ts-(?:ignore|nocheck)\b)|@ts-expect-error(?!\s*:?\s+\w+ \w+)|(?:oxlint|eslint)-disable(?!.*--\s*\w)/g;

export const nothingPutOff: Rule = {
  name: 'nothing is left for later in a comment, and no check is silenced without a reason',
  check: (files) =>
    files
      .filter((file) => !isRuleOfStyle(file.path) && !file.path.endsWith('package-lock.json'))
      .flatMap((file) => [
        ...complaintsAbout(
          file.path,
          file.text,
          putOff,
          (match) => `${match[0]}: do it now, or write in docs/readiness.md what is missing`,
        ),
        ...complaintsAbout(
          file.path,
          file.text,
          silenced,
          (match) => `${match[0]}: put the cause right, or say the reason after it`,
        ),
      ]),
  bad: [
    { path: 'apps/server/src/app.ts', text: '// TODO check the role' },
    { path: 'apps/server/src/app.ts', text: '// @ts-ignore' },
    { path: 'apps/server/src/app.ts', text: '// oxlint-disable-next-line no-console' },
  ],
  good: [
    { path: 'apps/server/src/app.ts', text: '// oxlint-disable-next-line no-console -- the one place that prints' },
    { path: 'packages/clinical/test/day.test.ts', text: '// @ts-expect-error: a day is not a number' },
  ],
};
