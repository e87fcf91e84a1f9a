import { Link, useLocation } from '@tanstack/react-router';
import { useEffect, useRef, useState, useSyncExternalStore } from 'react';
import { Button } from '../paper/Button.tsx';
import css from './Frame.module.css';

export type Place = {
  readonly to:
    | '/'
    | '/people'
    | '/sessions'
    | '/recall'
    | '/aftercare'
    | '/letters'
    | '/import'
    | '/pharmacy'
    | '/stock'
    | '/protocol'
    | '/settings';
  readonly says: string;
  /** How much waits there. */
  readonly count: number | undefined;
};

/** How many stand in one line where the way about lies along the top: measured with the longest words and two digits each. */
const inOneLine = [
  { query: '(min-width: 901px)', places: Number.POSITIVE_INFINITY },
  { query: '(min-width: 700px)', places: 6 },
  { query: '(min-width: 520px)', places: 4 },
  { query: '(min-width: 0px)', places: 2 },
] as const;
const media = inOneLine.map(({ query, places }) => ({ list: window.matchMedia(query), places }));
const watch = (watcher: () => void): (() => void) => {
  for (const { list } of media) list.addEventListener('change', watcher);
  return () => {
    for (const { list } of media) list.removeEventListener('change', watcher);
  };
};
const fitting = (): number => media.find(({ list }) => list.matches)?.places ?? Number.POSITIVE_INFINITY;

/** The way about: the day's work first. What does not fit into the line is behind one press, and says how much waits there. */
export function Places({ places }: { places: readonly Place[] }) {
  const fit = useSyncExternalStore(watch, fitting);
  const all = places.length <= fit + 1;
  const rest = all ? [] : places.slice(fit);
  return (
    <nav className={css['nav']} aria-label="Screens">
      <ul>
        {(all ? places : places.slice(0, fit)).map((place) => (
          <ToPlace key={place.to} place={place} />
        ))}
        {rest.length > 0 && (
          <li className={css['more']}>
            <More places={rest} />
          </li>
        )}
      </ul>
    </nav>
  );
}

function ToPlace({ place: { to, says, count } }: { place: Place }) {
  return (
    <li>
      <Link to={to} activeOptions={{ exact: to === '/' }}>
        {says}
        {count !== undefined && count > 0 && <span className={css['count']}>{count}</span>}
      </Link>
    </li>
  );
}

/** Closed by Escape, by a press beside it and by going somewhere. Where one is now stands on the button. */
function More({ places }: { places: readonly Place[] }) {
  const [open, setOpen] = useState(false);
  const path = useLocation({ select: ({ pathname }) => pathname });
  const [openedAt, setOpenedAt] = useState(path);
  if (openedAt !== path) {
    setOpenedAt(path);
    setOpen(false);
  }
  const whole = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!open) return;
    const beside = (event: Event): void => {
      if (event.target instanceof Node && whole.current?.contains(event.target) !== true) setOpen(false);
    };
    const escape = (event: KeyboardEvent): void => {
      if (event.key !== 'Escape') return;
      setOpen(false);
      whole.current?.querySelector('button')?.focus();
    };
    document.addEventListener('pointerdown', beside);
    document.addEventListener('focusin', beside);
    document.addEventListener('keydown', escape);
    return () => {
      document.removeEventListener('pointerdown', beside);
      document.removeEventListener('focusin', beside);
      document.removeEventListener('keydown', escape);
    };
  }, [open]);
  const here = places.find(({ to }) => path === to || path.startsWith(`${to}/`));
  const waits = places.reduce((sum, { count = 0 }) => sum + count, 0);
  return (
    <div ref={whole}>
      <Button tone="plain" aria-expanded={open} aria-controls="more-places" onClick={() => setOpen(!open)}>
        {here === undefined ? 'More' : `More: ${here.says}`}
        {waits > 0 && <span className={css['count']}>{waits}</span>}
        <span aria-hidden="true">{open ? '▴' : '▾'}</span>
      </Button>
      <ul id="more-places" hidden={!open}>
        {places.map((place) => (
          <ToPlace key={place.to} place={place} />
        ))}
      </ul>
    </div>
  );
}
