import { Link } from '@tanstack/react-router';
import type { PersonView } from '@twelvemonth/exchange';
import { useEffect, useMemo, useState } from 'react';
import { Button } from '../paper/Button.tsx';
import { usePrinting } from '../paper/use-printing.ts';
import { addressOf } from '../server/paths.ts';
import css from './Person.module.css';
import { EntryRow } from './EntryRow.tsx';

const firstShown = 25;

/** Everything written in this person's notes, newest first. Nothing is rubbed out: what was corrected or withdrawn says so. */
export function Entries({ data }: { data: PersonView }) {
  const [kind, setKind] = useState('');
  const [whole, setWhole] = useState(false);
  const [target, setTarget] = useState('');
  const printing = usePrinting();
  const labels = useMemo(
    () =>
      [...new Map(data.entries.map((entry) => [entry.kind, entry.label]))].toSorted((a, b) => a[1].localeCompare(b[1])),
    [data],
  );
  const rows = useMemo(
    () =>
      data.entries
        .toSorted((a, b) => (a.on === b.on ? b.seq - a.seq : a.on < b.on ? 1 : -1))
        .filter((entry) => kind === '' || entry.kind === kind),
    [data, kind],
  );
  useEffect(() => {
    const look = (): void => {
      const { hash } = window.location;
      if (!hash.startsWith('#entry-')) return;
      setWhole(true);
      setKind('');
      setTarget(hash.slice('#entry-'.length));
      requestAnimationFrame(() => document.getElementById(hash.slice(1))?.scrollIntoView({ block: 'center' }));
    };
    look();
    window.addEventListener('hashchange', look);
    return () => window.removeEventListener('hashchange', look);
  }, []);
  const shown = whole || printing ? rows : rows.slice(0, firstShown);
  return (
    <section aria-labelledby="notes">
      <h2 id="notes">Notes</h2>
      <label className="screenOnly">
        Show:{' '}
        <select value={kind} onChange={(event) => setKind(event.target.value)}>
          <option value="">everything ({data.entries.length})</option>
          {labels.map(([value, label]) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </select>
      </label>{' '}
      <a
        className="screenOnly finger"
        href={addressOf('notes', { patient: data.patient })}
        target="_blank"
        rel="noreferrer"
      >
        all of it as one document
      </a>{' '}
      <Link className="screenOnly finger" to="/people/$patient/compare" params={{ patient: data.patient }}>
        entered twice?
      </Link>
      <table className={`stacks ${css['entries']}`}>
        <thead>
          <tr>
            <th scope="col">when it was true</th>
            <th scope="col">entry</th>
            <th scope="col">who wrote it, when</th>
            <th scope="col">
              <span className="unseen">acts</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {shown.map((entry) => (
            <EntryRow key={entry.id} entry={entry} person={data} shown={entry.id === target} />
          ))}
        </tbody>
      </table>
      {shown.length < rows.length && (
        <p style={{ marginTop: '0.8rem' }}>
          <Button size="slim" onClick={() => setWhole(true)}>
            Show all {rows.length}
          </Button>
        </p>
      )}
    </section>
  );
}
