import type { ActBody, OwnPageView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { DateField } from '../fields/DateField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';

type Question = OwnPageView['questions'][number]['id'];
type Answer = { readonly answer?: 'yes' | 'no'; readonly words: string };
const hows = [{ value: 'on paper' }, { value: 'by telephone' }] as const;
const yesNo = [
  { value: 'no', says: 'No' },
  { value: 'yes', says: 'Yes' },
] as const;

/** Typed in from a sheet that came back, or while they are on the telephone. Nothing is preset. */
export function FromPaper({ data }: { data: OwnPageView }) {
  const [how, setHow] = useState<(typeof hows)[number]['value']>('on paper');
  const [on, setOn] = useState<string | undefined>(data.today);
  const [answers, setAnswers] = useState<Partial<Record<Question, Answer>>>({});
  const [otherDay, setOtherDay] = useState('');
  const attempt = useAct();
  const set = (id: Question, change: Partial<Answer>): void =>
    setAnswers((before) => ({ ...before, [id]: { words: '', ...before[id], ...change } }));
  const send = (): void => {
    const given = Object.entries(answers).flatMap(([id, { answer, words }]) =>
      answer === undefined ? [] : [[id, words.trim() === '' ? { answer } : { answer, words }]],
    );
    const body = {
      how,
      answers: Object.fromEntries(given) as object,
      ...(otherDay.trim() === '' ? {} : { otherDay }),
    };
    const line = { kind: 'told-ahead', body, effectiveAt: on ?? '' };
    void attempt.send({ name: 'record', patient: data.patient, line } as ActBody['act']);
  };
  return (
    <details className="screenOnly">
      <summary>Type in what came back</summary>
      <ActForm refusals={attempt.refusals} send={send}>
        <ChoiceField label="How" value={how} onChange={(value) => setHow(value ?? 'on paper')} options={hows} />
        <DateField label="When they answered" at="line.effectiveAt" value={on} onChange={setOn} near="past" />
        {data.questions.map(({ id, asks }) => (
          <div key={id}>
            <ChoiceField
              label={asks}
              value={answers[id]?.answer}
              onChange={(answer) => set(id, answer === undefined ? {} : { answer })}
              options={yesNo}
            />
            {answers[id]?.answer !== undefined && (
              <TextField
                label="In their words, if they wrote more"
                value={answers[id].words}
                onChange={(words) => set(id, { words })}
              />
            )}
          </div>
        ))}
        <TextField label="They ask for another day" value={otherDay} onChange={setOtherDay} />
        <Outcome of={attempt} />
        <Button tone="act" type="submit" busy={attempt.busy}>
          Write it down
        </Button>
      </ActForm>
    </details>
  );
}
