import type { TodayView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ToLink } from '../frame/ToLink.tsx';
import { Button } from '../paper/Button.tsx';
import { buttonLook } from '../paper/button-look.ts';
import { counted } from '../words/texts.ts';
import css from './Today.module.css';

/** People still to come who are listed here before someone asks for all: the strips below show everybody. */
const arrivalsShown = 3;

/** What is due next, in order; the first is the one act now. */
export function NextActs({ next, here }: { next: TodayView['next']; here: ReadonlySet<string> }) {
  const [whole, setWhole] = useState(false);
  const later = next.filter(({ patient }) => !here.has(patient)).slice(arrivalsShown);
  const shown = whole ? next : next.filter((act) => !later.includes(act));
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
          {shown.map((act, index) => (
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
      {later.length > 0 && (
        <p className="quiet screenOnly" style={{ marginTop: '0.4rem' }}>
          <Button tone="plain" onClick={() => setWhole(!whole)}>
            {whole ? 'only who comes next' : `${counted(later.length, 'person comes', 'people come')} later`}
          </Button>
        </p>
      )}
    </section>
  );
}
