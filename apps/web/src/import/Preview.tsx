import type { DryRunAnswer } from '@twelvemonth/exchange';
import { Why } from '../paper/Why.tsx';

/** A few rows as they would be written, in words. */
export function Preview({ preview }: { preview: DryRunAnswer['preview'] }) {
  if (preview.length === 0) return null;
  return (
    <section aria-labelledby="preview">
      <h2 id="preview">For example</h2>
      {preview.slice(0, 3).map((row) => (
        <PreviewRow key={row.row} row={row} />
      ))}
      {preview.length > 3 && (
        <Why about="as they would be written" word={`${preview.length - 3} more rows`}>
          {preview.slice(3).map((row) => (
            <PreviewRow key={row.row} row={row} />
          ))}
        </Why>
      )}
    </section>
  );
}

const PreviewRow = ({ row }: { row: DryRunAnswer['preview'][number] }) => (
  <div style={{ marginBlock: '0.5rem' }}>
    <strong>{row.who}</strong>{' '}
    <span className="quiet">
      row {row.row}, {row.isNew ? 'new' : 'known here'}
    </span>
    <ul>
      {row.lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  </div>
);
