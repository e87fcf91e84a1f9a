import { codeOnly } from '../code-text.ts';
import { isTest } from '../places.ts';
import { complaintsAbout, type Rule } from '../rule.ts';

const notRun = /\b(?:it|test|describe|suite)(?:\.\w+)*\.(?:skip|only|todo|fails)\b(?!If)|\bx(?:it|describe|test)\s*\(/g;

export const testsRun: Rule = {
  name: 'no test is skipped, singled out or put off',
  check: (files) =>
    files
      .filter((file) => isTest(file.path))
      .flatMap((file) =>
        complaintsAbout(
          file.path,
          codeOnly(file.text),
          notRun,
          (match) =>
            `${match[0]}: make the test pass or delete it; what a machine cannot run is told by skipIf with the reason in the name`,
        ),
      ),
  bad: [
    { path: 'packages/clinical/test/day.test.ts', text: "it.skip('counts days', () => {});" },
    { path: 'packages/clinical/test/day.test.ts', text: "describe.only('days', () => {});" },
    { path: 'packages/clinical/test/day.test.ts', text: "test.todo('leap years');" },
  ],
  good: [
    {
      path: 'packages/store/test/pg.test.ts',
      text: "describe.skipIf(noPostgres)('needs PostgreSQL', () => {}); const s = 'it.skip';",
    },
  ],
};
