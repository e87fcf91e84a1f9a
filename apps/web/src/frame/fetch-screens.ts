import { useRouter } from '@tanstack/react-router';
import { useEffect } from 'react';

/** How long after signing in, so that the first screen is not held up. */
const afterMilliseconds = 3000;

/** Fetches the other screens while nothing else is asked for, so that they open when the network is gone. */
export function useFetchScreens(signedIn: boolean): void {
  const router = useRouter();
  useEffect(() => {
    if (!signedIn) return;
    const timer = setTimeout(() => {
      for (const { options } of Object.values(router.routesById)) {
        const component: unknown = options.component;
        if (typeof component !== 'function' || !('preload' in component) || typeof component.preload !== 'function')
          continue;
        // A screen that cannot be fetched now is fetched when it is opened; the banner tells that the server is away.
        void Promise.resolve(component.preload()).catch(() => undefined);
      }
    }, afterMilliseconds);
    return () => clearTimeout(timer);
  }, [router, signedIn]);
}
