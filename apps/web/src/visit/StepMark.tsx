import type { VisitStep } from '@twelvemonth/exchange';

const shapes = {
  done: (
    <>
      <rect x="1" y="1" width="14" height="14" rx="2" fill="#525b55" />
      <path d="m4.2 8.3 2.6 2.6 5-5.6" fill="none" stroke="#fff" strokeWidth="2" />
    </>
  ),
  running: (
    <>
      <circle cx="8" cy="8" r="6.6" fill="#fff" stroke="#1f6247" strokeWidth="2" />
      <circle cx="8" cy="8" r="3" fill="#1f6247" />
    </>
  ),
  waiting: (
    <>
      <circle cx="8" cy="8" r="6.6" fill="#fff" stroke="#7a5a00" strokeWidth="2" />
      <path d="M8 1.4a6.6 6.6 0 0 0 0 13.2z" fill="#7a5a00" />
    </>
  ),
  'to come': <circle cx="8" cy="8" r="6.6" fill="none" stroke="#8a8573" strokeWidth="1.6" />,
} as const satisfies Record<VisitStep['state'], unknown>;

/** Ticked square, disc in a ring, half disc, empty ring: done, running, waiting, to come. The word is in the list too. */
export const StepMark = ({ state }: { state: VisitStep['state'] }) => (
  <svg viewBox="0 0 16 16" width="18" height="18" aria-hidden="true" focusable="false">
    {shapes[state]}
  </svg>
);
