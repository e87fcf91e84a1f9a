import { Link } from '@tanstack/react-router';
import type { PersonView } from '@twelvemonth/exchange';
import { Note } from '../paper/Note.tsx';
import { AtPharmacy } from '../pharmacy/AtPharmacy.tsx';
import { OrdersUnderDirection } from '../pharmacy/OrderUnderDirection.tsx';
import { MedicineClock } from './MedicineClock.tsx';

/** What would mislead if it went unseen: people who look alike, entries that contradict each other. */
export function PersonCautions({ data }: { data: PersonView }) {
  const open = data.lookAlikes.filter(({ answer }) => answer === 'may be one' || answer === 'proposed');
  const others = data.lookAlikes.filter(({ answer }) => answer === 'nothing said' || answer === 'two');
  return (
    <>
      {data.clock !== undefined && <MedicineClock clock={data.clock} />}
      {data.atPharmacy !== undefined && <AtPharmacy state={data.atPharmacy} />}
      <OrdersUnderDirection of={data.directions} whose={data} />
      {open.length > 0 && (
        <Note tone="caution">
          <p>
            <strong>Possible duplicate: cannot say.</strong> Other notes may be the same person. Compare them, and say
            one person or two:
          </p>
          <Others of={open} patient={data.patient} />
        </Note>
      )}
      {others.length > 0 && (
        <Note tone="caution">
          <p>Easily mistaken for:</p>
          <Others of={others} patient={data.patient} />
        </Note>
      )}
      {data.together.map((other) => (
        <Note key={other.patient}>
          The notes of number {other.number} ({other.name}) are read in these.{' '}
          <Link
            className="screenOnly"
            to="/people/$patient/compare/$other"
            params={{ patient: data.patient, other: other.patient }}
          >
            why, and how to take it back
          </Link>
        </Note>
      ))}
      {data.problems.map((problem) => (
        <Note key={problem} tone="caution">
          {problem}
        </Note>
      ))}
    </>
  );
}

function Others({ of, patient }: { of: PersonView['lookAlikes']; patient: string }) {
  return (
    <ul>
      {of.map((other) => (
        <li key={other.patient}>
          <Link to="/people/$patient" params={{ patient: other.patient }}>
            {other.name}
          </Link>{' '}
          {other.says}
          {other.answer === 'two' && ' (said to be two people)'}
          {other.answer === 'proposed' &&
            other.answered !== undefined &&
            ` (one person, says ${other.answered.by})`}{' '}
          <Link className="screenOnly" to="/people/$patient/compare/$other" params={{ patient, other: other.patient }}>
            compare<span className="unseen"> with {other.name}</span>
          </Link>
        </li>
      ))}
    </ul>
  );
}
