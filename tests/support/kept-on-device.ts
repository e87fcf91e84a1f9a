/** What a browser keeps of the day for the time without a network. */
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** Names of everything this device keeps. */
export const namesKept = async (where: Page): Promise<string[]> =>
  where.evaluate(async () => {
    const settled = async <Value>(request: IDBRequest<Value>): Promise<Value> =>
      new Promise((resolve) => {
        request.addEventListener('success', () => resolve(request.result));
      });
    if ((await indexedDB.databases()).length === 0) return [];
    const database = await settled(indexedDB.open('twelvemonth'));
    const places = [...database.objectStoreNames];
    const names = await Promise.all(
      places.map(async (place) => settled(database.transaction(place).objectStore(place).getAllKeys())),
    );
    database.close();
    return places.flatMap((place, index) => (names[index] ?? []).map((name) => `${place}: ${JSON.stringify(name)}`));
  });

/** Waits until the visits of so many people are kept on the device. */
export const keptOn = async (where: Page, visits: number): Promise<void> =>
  expect.poll(async () => (await namesKept(where)).filter((name) => name.endsWith('/visit"'))).toHaveLength(visits);
