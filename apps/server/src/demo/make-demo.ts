/** Writes the demo into an empty store, while another thread tells it. Answers with the clock of its last act. */
import { on } from 'node:events';
import { Worker } from 'node:worker_threads';
import type { ClockReading } from '@twelvemonth/clinical';
import type { Store } from '@twelvemonth/store';
import { CannotStart } from '../service-folder.ts';
import type { DecidedAct, DemoToTell, Told } from './tell-demo.ts';

type Watching = { readonly say: (line: string) => void; readonly isStopping: () => boolean };

export async function makeDemo(
  store: Store,
  demo: DemoToTell,
  { say, isStopping }: Watching,
): Promise<ClockReading | undefined> {
  const teller = new Worker(new URL('./tell-demo.ts', import.meta.url), { workerData: demo });
  let acts = 0;
  let year = 0;
  try {
    for await (const [told] of on(teller, 'message') as AsyncIterable<[Told]>) {
      if (isStopping()) throw new CannotStart('stopped while the demo was being made; the next start makes it.');
      if ('finished' in told) {
        say(`  ${acts} acts written`);
        return told.clock;
      }
      await Promise.all(told.acts.map(async (act) => written(store, act)));
      acts += told.acts.length;
      if (told.year !== year) say(`  the year ${(year = told.year)} ...`);
    }
    throw new Error('the demo was not told to its end');
  } finally {
    await teller.terminate();
  }
}

async function written(store: Store, { id, content, by, at, subjects, drafts }: DecidedAct): Promise<void> {
  const outcome = await store.act({ id, content, by, at, subjects, decide: () => ({ drafts }) });
  if (outcome.outcome !== 'recorded') throw new Error(`the demo's act ${id} was not recorded: ${outcome.outcome}`);
}
