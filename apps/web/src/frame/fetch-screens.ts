import { useRouter } from '@tanstack/react-router';
import { useEffect } from 'react';

/** How long after signing in, so that the first screen is not held up. */
const afterMilliseconds = 3000;
/** A screen is fetched when nothing else is to be done, or after so long all the same. */
const idleWithinMilliseconds = 200;

const idle = (): Promise<void> =>
  new Promise((resolve) => {
    // Not every browser says when it is idle.
    if (typeof requestIdleCallback === 'function')
      requestIdleCallback(() => resolve(), { timeout: idleWithinMilliseconds });
    else setTimeout(resolve, idleWithinMilliseconds);
  });

/**
 * Fetches the other screens while nothing else is asked for, so that they open when the network is gone. One after the other:
 * all at once they held a slow tablet up for a quarter of a second.
 */
export function useFetchScreens(signedIn: boolean): void {
  const router = useRouter();
  useEffect(() => {
    if (!signedIn) return;
    let ended = false;
    const fetchAll = async (): Promise<void> => {
      for (const { options } of Object.values(router.routesById)) {
        const component: unknown = options.component;
        if (typeof component !== 'function' || !('preload' in component) || typeof component.preload !== 'function')
          continue;
        await idle();
        if (ended) return;
        // A screen that cannot be fetched now is fetched when it is opened; the banner tells that the server is away.
        await Promise.resolve(component.preload()).catch(() => undefined);
      }
    };
    const timer = setTimeout(() => void fetchAll(), afterMilliseconds);
    return () => {
      ended = true;
      clearTimeout(timer);
    };
  }, [router, signedIn]);
}
