import { type KindName, kindNamed } from '@twelvemonth/clinical';
import { useMemo, useState } from 'react';
import { DateField } from '../fields/DateField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { BodyFields } from '../kind-form/BodyFields.tsx';
import { type FormValues, bodyFrom } from '../kind-form/form-values.ts';
import { shapeOf } from '../kind-form/shape.ts';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';

/** One entry written in place, so that nobody leaves the talk for it. */
export function EntryForm({
  kind,
  patient,
  seq,
  dateWord,
}: {
  kind: KindName;
  patient: string;
  seq: number;
  dateWord: string;
}) {
  const definition = kindNamed(kind);
  const shape = useMemo(() => shapeOf(definition.body), [definition]);
  const [values, setValues] = useState<FormValues>({});
  const [on, setOn] = useState<string | undefined>();
  const attempt = useAct(() => setValues({}), { [`patient/${patient}`]: seq });
  if (shape === undefined) return null;
  const send = (): void => {
    const line = { kind, body: bodyFrom(shape, values), effectiveAt: on ?? '' };
    void attempt.send({ name: 'record', patient, line });
  };
  return (
    <ActForm refusals={attempt.refusals} send={send}>
      <p className="quiet">{definition.help}</p>
      <Outcome of={attempt} />
      <BodyFields
        kind={kind}
        shape={shape}
        values={values}
        onChange={(path, value) => setValues((before) => ({ ...before, [path]: value }))}
      />
      <DateField label={dateWord} at="effectiveAt" value={on} onChange={setOn} near="past" />
      <Button type="submit" tone="act" busy={attempt.busy}>
        Record
      </Button>
    </ActForm>
  );
}
