import type { ReadingPartView } from '@twelvemonth/exchange';
import { Why } from '../paper/Why.tsx';
import css from './Reading.module.css';

type Line = ReadingPartView['lines'][number];

/** Body, kidneys and bone at a glance; each sum with its numbers and its source one tap away. Nothing here passes or stops anyone. */
export function Reading({ parts }: { parts: readonly ReadingPartView[] }) {
  return (
    <section aria-labelledby="reading">
      <h2 id="reading">Body, kidneys and bone</h2>
      <p className="quiet small">Read off and worked out from the notes as of today. What decides stands above.</p>
      <div className={css['parts']}>
        {parts.map((part) => (
          <Part key={part.title} part={part} />
        ))}
      </div>
    </section>
  );
}

function Part({ part: { title, lines, cautions } }: { part: ReadingPartView }) {
  const sourced = lines.filter(({ source }) => source !== undefined);
  return (
    <div className={css['part']}>
      <h3>{title}</h3>
      <dl>
        {lines.map((line) => (
          <div key={line.what}>
            <dt>{line.what}</dt>
            <dd>
              <strong>{line.is}</strong>
              {line.put === undefined || title === 'Bone' ? <span className={css['of']}> {line.of}</span> : null}
            </dd>
          </div>
        ))}
      </dl>
      {cautions.map((caution) => (
        <p key={caution} className="small">
          {caution}
        </p>
      ))}
      {sourced.length > 0 && (
        <Why about={title} word="sums and sources">
          <ul className={css['sums']}>
            {sourced.map((line) => (
              <Sum key={line.what} line={line} />
            ))}
          </ul>
        </Why>
      )}
    </div>
  );
}

function Sum({ line: { what, is, of, put, source, entries } }: { line: Line }) {
  return (
    <li>
      {what}: {put === undefined ? '' : `${put} = `}
      <strong>{is}</strong>
      <div className="quiet small">
        {of}.{' '}
        {entries.map((entry, index) => (
          <a key={entry} href={`#entry-${entry}`} className="screenOnly">
            {entries.length === 1 ? 'entry' : `entry ${index + 1}`}
            <span className="unseen">: {what}</span>{' '}
          </a>
        ))}
      </div>
      <div className="quiet small">{source}</div>
    </li>
  );
}
