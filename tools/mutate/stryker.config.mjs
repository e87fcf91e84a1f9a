/**
 * Mutation testing of what decides, run part by part from run.mjs: each operator, limit and condition of the sources is changed
 * in turn; a change that no test notices is a hole in the tests. Results: docs/safety/mutation.md.
 */
export default {
  testRunner: 'in-process',
  plugins: ['./tools/mutate/in-process-runner.mjs'],
  mutate: (process.env['MUTATE'] ?? '').split(',').map((name) => `packages/clinical/src/${name}`),
  // Sentences are compared where they are read; emptying each of them here would only count words.
  mutator: { excludedMutations: ['StringLiteral'] },
  // What is read once when a file is loaded can only be tried in a process of its own: MUTATE_STATIC=yes takes hours.
  ignoreStatic: process.env['MUTATE_STATIC'] === undefined,
  coverageAnalysis: 'perTest',
  concurrency: 1,
  // A busy machine must not count as a test that noticed.
  timeoutMS: 120_000,
  // Its rewriting of tsconfig.json needs a compiler interface that TypeScript 7 no longer has.
  tsconfigFile: 'none.json',
  ignorePatterns: ['/apps', '/docs', '/bench', '/tests', '/packages/*', '!/packages/clinical', '/reports'],
  tempDirName: 'reports/mutation-sandbox',
  reporters: ['clear-text', 'json', 'progress-append-only'],
  clearTextReporter: { allowColor: false, logTests: false, reportTests: false },
  jsonReporter: { fileName: process.env['MUTATE_REPORT'] ?? 'reports/mutation.json' },
  allowConsoleColors: false,
};
