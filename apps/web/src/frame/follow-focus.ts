import { useRouter } from '@tanstack/react-router';
import { useEffect } from 'react';

/** On a new screen the keyboard starts at its top, not where the last screen left it. */
export function useFollowFocus(): void {
  const router = useRouter();
  useEffect(
    () =>
      router.subscribe('onResolved', ({ pathChanged, fromLocation }) => {
        if (pathChanged && fromLocation !== undefined)
          document.getElementById('content')?.focus({ preventScroll: true });
      }),
    [router],
  );
}
