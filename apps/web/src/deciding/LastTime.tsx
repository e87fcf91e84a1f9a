import { nextTimeAfter, sourceText } from '@twelvemonth/counselling';
import type { ComingBackView } from '@twelvemonth/exchange';
import { Note } from '../paper/Note.tsx';
import { Why } from '../paper/Why.tsx';

/** What was felt after the last dose, carried into the talk about the next: less likely, and the plan; or a prescriber first. */
export function LastTime({ felt, dosesGiven }: Pick<ComingBackView, 'felt' | 'dosesGiven'>) {
  const next = nextTimeAfter(felt, dosesGiven);
  if (next === undefined) return null;
  if (next.is === 'a prescriber first')
    return (
      <section aria-labelledby="last-time">
        <h2 id="last-time">After the last dose</h2>
        <Note tone="stop">
          <p>
            <strong>A prescriber decides before anything is planned:</strong> {next.because.join('; ')}.
          </p>
        </Note>
      </section>
    );
  return (
    <section aria-labelledby="last-time">
      <h2 id="last-time">After the last dose: less likely next time, and here is the plan</h2>
      <p>{next.felt.join('; ')}.</p>
      <p>{next.numbers}</p>
      <ul>
        {next.plan.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <Why about="the numbers for next time come from" word="where these numbers come from">
        {next.sources.map((source) => (
          <p key={`${source.citation} ${source.seen}`}>{sourceText(source)}</p>
        ))}
      </Why>
    </section>
  );
}
