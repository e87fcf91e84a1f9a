/**
 * The lists kept beside the notes are made by the rules of the product that wrote them. Under another product they are made
 * again before anyone reads them: whom the new rules would call must not be missing from the recall list.
 */
import type { Store } from '@twelvemonth/store';
import { codeFingerprint } from './code-fingerprint.ts';

const MADE_BY = 'lists-made-by';

export async function makeListsAgain(store: Store, say: (line: string) => void): Promise<void> {
  const print = codeFingerprint();
  if (store.readOnly !== undefined || (await store.setting(MADE_BY)) === print) return;
  if ((await store.tail()).commit > 0) {
    say(
      'The product has changed since these notes were last opened: their lists are made again. The notes stay as they are.',
    );
    let tenths = 0;
    await store.rebuild((done, of) => {
      const now = Math.floor((10 * done) / of);
      if (now > tenths) say(`  ${done} of ${of} ledgers`);
      tenths = now;
    });
  }
  await store.setSetting(MADE_BY, print);
}
