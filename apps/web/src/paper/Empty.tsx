import type { ReactNode } from 'react';
import { Note } from './Note.tsx';

/** Nothing here, and what the first step would be. */
export function Empty({ says, children }: { says: string; children?: ReactNode }) {
  return (
    <Note>
      <p>
        <strong>{says}</strong>
      </p>
      {children}
    </Note>
  );
}
