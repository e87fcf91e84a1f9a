import { useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { FieldTroubles } from '../../fields/field-trouble.ts';
import { Button } from '../../paper/Button.tsx';
import { Outcome } from '../../paper/Outcome.tsx';
import { Verdict } from '../../verdict/Verdict.tsx';
import { sentence } from '../../words/texts.ts';
import type { StepProps } from '../StepBody.tsx';
import css from '../Visit.module.css';
import { useStep } from '../use-step.ts';
import { GoItems } from './GoItems.tsx';
import { reasonCodes } from './reason-codes.ts';

type Decision = 'go' | 'put off' | 'ask a prescriber';

/** Go, put off or ask: the verdict of the day with every item, then one of three. */
export function DecisionStep({ data, done }: StepProps) {
  const step = useStep(data, done);
  const [decision, setDecision] = useState<Decision>();
  const [reasonCode, setReasonCode] = useState<string>();
  const [texts, setTexts] = useState({ note: '', nextStep: '', tellsThePatient: '' });
  const { go } = data;
  const send = (chosen: Decision): void => {
    const said = Object.fromEntries(Object.entries(texts).filter(([, text]) => text.trim() !== ''));
    step.act({
      name: 'decide',
      decision: chosen,
      ...(chosen === 'go' ? {} : { ...(reasonCode === undefined ? {} : { reasonCode }), ...said }),
    });
  };
  const text = (key: keyof typeof texts, label: string, help?: string) => (
    <TextField
      label={label}
      help={help}
      at={key}
      value={texts[key]}
      onChange={(value) => setTexts((before) => ({ ...before, [key]: value }))}
    />
  );
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
        </>
      )}
      <Outcome of={step.attempt} />
      <div className={css['go']}>
        <Button
          tone={go?.verdict === 'ready' ? 'act' : 'quiet'}
          size="big"
          busy={step.attempt.busy && decision === undefined}
          onClick={() => send('go')}
        >
          Go
        </Button>
        <Button size="big" aria-expanded={decision === 'put off'} onClick={() => setDecision('put off')}>
          Put off
        </Button>
        <Button
          size="big"
          aria-expanded={decision === 'ask a prescriber'}
          onClick={() => setDecision('ask a prescriber')}
        >
          Ask a prescriber
        </Button>
      </div>
      {decision !== undefined && (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            send(decision);
          }}
        >
          <h3>{sentence(decision)}</h3>
          <ChoiceField
            label="Reason"
            at="reasonCode"
            value={reasonCode}
            onChange={setReasonCode}
            options={reasonCodes}
          />
          {text('note', 'What was found')}
          {text('nextStep', 'What next, and by when')}
          {decision === 'put off' &&
            text('tellsThePatient', 'Who tells the patient what', 'In plain words: we need one more thing first.')}
          <div className={css['go']}>
            <Button type="submit" tone="act" size="big" busy={step.attempt.busy}>
              {sentence(decision)}
            </Button>
          </div>
        </form>
      )}
    </FieldTroubles>
  );
}
