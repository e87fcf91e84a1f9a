import { Link } from '@tanstack/react-router';
import type { VisitView } from '@twelvemonth/exchange';
import { useUnit } from '../frame/unit.ts';
import { timeOfDay } from '../words/dates.ts';
import { dotted, sentence } from '../words/texts.ts';
import { StepMark } from './StepMark.tsx';
import css from './Visit.module.css';

/** All steps, with where the visit stands. Whoever comes back to it sees "you were here". */
export function StepList({ data, shown }: { data: VisitView; shown: string | undefined }) {
  const { unit } = useUnit();
  return (
    <nav aria-label="Steps of the visit">
      <ol className={css['steps']}>
        {data.steps.map((step) => (
          <li key={step.step}>
            <Link
              to="/people/$patient/visit"
              params={{ patient: data.patient }}
              search={{ step: step.step }}
              aria-current={step.step === shown ? 'step' : undefined}
              activeProps={{}}
              resetScroll={false}
            >
              <StepMark state={step.state} />
              <span>
                {sentence(step.step)}
                <span className="unseen">, {step.state}</span>
                {step.step === data.current && step.step !== shown ? (
                  <small className={css['here']}>you were here</small>
                ) : (
                  <small>
                    {step.state === 'done'
                      ? dotted(step.at !== undefined && timeOfDay(step.at, unit?.zone), step.by)
                      : step.state}
                  </small>
                )}
              </span>
            </Link>
          </li>
        ))}
      </ol>
    </nav>
  );
}
