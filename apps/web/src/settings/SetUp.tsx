import type { SettingsView } from '@twelvemonth/exchange';
import { StepMark } from '../visit/StepMark.tsx';
import css from './Settings.module.css';

/** What an empty service still needs before its first dose, in order. */
export function SetUp({ steps }: { steps: SettingsView['setUp'] }) {
  if (steps.every(({ done }) => done)) return null;
  return (
    <section aria-labelledby="set-up">
      <h2 id="set-up">Setting up</h2>
      <ol className={css['steps']}>
        {steps.map((step) => (
          <li key={step.what}>
            <StepMark state={step.done ? 'done' : 'to come'} />
            <span>
              <strong>{step.what}</strong> {step.done ? <span className="quiet">done</span> : step.how}
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
}
