import { Link } from '@tanstack/react-router';
import type { TraceView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { Button } from '../paper/Button.tsx';
import { shortDay } from '../words/dates.ts';
import { dotted, unbroken } from '../words/texts.ts';
import { ToldForm } from './ToldForm.tsx';

/** Somebody who had the batch: when, where they are now, and whether they were told since it was stopped. */
export function TracedPerson({ batch, person }: { batch: string; person: TraceView['people'][number] }) {
  const [open, setOpen] = useState(false);
  return (
    <tr>
      <th scope="row">
        <Link to="/people/$patient" params={{ patient: person.patient }} className="finger">
          {person.name}
        </Link>
        <div className="quiet small">
          {dotted(
            `born ${person.born}`,
            unbroken(person.number),
            person.died === undefined ? person.telephone : `died ${shortDay(person.died)}`,
          )}
        </div>
      </th>
      <td>
        {[person, ...person.also].map((had, index) => (
          <div key={index}>
            {shortDay(had.on)}, {had.where}
            <div className="quiet small">{had.what}</div>
          </div>
        ))}
      </td>
      <td>{person.standing}</td>
      <td>
        <ToldWords person={person} />
        <div className="screenOnly">
          <Button aria-expanded={open} onClick={() => setOpen(!open)}>
            {person.told === undefined ? 'They are told' : 'Told again'}
            <span className="unseen"> {person.name}</span>
          </Button>
        </div>
        {open && (
          <ToldForm
            patient={person.patient}
            batch={batch}
            died={person.died !== undefined}
            close={() => setOpen(false)}
          />
        )}
      </td>
    </tr>
  );
}

function ToldWords({ person: { told, died } }: { person: TraceView['people'][number] }) {
  if (told === undefined) return <strong>{died === undefined ? 'not told yet' : 'died, nobody told'}</strong>;
  return (
    <>
      {told.before && <strong>not told since it was stopped; before that: </strong>}
      {shortDay(told.on)}, {told.how}
      <div className="quiet small">{dotted(told.by, told.note)}</div>
    </>
  );
}
