/** npm run mutate -- formulas requirements course standing (all of them without a name). Slow: minutes to an hour a part. */
import { spawnSync } from 'node:child_process';
import { parts } from './parts.mjs';

const asked = process.argv.slice(2);
const names = asked.length === 0 ? Object.keys(parts) : asked;
let failed = false;
for (const name of names) {
  const part = parts[name];
  if (part === undefined) throw new Error(`no such part: ${name}; there are ${Object.keys(parts).join(', ')}`);
  const { status } = spawnSync('npx', ['stryker', 'run', 'tools/mutate/stryker.config.mjs'], {
    stdio: 'inherit',
    env: {
      ...process.env,
      MUTATE: part.sources.join(','),
      MUTATE_TESTS: part.tests.join(' '),
      MUTATE_REPORT: `reports/mutation-${name}.json`,
    },
  });
  failed ||= status !== 0;
}
process.exitCode = failed ? 1 : 0;
