import type { Drawing } from '@twelvemonth/charts';
import { useLayoutEffect, useRef, useState } from 'react';
import { Why } from '../paper/Why.tsx';
import css from './Picture.module.css';
import { TableOf } from './TableOf.tsx';

/** Drawn no narrower than the smallest screen leaves room for, and no wider than gains anything. */
const narrowest = 240;
const widest = 1120;

/** A picture, drawn as wide as its place, with its sentence for those who cannot see it and its table for who wants the dates. */
export function Picture({ draw }: { draw: (width: number) => Drawing }) {
  const place = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(widest);
  useLayoutEffect(() => {
    const element = place.current;
    if (element === null) return;
    const watch = new ResizeObserver(([entry]) => {
      if (entry !== undefined && entry.contentRect.width > 0)
        setWidth(Math.max(narrowest, Math.min(widest, Math.floor(entry.contentRect.width))));
    });
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  const drawing = draw(width);
  return (
    <figure className={css['figure']}>
      {/* The drawing is our own text: no part of it comes from outside unescaped. */}
      <div ref={place} className={css['svg']} dangerouslySetInnerHTML={{ __html: drawing.svg }} />
      <figcaption>
        <p className="unseen">{drawing.sentence}</p>
        <Why about={drawing.table.caption} word="as a table">
          <TableOf table={drawing.table} />
        </Why>
      </figcaption>
    </figure>
  );
}
