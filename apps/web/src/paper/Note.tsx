import type { ReactNode } from 'react';
import css from './Note.module.css';

type Props = {
  readonly tone?: 'quiet' | 'caution' | 'stop' | 'done';
  readonly children: ReactNode;
  /** Read out when it appears: "alert" for what stops, "status" for what went well. */
  readonly role?: 'alert' | 'status' | 'note';
};

/** Words set apart from the sheet. Never a state by itself: its words say what it is. */
export function Note({ tone = 'quiet', role, children }: Props) {
  return (
    <div className={`${css['note']} ${tone === 'quiet' ? '' : css[tone]}`} role={role}>
      {children}
    </div>
  );
}
