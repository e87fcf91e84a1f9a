import { Link } from '@tanstack/react-router';
import type { PersonView } from '@twelvemonth/exchange';
import { Note } from '../paper/Note.tsx';

/** Where the prescription is with the pharmacist, on the page of the person and of the visit. */
export function AtPharmacy({
  state,
  runs = false,
}: {
  state: NonNullable<PersonView['atPharmacy']>;
  /** The dose runs, and nobody has said that it should not. */
  runs?: boolean;
}) {
  if (runs)
    return (
      <Note tone="stop" speaks="at once">
        <strong>The pharmacist has spoken while it runs.</strong> Prescription: {state.says}. Ask the pharmacist and a
        prescriber now whether the drip goes on.
      </Note>
    );
  return (
    <Note tone={state.is === 'refused' ? 'stop' : state.holds ? 'caution' : 'quiet'}>
      <strong>
        {state.is === 'refused' ? 'Pharmacist refused: no dose. ' : state.holds ? 'Nothing is prepared yet. ' : ''}
      </strong>
      Prescription: {state.says}.{' '}
      <Link className="screenOnly" to="/pharmacy">
        pharmacy
      </Link>
    </Note>
  );
}
