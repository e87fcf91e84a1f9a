import { useState } from 'react';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { useServiceToday } from '../frame/unit.ts';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';

const ways = [
  'telephone',
  'letter',
  'in person',
  'through their family doctor',
  'through a relative or carer',
] as const;

/** Somebody has been told about a batch they had: it goes into their notes. */
export function ToldForm({
  patient,
  batch,
  died,
  close,
}: {
  patient: string;
  batch: string;
  died: boolean;
  close: () => void;
}) {
  const today = useServiceToday();
  const attempt = useAct(close);
  const [how, setHow] = useState<(typeof ways)[number]>();
  const [note, setNote] = useState('');
  return (
    <ActForm
      refusals={attempt.refusals}
      send={() => {
        if (how === undefined) return;
        const body = { batch, how, ...(note.trim() === '' ? {} : { note }) };
        void attempt.send({ name: 'record', patient, line: { kind: 'told-of-batch', body, effectiveAt: today } });
      }}
    >
      <ChoiceField
        label="How they were told"
        at="how"
        value={how}
        onChange={setHow}
        options={(died ? ways.filter((way) => way.startsWith('through')) : ways).map((value) => ({ value }))}
      />
      <TextField label="How they are, what was agreed" optional at="note" value={note} onChange={setNote} />
      <Outcome of={attempt} />
      <Button type="submit" tone="act" size="big" busy={attempt.busy} disabled={how === undefined}>
        {how === undefined ? 'How were they told?' : 'Record'}
      </Button>
    </ActForm>
  );
}
