import { Link } from '@tanstack/react-router';
import type { PersonView } from '@twelvemonth/exchange';
import { Note } from '../paper/Note.tsx';

/** Where the prescription is with the pharmacist, on the page of the person and of the visit. */
export function AtPharmacy({ state }: { state: NonNullable<PersonView['atPharmacy']> }) {
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
