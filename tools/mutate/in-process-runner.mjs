/**
 * A test runner for Stryker that keeps the tests of the clinical core loaded in one process and runs those that reach a mutant,
 * one after another, until one fails. They are pure functions without clock or disk, so the sources need not be loaded anew for
 * each mutant; those that do, because a table is read when its file is loaded, Stryker asks for in a fresh process.
 *
 * A value remembered under one mutant could make the next one look noticed. So a test that fails is run once more without any
 * mutant. If it fails then too, something was remembered about the records that the tests hold: the tests are loaded anew, and
 * the mutant is tried again on the new ones. If even these fail without it, the process ends, and Stryker asks again in a new one.
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
  #version = 0;

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
    if (isStatic) this.#activate(activeMutant.id, hitLimit);
    try {
      await this.#load();
    } catch (error) {
      if (isStatic) return { status: 'killed', killedBy: [], failureMessage: String(error), nrOfTests: 0 };
      throw error;
    }
    const { failed, failureMessage, run, turns } = await this.#tried(activeMutant.id, hitLimit, testFilter);
    if (turns > hitLimit) return { status: 'timeout', reason: 'ran round and round' };
    if (failed === undefined) return { status: 'survived', nrOfTests: run };
    const killed = { status: 'killed', killedBy: [failed.name], failureMessage, nrOfTests: run };
    if (isStatic || (await failureOf(failed)) === undefined) return killed;
    await this.#loadAnew();
    if ((await failureOf(this.#tests.get(failed.name))) !== undefined) process.exit(NOT_BELIEVED);
    const { failed: again } = await this.#tried(activeMutant.id, hitLimit, testFilter);
    await this.#loadAnew();
    return again === undefined ? { status: 'survived', nrOfTests: run } : { ...killed, killedBy: [again.name] };
  }

  async #tried(mutant, hitLimit, testFilter) {
    this.#activate(mutant, hitLimit);
    const tests = [...this.#tests.values()].filter(({ name }) => testFilter === undefined || testFilter.includes(name));
    const found = await firstFailure(tests);
    const turns = this.#space.hitCount;
    this.#activate(undefined, undefined);
    return { ...found, turns };
  }

  #activate(mutant, hitLimit) {
    this.#space.activeMutant = mutant;
    this.#space.hitLimit = hitLimit;
    this.#space.hitCount = hitLimit === undefined ? undefined : 0;
  }

  async #load() {
    if (this.#tests !== undefined) return;
    const redirected = {
      vitest: at('tools/mutate/vitest-in-process.mjs'),
      // By their names the packages would lead out of this copy, to sources in which nothing is changed.
      '@twelvemonth/clinical': at('packages/clinical/src/index.ts'),
    };
    registerHooks({
      resolve: (specifier, context, next) => {
        if (specifier === 'vitest/real') return next('vitest', context);
        const url = redirected[specifier];
        if (url !== undefined) return { url, shortCircuit: true };
        const found = next(specifier, context);
        const version = /[?]v=\d+$/.exec(context.parentURL ?? '')?.[0];
        return version !== undefined && found.url.includes('/packages/clinical/test/')
          ? { ...found, url: `${found.url}${version}` }
          : found;
      },
    });
    await import(redirected['@twelvemonth/clinical']);
    const reached = structuredClone(this.#space.mutantCoverage?.static);
    await this.#loadAnew();
    // What a group of tests prepares is prepared again for each test: only what the sources themselves reach counts as read once.
    if (reached !== undefined) this.#space.mutantCoverage.static = reached;
  }

  /** The test files, each under a new name, so that every record they hold is a new one. */
  async #loadAnew() {
    const { written } = await import(at('tools/mutate/vitest-in-process.mjs'));
    this.#version += 1;
    this.#tests = new Map();
    for (const pattern of process.env['MUTATE_TESTS'].split(' ')) {
      const files = await Array.fromAsync(glob(`packages/clinical/test/${pattern}`));
      for (const file of files.toSorted()) {
        written.length = 0;
        await import(`${at(file)}?v=${this.#version}`);
        for (const { name, body } of written) {
          const full = `${file}: ${name}`;
          if (this.#tests.has(full)) throw new Error(`two tests of one name: ${full}`);
          this.#tests.set(full, { name: full, body });
        }
      }
    }
  }
}

const at = (path) => pathToFileURL(join(process.cwd(), path)).href;

async function firstFailure(tests) {
  let run = 0;
  for (const test of tests) {
    run += 1;
    const failureMessage = await failureOf(test);
    if (failureMessage !== undefined) return { failed: test, failureMessage, run };
  }
  return { failed: undefined, failureMessage: undefined, run };
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
