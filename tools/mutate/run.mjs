/**
 * npm run mutate -- formulas requirements course standing (all of them without a name): seconds to minutes a part.
 * One source alone, on the tests of its part: npm run mutate -- requirements/vitamin-d.ts
 */
import { spawnSync } from 'node:child_process';
import { parts } from './parts.mjs';

const asked = process.argv.slice(2);
const names = asked.length === 0 ? Object.keys(parts) : asked;
let failed = false;
for (const name of names) {
  const [of, ...file] = name.split('/');
  const part = parts[of];
  if (part === undefined) throw new Error(`no such part: ${of}; there are ${Object.keys(parts).join(', ')}`);
  const { status } = spawnSync('npx', ['stryker', 'run', 'tools/mutate/stryker.config.mjs'], {
    stdio: 'inherit',
    env: {
      ...process.env,
      MUTATE: file.length === 0 ? part.sources.join(',') : name,
      MUTATE_TESTS: part.tests.join(' '),
      MUTATE_REPORT: `reports/mutation-${name.replaceAll('/', '-').replace(/[.]ts$/, '')}.json`,
    },
  });
  failed ||= status !== 0;
}
process.exitCode = failed ? 1 : 0;
