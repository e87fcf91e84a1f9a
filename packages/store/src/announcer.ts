/** Tells whoever listens in this process about a commit. One listener's failure is reported and holds up nobody else. */
import type { CommitNotice } from './contract.ts';

export function announcer() {
  const listeners = new Set<(notice: CommitNotice) => void>();
  return {
    listen: (listener: (notice: CommitNotice) => void) => {
      listeners.add(listener);
      return (): void => void listeners.delete(listener);
    },
    tell: (notice: CommitNotice): void => {
      for (const listener of listeners) {
        try {
          listener(notice);
        } catch (cause) {
          process.emitWarning(cause instanceof Error ? cause : String(cause));
        }
      }
    },
  };
}
