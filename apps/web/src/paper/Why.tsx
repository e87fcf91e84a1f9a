import type { ReactNode } from 'react';
import css from './Why.module.css';

/** The reasons, one tap away. `about` tells a screen reader which "why?" this is. */
export function Why({
  about,
  word = 'why?',
  children,
  open = false,
}: {
  about: string;
  word?: string;
  children: ReactNode;
  open?: boolean;
}) {
  return (
    <details className={css['why']} open={open}>
      <summary>
        {word}
        <span className="unseen"> {about}</span>
      </summary>
      <div className={css['inside']}>{children}</div>
    </details>
  );
}
