import { Link } from '@tanstack/react-router';
import type { PersonView, ReadinessWire } from '@twelvemonth/exchange';
import { buttonLook } from '../paper/button-look.ts';
import { useUnitWords } from '../words/american.ts';
import { dayInWords } from '../words/dates.ts';
import { sentence } from '../words/texts.ts';
import { formForStep } from './doable.ts';
import css from './Person.module.css';

const dates = ({ earliest, latest }: ReadinessWire['nextSteps'][number]): string =>
  latest === undefined
    ? `from ${dayInWords(earliest)}`
    : latest === earliest
      ? dayInWords(earliest)
      : `${dayInWords(earliest)} to ${dayInWords(latest)}`;

/** What would move the window: what, whose, between which dates, and why. */
export function NextSteps({ data, readiness }: { data: PersonView; readiness: ReadinessWire }) {
  const { nextSteps, today } = readiness;
  const inUnitWords = useUnitWords();
  return (
    <section aria-labelledby="next-steps">
      <h2 id="next-steps">Next steps</h2>
      {nextSteps.length === 0 && <p className="quiet">Nothing needs doing before a dose as things stand.</p>}
      <ul className={css['steps']}>
        {nextSteps.map((step) => {
          const form = formForStep(step.kind, data);
          return (
            <li key={`${step.kind} ${step.what}`}>
              <span>
                {dates(step)}
                <br />
                <span className="quiet small">{step.who}</span>
              </span>
              <span>
                <strong>{sentence(step.what)}</strong>
                {step.assumed && <span className="quiet"> (if good)</span>}
                <br />
                <span className="quiet small">
                  {step.why}; counts from {dayInWords(step.effectFrom)}
                </span>
              </span>
              {form?.record === 'course-review' && step.earliest <= today && (
                <Link
                  className={`${buttonLook('quiet', 'slim')} screenOnly`}
                  to="/people/$patient/review"
                  params={{ patient: data.patient }}
                >
                  Open the review
                </Link>
              )}
              {form !== undefined && form.record !== 'course-review' && step.earliest <= today && (
                <Link
                  className={`${buttonLook('quiet', 'slim')} screenOnly`}
                  to="/people/$patient"
                  params={{ patient: data.patient }}
                  search={{ record: form.record }}
                >
                  {inUnitWords(form.says)}
                </Link>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
