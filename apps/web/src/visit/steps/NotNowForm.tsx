import { putOffReasons } from '@twelvemonth/clinical';
import { useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { Button } from '../../paper/Button.tsx';
import { sentence } from '../../words/texts.ts';
import css from '../Visit.module.css';

export type NotNow = 'put off' | 'ask a prescriber';
type Props = { readonly decision: NotNow; readonly busy: boolean; readonly send: (act: object) => void };

/** Why no dose is given now: the reason, what was found, what next, and who tells the patient. */
export function NotNowForm({ decision, busy, send }: Props) {
  const [reasonCode, setReasonCode] = useState<string>();
  const [texts, setTexts] = useState({ note: '', nextStep: '', tellsThePatient: '' });
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
    <form
      onSubmit={(event) => {
        event.preventDefault();
        const said = Object.fromEntries(Object.entries(texts).filter(([, typed]) => typed.trim() !== ''));
        send({ name: 'decide', decision, ...(reasonCode === undefined ? {} : { reasonCode }), ...said });
      }}
    >
      <h3>{sentence(decision)}</h3>
      <ChoiceField
        label="Reason"
        at="reasonCode"
        value={reasonCode}
        onChange={setReasonCode}
        options={putOffReasons.map((value) => ({ value }))}
      />
      {text('note', 'What was found')}
      {text('nextStep', 'What next, and by when')}
      {decision === 'put off' &&
        text('tellsThePatient', 'Who tells the patient what', 'In plain words: we need one more thing first.')}
      <div className={css['go']}>
        <Button type="submit" tone="act" size="big" busy={busy}>
          {sentence(decision)}
        </Button>
      </div>
    </form>
  );
}
