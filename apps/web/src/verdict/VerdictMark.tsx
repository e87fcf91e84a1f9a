import type { Verdict } from '@twelvemonth/clinical';
import css from './Verdict.module.css';

const shapes = {
  ready: <circle cx="8" cy="8" r="7" fill="currentColor" />,
  'not ready': (
    <>
      <rect x="1" y="1" width="14" height="14" fill="currentColor" />
      <path d="M4 8h8" stroke="#fff" strokeWidth="2.5" />
    </>
  ),
  'cannot say': <path d="M8 1.6 14.4 8 8 14.4 1.6 8z" fill="none" stroke="currentColor" strokeWidth="2" />,
  'does not apply': <path d="M2 8h12" stroke="currentColor" strokeWidth="2.2" />,
} as const satisfies Record<Verdict, unknown>;

/** Filled disc, square with a bar, hollow diamond, dash. The word beside it says the same, so it is hidden from readers. */
export function VerdictMark({ is }: { is: Verdict }) {
  return (
    <svg className={css['mark']} viewBox="0 0 16 16" aria-hidden="true" focusable="false">
      {shapes[is]}
    </svg>
  );
}
