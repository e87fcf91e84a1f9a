import { posix } from 'node:path';
import { withoutComments } from '../code-text.ts';
import { isProductCode } from '../places.ts';
import { complaintsAbout, type Complaint, type Rule, type SourceFile } from '../rule.ts';

/** Who may import whom among the packages; the apps may import every package and never each other. */
const arrows: Readonly<Record<string, readonly string[]>> = {
  clinical: [],
  planning: ['clinical'],
  exchange: ['clinical'],
  charts: ['clinical', 'planning'],
  counselling: ['clinical'],
  letters: ['clinical', 'charts'],
  store: ['clinical'],
  demo: ['clinical', 'planning'],
};
const apps = ['server', 'web', 'cli'];
const imported = /(?:\bfrom|\bimport\(?)\s*['"]([^'"]+)['"]/g;

function wrong(path: string, target: string): string | undefined {
  const [area = '', owner = ''] = path.split('/');
  if (target.startsWith('.')) {
    const reached = posix.join(posix.dirname(path), target);
    if (reached.startsWith(`${area}/${owner}/`)) return undefined;
    return `reaches out of its package to ${reached}: import the package by its name, or move what is needed`;
  }
  if (!target.startsWith('@twelvemonth/')) return undefined;
  const [, name = '', ...rest] = target.split('/');
  if (rest.length > 0) return `imports the inside of ${name}: export what is needed from its index.ts`;
  if (apps.includes(name)) return `imports the app ${name}: put what both need into a package`;
  if (area === 'apps') return undefined;
  const allowed = arrows[owner];
  if (allowed === undefined) return `${owner} is a new package: say in import-arrows.ts what it may import`;
  if (allowed.includes(name)) return undefined;
  return `${owner} may import ${allowed.length === 0 ? 'nothing of ours' : allowed.join(' and ')}, not ${name}: turn the arrow round, or let an app join the two`;
}

function check(files: readonly SourceFile[]): Complaint[] {
  return files
    .filter((file) => isProductCode(file.path))
    .flatMap((file) =>
      complaintsAbout(
        file.path,
        withoutComments(file.text),
        imported,
        (match) => wrong(file.path, match[1] ?? '') ?? '',
      ).filter((complaint) => complaint.says !== ''),
    );
}

export const importArrows: Rule = {
  name: 'imports follow the arrows of the layout',
  check,
  bad: [
    { path: 'packages/clinical/src/due.ts', text: "import { launch } from '@twelvemonth/planning';" },
    { path: 'packages/exchange/src/csv.ts', text: "import { save } from '../../store/src/save.ts';" },
    { path: 'apps/cli/src/main.ts', text: "import { app } from '@twelvemonth/server';" },
    { path: 'apps/web/src/page.tsx', text: "const day = await import('@twelvemonth/clinical/calendar/day');" },
  ],
  good: [
    {
      path: 'packages/letters/src/pack.ts',
      text: "import { strip } from '@twelvemonth/charts';\n// from '@twelvemonth/store'",
    },
    { path: 'apps/server/src/main.ts', text: "import { open } from '@twelvemonth/store';" },
  ],
};
