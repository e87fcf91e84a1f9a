import type { ReactNode } from 'react';
import css from './Note.module.css';

type Props = {
  readonly tone?: 'quiet' | 'caution' | 'stop' | 'done';
  readonly children: ReactNode;
  /** Read out when it appears: at once for what stops, politely for what went well. */
  readonly speaks?: 'at once' | 'politely';
};

/** Words set apart from the sheet. Never a state by itself: its words say what it is. */
export function Note({ tone = 'quiet', speaks, children }: Props) {
  return (
    <div
      className={`${css['note']} ${tone === 'quiet' ? '' : css[tone]}`}
      role={speaks === undefined ? undefined : speaks === 'at once' ? 'alert' : 'status'}
    >
      {children}
    </div>
  );
}
