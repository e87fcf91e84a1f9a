import { useState } from 'react';
import { TextField } from '../../fields/TextField.tsx';
import { useFound } from '../../frame/search/use-found.ts';
import { Button } from '../../paper/Button.tsx';
import { dotted } from '../../words/texts.ts';

export type Found = ReturnType<typeof useFound>['found'][number];

/** Another person's notes, found by number, name or birth date, and chosen by hand: one found is not yet one meant. */
export function FindOther({
  label,
  but,
  chosen,
  choose,
}: {
  label: string;
  but: string;
  chosen: Found | undefined;
  choose: (found: Found | undefined) => void;
}) {
  const [typed, setTyped] = useState('');
  const { found, settled, trouble } = useFound(typed);
  const others = found.filter(({ patient }) => patient !== but);
  if (chosen !== undefined) {
    return (
      <p>
        {label}: <strong>{chosen.name}</strong> {dotted(`born ${chosen.born}`, chosen.number)}{' '}
        <Button tone="plain" onClick={() => choose(undefined)}>
          someone else
        </Button>
      </p>
    );
  }
  return (
    <>
      <TextField label={label} help="Number, name or birth date." value={typed} onChange={setTyped} />
      {trouble !== null && <p>{trouble.message}</p>}
      {settled && others.length === 0 && <p>Nobody else found.</p>}
      <ul>
        {others.map((one) => (
          <li key={one.patient}>
            <Button tone="plain" onClick={() => choose(one)}>
              {one.name}, {dotted(`born ${one.born}`, one.number, one.standing)}
            </Button>
          </li>
        ))}
      </ul>
    </>
  );
}
