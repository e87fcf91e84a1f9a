import { useLocation } from '@tanstack/react-router';

/**
 * The card hangs on the hash of any address: the screen under it keeps its own address and stays as it was, half-filled forms
 * and a running countdown included, and going back closes the card.
 */
export const cardHash = 'anaphylaxis';

export const useCardOpen = (): boolean => useLocation({ select: ({ hash }) => hash === cardHash });
