import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { DateField } from '../fields/DateField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { useServiceToday } from '../frame/unit.ts';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';
import css from './Aftercare.module.css';

const routes = ['telephone', 'letter', 'message', 'family doctor'] as const;

/** A try in vain counts, and the next one has a date: the one agreed here, else the next day the line is open. */
export function NotReached({ patient, done }: { patient: string; done: () => void }) {
  const today = useServiceToday();
  const [route, setRoute] = useState<(typeof routes)[number]>();
  const [callBackOn, setCallBackOn] = useState<string>();
  const [note, setNote] = useState('');
  const attempt = useAct(done);
  const send = (): void => {
    const body = {
      route,
      about: 'aftercare',
      reached: false,
      ...(note.trim() === '' ? {} : { note: note.trim() }),
      ...(callBackOn === undefined ? {} : { callBackOn }),
    };
    void attempt.send({ name: 'record', patient, line: { kind: 'call', body, effectiveAt: today } });
  };
  return (
    <ActForm refusals={attempt.refusals} send={send} className={css['form']}>
      <h2>Not reached</h2>
      <ChoiceField
        label="By what route"
        at="route"
        value={route}
        onChange={setRoute}
        options={routes.map((value) => ({ value }))}
      />
      <TextField
        label="What happened"
        help="No reply, a relative answered …"
        at="note"
        optional
        value={note}
        onChange={setNote}
      />
      <DateField
        label="Try again on"
        help="Left empty: the next day the advice line is open."
        at="callBackOn"
        optional
        value={callBackOn}
        onChange={setCallBackOn}
      />
      <Outcome of={attempt} />
      <Button type="submit" tone="act" busy={attempt.busy}>
        Write the try down
      </Button>
    </ActForm>
  );
}
