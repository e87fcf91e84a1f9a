/** One store, open and empty, for one test; everything is closed afterwards, whatever happened. */
import type { Store } from '../../src/index.ts';
import type { Bench, Laboratory } from '../support/laboratories.ts';

export type Tools = {
  readonly store: Store;
  /** Another server over the same tables, where the database allows one. */
  readonly second: Store | undefined;
  readonly bench: Bench;
};
export type OnBench = (run: (tools: Tools) => Promise<void>) => () => Promise<void>;

export const onBenchOf =
  (laboratory: Laboratory): OnBench =>
  (run) =>
  async () => {
    const bench = await laboratory.newBench();
    const store = await bench.open();
    const second = laboratory.kind === 'postgresql' ? await bench.open() : undefined;
    try {
      // A test that opens its own store on SQLite closes this one first; closing twice does nothing.
      await run({
        store,
        second,
        bench: {
          ...bench,
          open: (projection) =>
            laboratory.kind === 'sqlite' ? store.close().then(() => bench.open(projection)) : bench.open(projection),
        },
      });
    } finally {
      await second?.close();
      await store.close();
      await bench.clear();
    }
  };
