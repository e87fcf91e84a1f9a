import { withoutComments } from '../code-text.ts';
import { complaintsAbout, type Rule } from '../rule.ts';

const isRead = (path: string): boolean =>
  /^(?:apps\/web|apps\/cli|packages\/(?:clinical|letters|charts))\/src\/.*\.(?:ts|tsx)$/.test(path);
const safe = /(?<![\w-])safe(?:ly)?(?![\w-])/gi;

export const noSafeVerdict: Rule = {
  name: 'no screen, letter or sentence calls anything "safe"',
  check: (files) =>
    files
      .filter((file) => isRead(file.path))
      .flatMap((file) =>
        complaintsAbout(
          file.path,
          withoutComments(file.text),
          safe,
          () => 'says "safe": say ready, not ready or cannot say, with the reason; we never promise safety',
        ),
      ),
  bad: [{ path: 'apps/web/src/verdict.tsx', text: '<p>Safe to infuse</p>' }],
  good: [
    {
      path: 'apps/web/src/verdict.tsx',
      text: '// never "safe"\nconst parsed = schema.safeParse(x); const inset = "env(safe-area-inset-top)";',
    },
  ],
};
