import type { ActBody, ComingBackView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { DateField } from '../fields/DateField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';
import css from './ComingBack.module.css';

const ends = [
  { value: 'cannot be reached', says: 'cannot be reached: somebody looks again on a day' },
  { value: 'closed', says: 'closed: care here is over' },
] as const;

/** A registered person ends it, with the reason; no timer does. */
export function EndForm({ data, done }: { data: ComingBackView; done: () => void }) {
  const [how, setHow] = useState<(typeof ends)[number]['value']>();
  const [reason, setReason] = useState('');
  const [on, setOn] = useState<string>();
  const attempt = useAct(done, { [`patient/${data.patient}`]: data.seq });
  const send = (): void => {
    const line =
      how === 'closed'
        ? { kind: 'closed', body: { reason } }
        : { kind: 'cannot-be-reached', body: { tried: reason, ...(on === undefined ? {} : { lookAgainOn: on }) } };
    const act = { name: 'record', patient: data.patient, line: { ...line, effectiveAt: data.today } };
    void attempt.send(act as ActBody['act']);
  };
  return (
    <ActForm refusals={attempt.refusals} send={send} className={css['form']}>
      {how === 'cannot be reached' && !data.triedEnough && (
        <Note tone="caution">
          <p>Two routes have not been tried in vain since the recall began. Tried: {data.tried}.</p>
        </Note>
      )}
      <ChoiceField label="How does it end?" value={how} onChange={setHow} options={ends} />
      {how !== undefined && (
        <TextField
          label={how === 'closed' ? 'Why care here ends' : 'What was tried'}
          help={how === 'closed' ? 'And who has it in hand now.' : `From the notes: ${data.tried}`}
          at={how === 'closed' ? 'reason' : 'tried'}
          lines="several"
          value={reason}
          onChange={setReason}
        />
      )}
      {how === 'cannot be reached' && (
        <DateField label="Somebody looks again on" at="lookAgainOn" value={on} onChange={setOn} />
      )}
      <Outcome of={attempt} />
      {how !== undefined && (
        <Button type="submit" tone="act" busy={attempt.busy}>
          Write it down
        </Button>
      )}
    </ActForm>
  );
}
