import type { ButtonHTMLAttributes } from 'react';
import { type Size, type Tone, buttonLook } from './button-look.ts';

type Props = ButtonHTMLAttributes<HTMLButtonElement> & {
  readonly tone?: Tone;
  readonly size?: Size;
  /** On its way to the server: stays where it is, says so, and takes no second press. */
  readonly busy?: boolean;
  readonly busyWords?: string;
};

export function Button({
  tone,
  size,
  busy = false,
  busyWords = 'recording …',
  type = 'button',
  className = '',
  children,
  onClick,
  ...rest
}: Props) {
  return (
    <button
      {...rest}
      type={type}
      className={`${buttonLook(tone, size)} ${className}`}
      aria-disabled={busy || undefined}
      onClick={busy ? (event) => event.preventDefault() : onClick}
    >
      {busy ? busyWords : children}
    </button>
  );
}
