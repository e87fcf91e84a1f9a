import type { TodayView } from '@twelvemonth/exchange';
import { ToLink } from '../frame/ToLink.tsx';
import { buttonLook } from '../paper/button-look.ts';
import css from './Today.module.css';

/** What is due next, in order; the first is the one act now. */
export function NextActs({ next }: { next: TodayView['next'] }) {
  return (
    <section aria-labelledby="next">
      <h2 id="next" style={{ marginTop: 0 }}>
        Next
      </h2>
      <table className={css['next']}>
        <thead>
          <tr>
            <th scope="col">by</th>
            <th scope="col">who</th>
            <th scope="col">what</th>
            <th scope="col">
              <span className="unseen">act</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {next.map((act, index) => (
            <tr key={`${act.patient} ${act.what}`}>
              <td className={css['by']}>{act.by}</td>
              <td className={css['who']}>{act.who}</td>
              <td>{act.what}</td>
              <td>
                <ToLink to={act.to} className={buttonLook(index === 0 ? 'act' : 'quiet')}>
                  {act.act}
                </ToLink>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
