/**
 * `npm test`: every check of the product, one after the other. A failing step does not stop the next ones; the exit code and
 * the last line tell the truth about all of them.
 */
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { run, stoppedBy } from './children.mjs';
import { commandOf, pinnedNode, root } from './place.mjs';
import { ensureWebBuilt } from './web.mjs';
import { Refused, say, seconds } from './words.mjs';

const stepLimitMilliseconds = 30 * 60_000;
const reports = join(root, 'reports');

/** Runs a package's command on the pinned Node; resolves to its exit code. */
function runCommand(script, args) {
  return run(pinnedNode(), [script, ...args], {
    cwd: root,
    stdio: 'inherit',
    limitMilliseconds: stepLimitMilliseconds,
  });
}

const oneCheck = (passed) => ({ passed: passed ? 1 : 0, failed: passed ? 0 : 1, notRun: [], says: [] });

/** A step that counts as one check: it passes when each of its commands, run side by side, ends with 0. */
const commandStep = (name, ...commands) => ({
  name,
  run: async () => {
    const codes = await Promise.all(
      commands.map(([packageName, command, ...args]) => runCommand(commandOf(packageName, command), args)),
    );
    return oneCheck(codes.every((code) => code === 0));
  },
});

/** What went wrong, and what a browser was waiting for meanwhile; not the lines of code that led there. */
const beginning = (text = '') =>
  text
    .split('\n')
    .filter((line) => line.trim() !== '' && !/^\s+at /.test(line))
    .slice(0, 12)
    .join('\n            ');

/**
 * What a vitest report says. A file that could not even be loaded counts as one failure; a test that was skipped, or whose
 * name says NOT RUN HERE, counts as neither passed nor failed. What failed is named, so that the end of a long log tells it.
 */
export function counted(report, code) {
  const count = { passed: 0, failed: 0, notRun: [], says: [] };
  for (const file of report.testResults) {
    const saysNotRun = (test) => test.fullName.includes('NOT RUN HERE') && test.status === 'passed';
    const notRun = file.assertionResults.filter(
      (test) => saysNotRun(test) || !['passed', 'failed'].includes(test.status),
    );
    const passed = file.assertionResults.filter((test) => test.status === 'passed' && !saysNotRun(test)).length;
    const failed = file.assertionResults.filter((test) => test.status === 'failed');
    count.passed += passed;
    count.failed += file.status === 'failed' ? Math.max(failed.length, 1) : failed.length;
    count.says.push(...failed.map((test) => `${test.fullName.trim()}: ${beginning(test.failureMessages[0])}`));
    if (file.status === 'failed' && failed.length === 0) count.says.push(`${file.name}: ${beginning(file.message)}`);
    count.notRun.push(...notRun.map((test) => test.fullName.trim()));
  }
  // An error outside any test (a rejection nobody awaited) fails the run without failing a test.
  if (code !== 0 && count.failed === 0) {
    count.failed = 1;
    count.says.push('an error outside any test; it is printed above');
  }
  if (count.passed + count.failed === 0) count.failed = 1;
  return count;
}

/** A step of tests: each test counts. */
const testStep = (name, ...projects) => ({
  name,
  run: async () => {
    const file = join(reports, `tests-${projects.join('-')}.json`);
    rmSync(file, { force: true });
    const code = await runCommand(commandOf('vitest'), [
      'run',
      ...projects.flatMap((project) => ['--project', project]),
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${file}`,
    ]);
    if (!existsSync(file)) return oneCheck(false);
    return counted(JSON.parse(readFileSync(file, 'utf8')), code);
  },
});

const formatStep = commandStep('format', ['oxfmt', 'oxfmt', '--check']);
const lintStep = commandStep('lint', ['oxlint', 'oxlint', '--type-aware', '--deny-warnings']);
// One checker each: more of them work out the same types again, and three programs keep the cores busy already.
const typesStep = commandStep(
  'types',
  ...['.', 'tests', 'apps/web'].map((project) => ['typescript', 'tsc', '-p', project, '--checkers', '1']),
);
const unusedStep = commandStep('unused', ['knip', 'knip']);
const screensStep = {
  name: 'screens build',
  run: async () => {
    await ensureWebBuilt();
    return oneCheck(true);
  },
};

export const quickSteps = [formatStep, lintStep, typesStep, unusedStep, testStep('style', 'tidy')];
export const allSteps = [
  formatStep,
  lintStep,
  typesStep,
  unusedStep,
  screensStep,
  testStep('style, rules and stores', 'tidy', 'domain', 'long', 'apps'),
  testStep('in the browser', 'browser'),
];

async function outcomeOf(step) {
  try {
    return await step.run();
  } catch (error) {
    say(error instanceof Refused ? error.message : error.stack);
    return oneCheck(false);
  }
}

/** A further opinion beside a check that did run: its program (R) is no condition for anything, so CI may be without it. */
const isOptional = (name) => name.includes('OPTIONAL, NOT RUN HERE');

const isCi = (value) => !['', 'false', '0', undefined].includes(value);

/**
 * Runs the steps, prints the summary and, as the very last line, `N passed, N failed`. Resolves to the exit code. A test that
 * cannot run on this machine is named; under CI it counts as failed, because there nobody reads names, unless it says that it
 * is optional.
 */
export async function runSteps(steps, inCi = isCi(process.env['CI'])) {
  mkdirSync(reports, { recursive: true });
  const lines = [];
  const notRun = [];
  let passed = 0;
  let failed = 0;
  for (const step of steps) {
    say(`${step.name} ...`);
    const began = performance.now();
    const outcome = await outcomeOf(step);
    passed += outcome.passed;
    failed += outcome.failed;
    notRun.push(...outcome.notRun);
    const word = outcome.failed === 0 ? 'passed' : 'FAILED';
    lines.push(`${word}  ${step.name}: ${outcome.passed} passed, ${outcome.failed} failed, ${seconds(began)}`);
    lines.push(...outcome.says.map((says) => `        ${says}`));
    if (stoppedBy() !== undefined) {
      lines.push(`stopped by ${stoppedBy()}; the steps after "${step.name}" did not run`);
      failed += 1;
      break;
    }
  }
  say('summary');
  for (const line of lines) console.log(`  ${line}`);
  const countsAsFailed = (test) => inCi && !isOptional(test);
  for (const test of notRun)
    console.log(`  could not run here${countsAsFailed(test) ? ' (counts as failed)' : ''}: ${test}`);
  failed += notRun.filter(countsAsFailed).length;
  console.log(`${passed} passed, ${failed} failed`);
  return failed === 0 ? 0 : 1;
}
