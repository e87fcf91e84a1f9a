import { useState } from 'react';

/** Which lines of a list are ticked. */
export type Ticks<Key> = {
  readonly has: (key: Key) => boolean;
  readonly turn: (key: Key) => void;
  /** These and no others. */
  readonly exactly: (keys: readonly Key[]) => void;
};

export function useTicks<Key>(): Ticks<Key> {
  const [ticked, setTicked] = useState<ReadonlySet<Key>>(new Set());
  return {
    has: (key) => ticked.has(key),
    turn: (key) => {
      const next = new Set(ticked);
      if (!next.delete(key)) next.add(key);
      setTicked(next);
    },
    exactly: (keys) => setTicked(new Set(keys)),
  };
}
