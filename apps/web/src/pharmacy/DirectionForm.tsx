import type { PlainDate } from '@twelvemonth/clinical';
import type { PharmacyView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { DateField } from '../fields/DateField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { TicksField } from '../fields/TicksField.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';
import css from './Pharmacy.module.css';

/** Written whole by a prescriber. A changed text is another version, signed anew. */
export function DirectionForm({ data, close }: { data: PharmacyView; close: () => void }) {
  const attempt = useAct(close);
  const [name, setName] = useState('');
  const [version, setVersion] = useState('');
  const [regimen, setRegimen] = useState<string>();
  const [validFrom, setFrom] = useState<string>();
  const [validUntil, setUntil] = useState<string>();
  const [mayGive, setMayGive] = useState<readonly string[]>([]);
  const [conditions, setConditions] = useState('');
  const [days, setDays] = useState<number>();
  return (
    <ActForm
      className={css['direction']}
      refusals={attempt.refusals}
      send={() =>
        void attempt.send({
          name: 'write direction',
          unit: data.unit,
          body: {
            name: name.trim(),
            version: version.trim(),
            regimen: regimen ?? '',
            validFrom: (validFrom ?? '') as PlainDate,
            validUntil: (validUntil ?? '') as PlainDate,
            mayGive,
            conditions: conditions
              .split('\n')
              .map((line) => line.trim())
              .filter((line) => line !== ''),
            orderLastsDays: days ?? 0,
          },
        })
      }
    >
      <h3>A group direction</h3>
      <TextField label="Name of the direction" at="name" first value={name} onChange={setName} />
      <TextField label="Version" at="version" value={version} onChange={setVersion} />
      <ChoiceField
        label="Regimen"
        at="regimen"
        value={regimen}
        onChange={setRegimen}
        options={data.regimens.map(({ id, title }) => ({ value: id, says: title }))}
      />
      <DateField label="In force from" at="validFrom" value={validFrom} onChange={setFrom} />
      <DateField label="Last day" at="validUntil" value={validUntil} onChange={setUntil} />
      <TicksField
        label="Who may order and give under it"
        at="mayGive"
        value={mayGive}
        onChange={setMayGive}
        options={data.nurses.map(({ staff, name: says }) => ({ value: staff, says }))}
      />
      <TextField
        label="Asked of each person, one a line"
        help="Worded so that “yes” means the person may have it. Anything else is for a prescriber."
        at="conditions"
        lines="several"
        value={conditions}
        onChange={setConditions}
      />
      <NumberField label="An order lasts" unit="days" at="orderLastsDays" value={days} onChange={setDays} />
      <Outcome of={attempt} />
      <Button type="submit" tone="act" size="big" busy={attempt.busy}>
        Sign as prescriber
      </Button>{' '}
      <Button size="big" onClick={close}>
        Leave
      </Button>
    </ActForm>
  );
}
