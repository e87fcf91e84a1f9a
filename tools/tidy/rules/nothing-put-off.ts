import { isRuleOfStyle } from '../places.ts';
import { complaintsAbout, type Complaint, type Rule, type SourceFile } from '../rule.ts';

const putOff = /\b(?:TODO|FIXME|XXX|HACK)\b/g;
const silenced = /@ts-(?:ignore|nocheck|expect-error)\b|(?:oxlint|eslint)-disable/;

/** The reason stands behind the words that silence (after a colon or two dashes) or in a comment on the line before. */
function silencedWithoutReason(file: SourceFile): Complaint[] {
  const lines = file.text.split('\n');
  return lines.flatMap((line, index) => {
    const found = silenced.exec(line);
    if (found === null || /(?:--|:)\s+\w+ \w+/.test(line.slice(found.index))) return [];
    if (/^\s*(?:\/\/|\{?\/\*|\*)\s*\w/.test(lines[index - 1] ?? '') && !found[0].startsWith('@ts-ignore')) return [];
    return [
      { path: file.path, line: index + 1, says: `${found[0]}: put the cause right, or say the reason beside it` },
    ];
  });
}

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
        ...silencedWithoutReason(file),
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
