import { FieldTroubles } from '../fields/field-trouble.ts';
import { Outcome } from '../paper/Outcome.tsx';
import { Why } from '../paper/Why.tsx';
import type { StepProps } from './StepBody.tsx';
import { NotNowForm } from './steps/NotNowForm.tsx';
import { useStep } from './use-step.ts';

/** Until something of the medicine has run in a dose can still be put off: no vein, a sudden faint, a change of mind. */
export function PutOffAfterAll({ data, done }: StepProps) {
  const step = useStep(data, done);
  return (
    <div style={{ marginTop: '1rem' }}>
      <Why about="though it was decided to go" word="put the dose off after all">
        <FieldTroubles value={step.attempt.refusals}>
          <Outcome of={step.attempt} />
          <NotNowForm
            decision="put off"
            busy={step.attempt.busy}
            foreseen={data.foreseen}
            send={(act) => step.act(act)}
          />
        </FieldTroubles>
      </Why>
    </div>
  );
}
