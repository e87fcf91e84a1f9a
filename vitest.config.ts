import { readdirSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// Workspace packages by path, so that a copied tree tests its own copy and not the original behind node_modules' links.
const alias = readdirSync(new URL('./packages', import.meta.url)).map((name) => ({
  find: new RegExp(`^@twelvemonth/${name}$`),
  replacement: fileURLToPath(new URL(`./packages/${name}/src/index.ts`, import.meta.url)),
}));

/** Long files: shared out one by one, so that no worker is left with all of them. */
const long = ['packages/clinical/test/agreement/*.test.ts', 'packages/store/test/*.test.ts'];

export default defineConfig({
  resolve: { alias },
  test: {
    coverage: {
      provider: 'v8',
      include: ['packages/*/src/**', 'apps/{server,cli}/src/**'],
      reporter: ['text-summary', 'json-summary'],
    },
    // Programs that tests start are compiled once, not at each start: a start of the server costs half.
    env: { NODE_COMPILE_CACHE: fileURLToPath(new URL('./node_modules/.cache/compiled', import.meta.url)) },
    // By default one core is left to whoever watches; here all of them work.
    maxWorkers: '100%',
    // Only against a test that hangs: on the smallest machine we promise property tests and a real PostgreSQL share two cores.
    testTimeout: 240_000,
    hookTimeout: 240_000,
    projects: [
      // Files share the modules they read: nothing in them keeps state between tests, and reading them anew costs each a second.
      {
        extends: true,
        test: { name: 'domain', include: ['packages/*/test/**/*.test.ts'], exclude: long, isolate: false },
      },
      { extends: true, test: { name: 'apps', include: ['apps/*/test/**/*.test.ts'], isolate: false } },
      { extends: true, test: { name: 'long', include: long } },
      { extends: true, test: { name: 'tidy', include: ['tools/test/**/*.test.ts'], isolate: false } },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          testTimeout: 240_000,
          hookTimeout: 240_000,
          isolate: false,
          // One more than there are cores: a browser test waits for its pages half of the time.
          maxWorkers: availableParallelism() + 1,
          sequence: { groupOrder: 1 },
          // What a screen shows after a press is waited for, never looked at once: on a loaded machine it comes later.
          expect: { poll: { timeout: 30_000, interval: 20 } },
        },
      },
    ],
  },
});
