import { useLocation } from '@tanstack/react-router';

/**
 * A call hangs on the hash of any address: the screen under it keeps its address and what was typed there, and going back
 * leads to it. What was typed of the call is kept too, until it is written down.
 */
export const callHash = 'call';

export const useCallOpen = (): boolean => useLocation({ select: ({ hash }) => hash === callHash });
