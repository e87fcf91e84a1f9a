import { useState } from 'react';
import { FieldTroubles } from '../../fields/field-trouble.ts';
import { Button } from '../../paper/Button.tsx';
import { Outcome } from '../../paper/Outcome.tsx';
import { Verdict } from '../../verdict/Verdict.tsx';
import { sentence } from '../../words/texts.ts';
import type { StepProps } from '../StepBody.tsx';
import css from '../Visit.module.css';
import { WhenField } from '../StepForm.tsx';
import { useStep } from '../use-step.ts';
import { GoItems } from './GoItems.tsx';
import { type NotNow, NotNowForm } from './NotNowForm.tsx';

/** Go, put off or ask: the verdict of the day with every item, then one of three. */
export function DecisionStep({ data, done }: StepProps) {
  const [notNow, setNotNow] = useState<NotNow>();
  const step = useStep(data, (says) => {
    setNotNow(undefined);
    done(says);
  });
  const { go } = data;
  return (
    <FieldTroubles value={step.attempt.refusals}>
      <h2>Go, put off, or ask</h2>
      {data.decision !== undefined && <p>So far: {data.decision.says}</p>}
      {go === undefined ? (
        <p>Nothing can be said: no protocol is in force at this unit. Do not give a dose.</p>
      ) : (
        <>
          <p style={{ fontSize: '1.18rem' }}>
            <Verdict is={go.verdict} large>
              {sentence(go.headline)}
            </Verdict>
          </p>
          <GoItems go={go} />
          {data.exceptions.map((says) => (
            <p key={says}>{sentence(says)}.</p>
          ))}
          {data.prescription !== undefined && <p>The order: {data.prescription}.</p>}
        </>
      )}
      <WhenField time={step.time} setTime={step.setTime} />
      <Outcome of={step.attempt} />
      <div className={css['go']}>
        <Button
          tone={notNow === undefined && go?.verdict === 'ready' && data.atPharmacy?.is !== 'refused' ? 'act' : 'quiet'}
          size="big"
          busy={step.attempt.busy && notNow === undefined}
          onClick={() => step.act({ name: 'decide', decision: 'go' })}
        >
          Go
        </Button>
        {(['put off', 'ask a prescriber'] as const).map((decision) => (
          <Button
            key={decision}
            size="big"
            aria-expanded={notNow === decision}
            onClick={() => setNotNow((before) => (before === decision ? undefined : decision))}
          >
            {sentence(decision)}
          </Button>
        ))}
      </div>
      {notNow !== undefined && (
        <NotNowForm
          key={notNow}
          decision={notNow}
          busy={step.attempt.busy}
          foreseen={data.foreseen}
          send={(act) => step.act(act)}
        />
      )}
    </FieldTroubles>
  );
}
