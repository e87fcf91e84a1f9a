import { Link } from '@tanstack/react-router';
import type { PersonView } from '@twelvemonth/exchange';

type Alike = PersonView['lookAlikes'][number];

/** Each identifier as both notes have it, and whether the two are the same sign by sign. */
export function SideBySide({ data, alike }: { data: PersonView; alike: Alike }) {
  return (
    <table className="stacks">
      <thead>
        <tr>
          <th scope="col">identifier</th>
          <th scope="col">these notes</th>
          <th scope="col">
            <Link to="/people/$patient" params={{ patient: alike.patient }}>
              the other notes
            </Link>
          </th>
          <th scope="col">compared</th>
        </tr>
      </thead>
      <tbody>
        {alike.compared.map(({ identifier, these, other, says }) => (
          <tr key={identifier}>
            <th scope="row">{identifier}</th>
            <td data-head="these notes">{these ?? <span className="quiet">not recorded</span>}</td>
            <td data-head="the other notes">{other ?? <span className="quiet">not recorded</span>}</td>
            <td data-head="compared">{says === 'differs' ? <strong>{says}</strong> : says}</td>
          </tr>
        ))}
        <tr>
          <th scope="row">where they are</th>
          <td data-head="these notes">{data.standing.says}</td>
          <td data-head="the other notes">{alike.standing}</td>
          <td data-head="compared" className="quiet">
            look
          </td>
        </tr>
        <tr>
          <th scope="row">doses</th>
          <td data-head="these notes">{data.course === undefined ? '' : data.course.doses.length}</td>
          <td data-head="the other notes">{alike.doses}</td>
          <td data-head="compared" className="quiet">
            look
          </td>
        </tr>
      </tbody>
    </table>
  );
}
