import type { ComingBackView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { DateField } from '../fields/DateField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';
import { dayInWords } from '../words/dates.ts';
import css from './ComingBack.module.css';

const kinds = ['this dose', 'this medicine', 'all contact'] as const;
type To = (typeof kinds)[number];

/** Three different answers, each with its own next date: shown before it is written. */
export function NoForm({ data, done }: { data: ComingBackView; done: () => void }) {
  const [to, setTo] = useState<To>();
  const [words, setWords] = useState('');
  const [on, setOn] = useState<string>();
  const attempt = useAct(done, { [`patient/${data.patient}`]: data.seq });
  const send = (): void => {
    const body = { to, words, ...(on === undefined ? {} : { askAgainOn: on }) };
    void attempt.send({
      name: 'record',
      patient: data.patient,
      line: { kind: 'refusal', body, effectiveAt: data.today },
    });
  };
  return (
    <ActForm refusals={attempt.refusals} send={send} className={css['form']}>
      <ChoiceField
        label="No to what?"
        at="to"
        value={to}
        onChange={setTo}
        options={kinds.map((value) => ({ value, says: `${value}: ${follows(data, value)}` }))}
      />
      <TextField label="In their own words" at="words" lines="several" value={words} onChange={setWords} />
      <DateField
        label="A day was agreed on which we may ask again"
        at="askAgainOn"
        optional
        value={on}
        onChange={setOn}
      />
      <Outcome of={attempt} />
      <Button type="submit" tone="act" busy={attempt.busy}>
        Write the no down
      </Button>
    </ActForm>
  );
}

function follows({ askAgain }: ComingBackView, to: To): string {
  if (askAgain === undefined) return 'no protocol says when to ask again';
  switch (to) {
    case 'this dose':
      return `a nurse asks again on ${dayInWords(askAgain.thisDose)}`;
    case 'this medicine':
      return `a prescriber asks by ${dayInWords(askAgain.thisMedicine)}`;
    case 'all contact':
      return `nobody rings or writes; the notes are looked at on ${dayInWords(askAgain.allContact)}`;
  }
}
