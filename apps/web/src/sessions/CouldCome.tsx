import { Link } from '@tanstack/react-router';
import type { SessionView } from '@twelvemonth/exchange';
import { buttonLook } from '../paper/button-look.ts';
import { unbroken } from '../words/texts.ts';
import css from './Sessions.module.css';
import { InUnitWords } from '../words/InUnitWords.tsx';

/** People who wait or are due and whose window holds this date: who could be offered a free place. */
export function CouldCome({ session }: { session: SessionView }) {
  return (
    <section aria-labelledby="could-come" className="screenOnly">
      <h2 id="could-come">Who could come ({session.couldCome.length})</h2>
      {session.couldCome.length === 0 ? (
        <p className="quiet">Nobody who waits has a window that holds this date.</p>
      ) : (
        <table className={`stacks ${css['list']}`}>
          <thead>
            <tr>
              <th scope="col">who</th>
              <th scope="col">where they are</th>
              <th scope="col">window</th>
              <th scope="col">
                <span className="unseen">act</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {session.couldCome.map((each) => (
              <tr key={each.patient}>
                <th scope="row">
                  <Link to="/people/$patient" params={{ patient: each.patient }}>
                    {each.name}
                  </Link>
                </th>
                <td>{each.standing}</td>
                <td>
                  <InUnitWords>{each.window}</InUnitWords>
                </td>
                <td style={{ textAlign: 'end' }}>
                  <Link
                    to="/people/$patient/book"
                    params={{ patient: each.patient }}
                    search={{ session: session.session }}
                    className={buttonLook('quiet', 'slim')}
                  >
                    {unbroken('Book here')}
                  </Link>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
