import { visitColumns, visitStripWidth } from '@twelvemonth/charts';
import css from './Today.module.css';

const gap = 4;

/** The names over the columns of the visit strips, drawn on the same ruler. */
export function VisitColumns() {
  const starts = visitColumns.map((_, index) =>
    visitColumns.slice(0, index).reduce((sum, column) => sum + column.width + gap, 0),
  );
  return (
    <div className={css['visit']} style={{ border: 0, padding: 0 }} aria-hidden="true">
      <span />
      <span />
      <div className={css['strip']}>
        <svg
          viewBox={`0 0 ${visitStripWidth} 18`}
          width={visitStripWidth}
          height={18}
          fontSize={13}
          fill="#525b55"
          style={{ display: 'block' }}
        >
          {visitColumns.map((column, index) => (
            <text key={column.step} x={starts[index]} y={13}>
              {column.short}
            </text>
          ))}
        </svg>
      </div>
    </div>
  );
}
