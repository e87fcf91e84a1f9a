import { useEffect } from 'react';

/** How long after signing in, so that the first screen is not held up. */
const afterMilliseconds = 3000;
/** A file is fetched when nothing else is to be done, or after so long all the same. */
const idleWithinMilliseconds = 2000;

const idle = (): Promise<void> =>
  new Promise((resolve) => {
    // Not every browser says when it is idle.
    if (typeof requestIdleCallback === 'function')
      requestIdleCallback(() => resolve(), { timeout: idleWithinMilliseconds });
    else setTimeout(resolve, idleWithinMilliseconds);
  });

/** Into the browser's cache, and nothing more. */
const fetchFile = async (file: string): Promise<ArrayBuffer> => (await fetch(file, { priority: 'low' })).arrayBuffer();

async function fetchAll(isWanted: () => boolean): Promise<void> {
  // The service worker has kept them all before it came to control the page.
  if (!isWanted() || navigator.serviceWorker?.controller) return;
  const files = (await (await fetch('/screen-files.json', { priority: 'low' })).json()) as readonly string[];
  for (const file of files) {
    await idle();
    if (!isWanted()) return;
    await fetchFile(file);
  }
}

/**
 * Fetches the files of the other screens, so that they open when the network is gone. Only fetched: a screen is run when it is
 * opened. Run beforehand, one of them held a slow tablet up for a third of a second, in the middle of somebody's step.
 */
export function useFetchScreens(signedIn: boolean): void {
  useEffect(() => {
    if (!signedIn || !import.meta.env.PROD) return;
    let ended = false;
    const timer = setTimeout(
      // What cannot be fetched now is fetched when it is opened; the banner tells that the server is away.
      () => void fetchAll(() => !ended).catch(() => undefined),
      afterMilliseconds,
    );
    return () => {
      ended = true;
      clearTimeout(timer);
    };
  }, [signedIn]);
}
