import { Link } from '@tanstack/react-router';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import type { Refusal } from '../server/server-problem.ts';

/** Where a refusal names the person it is about. */
const named = 'notTheSameAs.';

/** Refused because someone here looks like the person being registered: open them, or say that they are two people. */
export function LookAlikes({
  refusals,
  goOn,
}: {
  refusals: readonly Refusal[];
  goOn: (notTheSameAs: readonly string[]) => void;
}) {
  const found = refusals.filter(({ name }) => name === 'looks-like-someone-here');
  if (found.length === 0) return null;
  const patients = found.flatMap(({ field }) => (field?.startsWith(named) === true ? [field.slice(named.length)] : []));
  return (
    <Note tone="caution">
      <p>Look before you go on: two people under one record is as bad as one person under two.</p>
      {patients.map((patient) => (
        <p key={patient}>
          <Link to="/people/$patient" params={{ patient }} className="finger">
            Open the person already here
          </Link>
        </p>
      ))}
      {patients.length > 0 && (
        <p>
          <Button size="slim" onClick={() => goOn(patients)}>
            They are two different people: register
          </Button>
        </p>
      )}
    </Note>
  );
}
