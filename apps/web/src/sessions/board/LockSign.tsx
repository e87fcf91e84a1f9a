import css from './Board.module.css';

/** A padlock beside the words that say what is locked. */
export const LockSign = () => (
  <svg className={css['lock']} viewBox="0 0 10 12" aria-hidden="true" focusable="false">
    <path d="M2.5 5V3.5a2.5 2.5 0 0 1 5 0V5" fill="none" stroke="currentColor" strokeWidth="1.4" />
    <rect x="1" y="5" width="8" height="6.5" rx="1" fill="currentColor" />
  </svg>
);
