import { nextStepOwners, putOffReasons, seenAhead } from '@twelvemonth/clinical';
import { useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { DateField } from '../../fields/DateField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { Button } from '../../paper/Button.tsx';
import { decisionLabels } from '../../words/decision-labels.ts';
import { sentence } from '../../words/texts.ts';
import css from '../Visit.module.css';

export type NotNow = 'put off' | 'ask a prescriber';
type Props = {
  readonly decision: NotNow;
  readonly busy: boolean;
  readonly send: (act: object) => void;
  /** Whether the notes of a week before already stood against today; undefined: not known here. */
  readonly foreseen?: boolean | undefined;
};
type Said = Partial<Record<keyof typeof decisionLabels, string>>;

const options = (values: readonly string[]) => values.map((value) => ({ value }));

const foreseenWords = (foreseen: boolean | undefined): string | undefined =>
  foreseen === undefined
    ? undefined
    : foreseen
      ? 'A week ago the notes already said that nothing could be given today.'
      : 'A week ago nothing in the notes stood against today.';

/** Why no dose is given now: the reason, what was found; put off also what next, by when, whose it is, and who tells the patient. */
export function NotNowForm({ decision, busy, send, foreseen }: Props) {
  const [said, setSaid] = useState<Said>({});
  const put = (key: keyof Said) => (value: string | undefined) => setSaid((before) => ({ ...before, [key]: value }));
  const text = (key: keyof Said, label: string = decisionLabels[key], help?: string) => (
    <TextField label={label} help={help} at={key} value={said[key] ?? ''} onChange={put(key)} />
  );
  const isPutOff = decision === 'put off';
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        const answered = Object.entries(said).filter(([, value]) => value.trim() !== '');
        send({ name: 'decide', decision, ...Object.fromEntries(answered) });
      }}
    >
      <h3>{sentence(decision)}</h3>
      <ChoiceField
        label={decisionLabels.reasonCode}
        at="reasonCode"
        value={said.reasonCode}
        onChange={put('reasonCode')}
        options={options(putOffReasons)}
      />
      {text('note', isPutOff ? undefined : 'What was found, and what is asked')}
      {isPutOff && (
        <>
          <ChoiceField
            label={decisionLabels.couldHaveBeenSeen}
            help={foreseenWords(foreseen)}
            at="couldHaveBeenSeen"
            value={said.couldHaveBeenSeen}
            onChange={put('couldHaveBeenSeen')}
            options={options(seenAhead)}
          />
          {text('nextStep')}
          <DateField label={decisionLabels.nextBy} at="nextBy" value={said.nextBy} onChange={put('nextBy')} />
          <ChoiceField
            label={decisionLabels.nextOwner}
            at="nextOwner"
            value={said.nextOwner}
            onChange={put('nextOwner')}
            options={options(nextStepOwners)}
          />
          {text('tellsThePatient', undefined, 'A name or a role. In plain words: we need one more thing first.')}
        </>
      )}
      <div className={css['go']}>
        <Button type="submit" tone="act" size="big" busy={busy}>
          {sentence(decision)}
        </Button>
      </div>
    </form>
  );
}
