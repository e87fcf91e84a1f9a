import type { Drawing } from '@twelvemonth/charts';
import { Why } from '../paper/Why.tsx';
import css from './Picture.module.css';
import { TableOf } from './TableOf.tsx';

/** A picture with its sentence for those who cannot see it and its table for those who want the dates. */
export function Picture({ drawing, sentenceShown = false }: { drawing: Drawing; sentenceShown?: boolean }) {
  return (
    <figure className={css['figure']}>
      {/* The drawing is our own text: no part of it comes from outside unescaped. */}
      <div className={css['svg']} dangerouslySetInnerHTML={{ __html: drawing.svg }} />
      <figcaption>
        <p className={sentenceShown ? 'quiet small' : 'unseen'}>{drawing.sentence}</p>
        <Why about={drawing.table.caption} word="as a table">
          <TableOf table={drawing.table} />
        </Why>
      </figcaption>
    </figure>
  );
}
