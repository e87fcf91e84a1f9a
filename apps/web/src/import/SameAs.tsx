import { useState } from 'react';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { useFound } from '../frame/search/use-found.ts';

type Props = { readonly sameAs: string | undefined; readonly choose: (patient: string | undefined) => void };

/** Says that a row is about someone who is here already, and who. */
export function SameAs({ sameAs, choose }: Props) {
  const [typed, setTyped] = useState('');
  const { found, settled } = useFound(typed);
  return (
    <>
      <TextField
        label="Find the person it is about"
        help="Name, number or birth date."
        value={typed}
        onChange={(text) => {
          setTyped(text);
          choose(undefined);
        }}
      />
      {found.length > 0 && (
        <ChoiceField
          label="It is"
          value={sameAs}
          onChange={choose}
          options={found.map(({ patient, name, born, number }) => ({
            value: patient,
            says: `${name}, ${born}, ${number}`,
          }))}
        />
      )}
      {settled && found.length === 0 && <p className="quiet">Nobody found.</p>}
    </>
  );
}
