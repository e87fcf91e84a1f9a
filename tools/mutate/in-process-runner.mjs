/**
 * A test runner for Stryker that keeps the tests of the clinical core loaded in one process and runs those that reach a mutant,
 * one after another, until one fails. They are pure functions without clock or disk, so nothing has to be loaded anew for each
 * mutant; what is, a table read when its file is loaded, Stryker asks for in a fresh process.
 *
 * A value remembered under one mutant could make the next one look noticed. So a test that fails is run once more without any
 * mutant: if it fails then too, this process is no longer to be believed; it ends, and Stryker asks again in a new one.
 */
import { glob } from 'node:fs/promises';
import { registerHooks } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

/** Stryker's words for what a run came to. */
const PASSED = 0;
const FAILED = 1;
const NOT_BELIEVED = 3;

class InProcessRunner {
  /** Where the changed sources look up which change is on, and count what they reach. */
  #space = (globalThis['__stryker__'] ??= {});
  #tests;

  capabilities() {
    return { reloadEnvironment: false };
  }

  async dryRun() {
    await this.#load();
    const tests = [];
    for (const test of this.#tests.values()) {
      this.#space.currentTestId = test.name;
      const began = performance.now();
      const failureMessage = await failureOf(test);
      this.#space.currentTestId = undefined;
      const common = { id: test.name, name: test.name, timeSpentMs: performance.now() - began };
      tests.push(
        failureMessage === undefined ? { ...common, status: PASSED } : { ...common, status: FAILED, failureMessage },
      );
    }
    return { status: 'complete', tests, mutantCoverage: this.#space.mutantCoverage };
  }

  async mutantRun({ activeMutant, testFilter, hitLimit, mutantActivation }) {
    const isStatic = mutantActivation === 'static';
    if (!isStatic) await this.#load();
    this.#space.activeMutant = activeMutant.id;
    this.#space.hitLimit = hitLimit;
    this.#space.hitCount = hitLimit === undefined ? undefined : 0;
    if (isStatic) {
      try {
        await this.#load();
      } catch (error) {
        return { status: 'killed', killedBy: [], failureMessage: String(error), nrOfTests: 0 };
      }
    }
    const chosen =
      testFilter === undefined ? [...this.#tests.values()] : testFilter.flatMap((id) => this.#tests.get(id) ?? []);
    let run = 0;
    for (const test of chosen) {
      run += 1;
      const failureMessage = await failureOf(test);
      if (this.#space.hitCount > hitLimit) return { status: 'timeout', reason: 'ran round and round' };
      if (failureMessage === undefined) continue;
      this.#space.activeMutant = undefined;
      if (!isStatic && (await failureOf(test)) !== undefined) process.exit(NOT_BELIEVED);
      return { status: 'killed', killedBy: [test.name], failureMessage, nrOfTests: run };
    }
    this.#space.activeMutant = undefined;
    return { status: 'survived', nrOfTests: run };
  }

  async #load() {
    if (this.#tests !== undefined) return;
    const root = process.cwd();
    const at = (path) => pathToFileURL(join(root, path)).href;
    const redirected = {
      vitest: at('tools/mutate/vitest-in-process.mjs'),
      // By their names the packages would lead out of this copy, to sources in which nothing is changed.
      '@twelvemonth/clinical': at('packages/clinical/src/index.ts'),
    };
    registerHooks({
      resolve: (specifier, context, next) => {
        if (specifier === 'vitest/real') return next('vitest', context);
        const url = redirected[specifier];
        return url === undefined ? next(specifier, context) : { url, shortCircuit: true };
      },
    });
    const { written } = await import(redirected.vitest);
    this.#tests = new Map();
    for (const pattern of process.env['MUTATE_TESTS'].split(' ')) {
      const files = await Array.fromAsync(glob(`packages/clinical/test/${pattern}`, { cwd: root }));
      for (const file of files.toSorted()) {
        const before = written.length;
        await import(at(file));
        for (const test of written.slice(before)) {
          const name = `${file}: ${test.name}`;
          if (this.#tests.has(name)) throw new Error(`two tests of one name: ${name}`);
          this.#tests.set(name, { name, body: test.body });
        }
      }
    }
  }
}

async function failureOf({ body }) {
  try {
    await body();
    return undefined;
  } catch (error) {
    return error instanceof Error ? error.message.slice(0, 500) : String(error);
  }
}

export const strykerPlugins = [{ kind: 'TestRunner', name: 'in-process', injectableClass: InProcessRunner }];
