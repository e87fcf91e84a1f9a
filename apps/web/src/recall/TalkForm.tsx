import { bloodsAgreed, toldBy, wishes } from '@twelvemonth/clinical';
import type { ActBody, ComingBackView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';
import css from './ComingBack.module.css';
import { type RecallTalk, linesOf, nothingAsked, routes, teethAnswers } from './recall-lines.ts';

const options = <Value extends string>(values: readonly Value[]) => values.map((value) => ({ value }));

/** Everything asked before the next dose, one question a line; what is left open was not asked. */
export function TalkForm({ data, done }: { data: ComingBackView; done: () => void }) {
  const [talk, setTalk] = useState<RecallTalk>(nothingAsked);
  const attempt = useAct(done, { [`patient/${data.patient}`]: data.seq });
  const set = (change: Partial<RecallTalk>): void => setTalk((before) => ({ ...before, ...change }));
  const send = (): void => {
    const act = { name: 'record together', patient: data.patient, lines: linesOf(talk, data.today) };
    void attempt.send(act as ActBody['act']);
  };
  return (
    <ActForm refusals={attempt.refusals} send={send} className={css['form']}>
      <ChoiceField
        label="By what route"
        at="route"
        value={talk.route}
        onChange={(route) => set({ route })}
        options={options(routes)}
      />
      <ChoiceField
        label="Who answered?"
        at="toldBy"
        value={talk.by}
        onChange={(by) => set({ by })}
        options={options(toldBy)}
      />
      <ChoiceField
        label="Do they still want the next dose?"
        help="A no is written with what it is a no to: press “They say no”."
        value={talk.wants}
        onChange={(wants) => set({ wants })}
        options={options(wishes.filter((wish) => wish !== 'no'))}
      />
      <ChoiceField
        label="Teeth and jaw: anything wrong or planned?"
        value={talk.teeth}
        onChange={(teeth) => set({ teeth })}
        options={teethAnswers}
      />
      <ChoiceField
        label="Do they take their daily vitamin D?"
        value={talk.vitaminD}
        onChange={(vitaminD) => set({ vitaminD })}
        options={options(['yes', 'no'] as const)}
      />
      <ChoiceField
        label="Is this still the address?"
        help={data.address ?? 'There is none in the notes.'}
        value={talk.address}
        onChange={(address) => set({ address })}
        options={options(['right', 'changed'] as const)}
      />
      <ChoiceField
        label="What is agreed about the bloods?"
        value={talk.bloods}
        onChange={(bloods) => set({ bloods })}
        options={options(bloodsAgreed)}
      />
      <TextField
        label="What else was said"
        lines="several"
        optional
        value={talk.note}
        onChange={(note) => set({ note })}
      />
      <Outcome of={attempt} />
      <Button type="submit" tone="act" busy={attempt.busy}>
        Write it down
      </Button>
    </ActForm>
  );
}
