/** Notes opened by another version of the product: their lists are made again before anyone reads them, and only then. */
import { expect, test } from 'vitest';
import { codeFingerprint } from '../src/code-fingerprint.ts';
import { makeListsAgain } from '../src/lists-made-again.ts';
import { ownServer, setUp } from './support/own-server.ts';

test('lists made by another version are made again once, and the notes stay as they are', async () => {
  const server = await ownServer();
  await setUp(server);
  const { store } = server.atHand;
  const { commit } = await store.tail();
  await store.setSetting('lists-made-by', 'an older version');
  const said: string[] = [];
  await makeListsAgain(store, (line) => said.push(line));
  expect(said[0]).toMatch(/lists are made again. The notes stay as they are/);
  expect(await store.verify()).toMatchObject({ ok: true, commit });
  expect(await store.setting('lists-made-by')).toBe(codeFingerprint());
  await makeListsAgain(store, (line) => expect.unreachable(line));
  await server.close();
});
