import { isKindName } from '@twelvemonth/clinical';
import { Link } from '@tanstack/react-router';
import type { PersonView } from '@twelvemonth/exchange';
import { useEffect, useRef } from 'react';
import { sentence } from '../../words/texts.ts';
import { KindForm } from './KindForm.tsx';
import css from './RecordPanel.module.css';
import { RecordMenu, choiceLabel } from './RecordMenu.tsx';
import { SampleForm } from './SampleForm.tsx';

type Props = {
  readonly person: PersonView;
  readonly record: string;
  readonly correct: string | undefined;
  readonly about: string | undefined;
  readonly close: () => void;
};

/** The panel in which something is written in a person's notes. It stands in the page: nothing is covered, nothing is modal. */
export function RecordPanel({ person, record, correct, about, close }: Props) {
  const place = useRef<HTMLElement>(null);
  useEffect(() => {
    place.current?.focus({ preventScroll: true });
    place.current?.scrollIntoView({ block: 'nearest' });
  }, []);
  const entry = person.entries.find(({ id }) => id === correct);
  const known = record === 'sample' || isKindName(record) ? record : undefined;
  const title =
    known === undefined ? 'Write in the notes' : `${entry === undefined ? 'Record' : 'Correct'}: ${choiceLabel(known)}`;
  return (
    <section ref={place} className={`${css['panel']} screenOnly`} tabIndex={-1} aria-label={title}>
      <div className={css['head']}>
        <h2>{sentence(title)}</h2>
        <span>
          {known !== undefined && (
            <>
              <Link
                to="/people/$patient"
                params={{ patient: person.patient }}
                search={{ record: 'menu' }}
                className="finger"
              >
                something else
              </Link>
              {' · '}
            </>
          )}
          <Link to="/people/$patient" params={{ patient: person.patient }} className="finger">
            close
          </Link>
        </span>
      </div>
      {known === undefined && <RecordMenu patient={person.patient} />}
      {known === 'sample' && <SampleForm person={person} close={close} />}
      {known !== undefined && known !== 'sample' && (
        <KindForm key={`${known} ${correct}`} kind={known} person={person} entry={entry} about={about} close={close} />
      )}
    </section>
  );
}
