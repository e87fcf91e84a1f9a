import { useState } from 'react';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { DateField } from '../fields/DateField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { useServiceToday } from '../frame/unit.ts';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';

const routes = ['telephone', 'letter', 'message', 'family doctor', 'they rang us'] as const;

/** A call made from the recall list, written down where it was made. */
export function CallForm({ patient, close }: { patient: string; close: () => void }) {
  const today = useServiceToday();
  const [route, setRoute] = useState<(typeof routes)[number]>();
  const [reached, setReached] = useState<'yes' | 'no'>();
  const [note, setNote] = useState('');
  const [callBackOn, setCallBackOn] = useState<string>();
  const attempt = useAct(close);
  const send = (): void => {
    const body = {
      route,
      about: 'recall',
      ...(reached === undefined ? {} : { reached: reached === 'yes' }),
      ...(note.trim() === '' ? {} : { note: note.trim() }),
      ...(callBackOn === undefined ? {} : { callBackOn }),
    };
    void attempt.send({ name: 'record', patient, line: { kind: 'call', body, effectiveAt: today } });
  };
  return (
    <ActForm refusals={attempt.refusals} send={send}>
      <Outcome of={attempt} />
      <ChoiceField
        label="By what route"
        at="route"
        value={route}
        onChange={setRoute}
        options={routes.map((value) => ({ value }))}
      />
      <ChoiceField
        label="Were they reached?"
        at="reached"
        value={reached}
        onChange={setReached}
        options={[{ value: 'yes' }, { value: 'no' }]}
      />
      <TextField label="What was said" at="note" lines="several" value={note} onChange={setNote} optional />
      <DateField label="Try again on" at="callBackOn" value={callBackOn} onChange={setCallBackOn} optional />
      <p style={{ display: 'flex', gap: '0.6rem' }}>
        <Button type="submit" tone="act" busy={attempt.busy}>
          Write it down
        </Button>
        <Button onClick={close}>Leave</Button>
      </p>
    </ActForm>
  );
}
