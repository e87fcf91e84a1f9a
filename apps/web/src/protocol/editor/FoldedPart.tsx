import { type ReactNode, createContext, use } from 'react';
import { FieldTroubles } from '../../fields/field-trouble.ts';
import { dotted } from '../../words/texts.ts';
import css from './Editor.module.css';
import { type Part, type Tally, isAbout } from './parts.ts';

export type Folding = {
  readonly tallies: ReadonlyMap<Part, Tally>;
  readonly open: ReadonlySet<Part>;
  readonly fold: (part: Part, open: boolean) => void;
};
export const FoldingOf = createContext<Folding>({ tallies: new Map(), open: new Set(), fold: () => undefined });

const anchorOf = ({ title }: Part): string => `part-${title.toLowerCase().replaceAll(' ', '-')}`;

/** "13 numbers · 2 changed", and what still has to be done in it. */
function TallyOf({ part }: { part: Part }) {
  const tally = use(FoldingOf).tallies.get(part);
  if (tally === undefined) return null;
  const todo = dotted(
    tally.undecided > 0 && `${tally.undecided} to be decided`,
    tally.unsourced > 0 && `${tally.unsourced} without a source`,
  );
  return (
    <>
      <span className="quiet small"> {dotted(part.holds, tally.changed > 0 && `${tally.changed} changed`)}</span>
      {todo !== '' && <span className={css['todo']}> {todo}</span>}
    </>
  );
}

/** One part of the sheet, folded: the sheet is long. What the server refuses in it opens it. */
export function FoldedPart({ part, children }: { part: Part; children: ReactNode }) {
  const { open, fold } = use(FoldingOf);
  const isRefused = use(FieldTroubles).some(({ field }) => field !== undefined && isAbout(part, field));
  return (
    <details
      className={css['group']}
      id={anchorOf(part)}
      open={open.has(part) || isRefused}
      onToggle={({ currentTarget }) => {
        if (currentTarget.open !== open.has(part)) fold(part, currentTarget.open);
      }}
    >
      <summary>
        {part.title}
        <TallyOf part={part} />
      </summary>
      <fieldset className={css['inside']}>
        <legend className="unseen">{part.title}</legend>
        {children}
      </fieldset>
    </details>
  );
}

/** Every part by name with its counts: one press opens it and goes there. */
export function PartsList({ parts, openAll }: { parts: readonly Part[]; openAll: (open: boolean) => void }) {
  const { fold } = use(FoldingOf);
  const go = (part: Part): void => {
    fold(part, true);
    const summary = document.querySelector<HTMLElement>(`#${CSS.escape(anchorOf(part))} > summary`);
    summary?.scrollIntoView({ block: 'start' });
    summary?.focus();
  };
  return (
    <nav aria-label="Parts of the sheet" className={css['parts']}>
      <ul>
        {parts.map((part) => (
          <li key={part.title}>
            <button type="button" onClick={() => go(part)}>
              {part.title}
            </button>
            <TallyOf part={part} />
          </li>
        ))}
      </ul>
      <p>
        <button type="button" onClick={() => openAll(true)}>
          open all
        </button>{' '}
        ·{' '}
        <button type="button" onClick={() => openAll(false)}>
          close all
        </button>
      </p>
    </nav>
  );
}
