import { codeOnly } from '../code-text.ts';
import { isProductCode, isPureCode } from '../places.ts';
import { complaintsAbout, type Complaint, type Rule, type SourceFile } from '../rule.ts';

const clock =
  /\bDate\.now\b|\bnew Date\(\s*\)|\bTemporal\.Now\b|\bperformance\.now\b|\bprocess\.(?:hrtime|uptime)\b|\bos\.uptime\b/g;
const chance = /\bMath\.random\b/g;
const secrets = /\brandomUUID\b|\bgetRandomValues\b|\brandomBytes\b|\brandomInt\b/g;
const isClockFile = (path: string): boolean => /^apps\/[^/]+\/src\/clock\.ts$/.test(path);

function check(files: readonly SourceFile[]): Complaint[] {
  return files
    .filter((file) => isProductCode(file.path))
    .flatMap((file) => {
      const code = codeOnly(file.text);
      return [
        ...(isClockFile(file.path)
          ? []
          : complaintsAbout(
              file.path,
              code,
              clock,
              () => "reads the clock: take the date or the moment as an argument; only an app's clock.ts reads it",
            )),
        ...complaintsAbout(
          file.path,
          code,
          chance,
          () => 'is random: take a seed and use the seeded generator, so a run can be repeated',
        ),
        ...(isPureCode(file.path)
          ? complaintsAbout(
              file.path,
              code,
              secrets,
              () => 'makes random bytes in a pure package: let the app make the id and pass it in',
            )
          : []),
      ];
    });
}

export const clockAndChance: Rule = {
  name: 'only the clock.ts of an app reads the clock, and nothing is random without a seed',
  check,
  bad: [
    { path: 'packages/clinical/src/due.ts', text: 'const today = new Date();' },
    { path: 'apps/server/src/routes/today.ts', text: 'const at = `${Date.now()}`;' },
    { path: 'packages/demo/src/people.ts', text: 'const chance = Math.random();' },
    { path: 'packages/clinical/src/entry.ts', text: 'const id = crypto.randomUUID();' },
  ],
  good: [
    { path: 'apps/server/src/clock.ts', text: 'export const now = () => Date.now();' },
    {
      path: 'packages/clinical/src/due.ts',
      text: "// never Date.now\nconst at = new Date(text); const words = 'Math.random';",
    },
  ],
};
