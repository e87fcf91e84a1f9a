import { type Analyte, mineralLimits, unitsOf } from '@twelvemonth/clinical';
import type { ActBody, PersonView } from '@twelvemonth/exchange';
import { Fragment, useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { DateField } from '../../fields/DateField.tsx';
import { QuantityField } from '../../fields/QuantityField.tsx';
import { type TypedQuantity, nothingTyped } from '../../fields/typed-quantity.ts';
import { TextField } from '../../fields/TextField.tsx';
import { ActForm } from '../../fields/ActForm.tsx';
import { Button } from '../../paper/Button.tsx';
import { Outcome } from '../../paper/Outcome.tsx';
import { Why } from '../../paper/Why.tsx';
import { useAct } from '../../server/use-act.ts';
import css from './RecordPanel.module.css';
import { type SampleEntered, isMineral, sampleLines } from './sample-lines.ts';

const usual: readonly Analyte[] = ['creatinine', 'vitamin D', 'adjusted calcium', 'calcium', 'albumin'];
const further: readonly Analyte[] = [
  'egfr',
  'alkaline phosphatase',
  'phosphate',
  'magnesium',
  'parathyroid hormone',
  'CTX',
  'P1NP',
];
const helps: Partial<Record<Analyte, string>> = {
  'adjusted calcium': "The laboratory's own adjusted value. If it gives none, enter calcium and albumin.",
  calcium: 'Total calcium, where the laboratory gives no adjusted value.',
};

/** The results of one sample, entered together: values and units exactly as printed, nothing preset. */
export function SampleForm({ person, close }: { person: PersonView; close: () => void }) {
  const [sample, setSample] = useState<SampleEntered>({
    on: undefined,
    values: {},
    low: '',
    high: '',
    mineralLimits: {},
    laboratory: '',
    acute: undefined,
    weight: nothingTyped,
  });
  const attempt = useAct(close, { [`patient/${person.patient}`]: person.seq });
  const lines = sampleLines(sample);
  const set = (analyte: Analyte) => (value: TypedQuantity) =>
    setSample((before) => ({ ...before, values: { ...before.values, [analyte]: value } }));
  const at = (analyte: Analyte): string | undefined => {
    const index = lines.findIndex(
      ({ kind, body }) => kind === 'result' && (body as { analyte?: string }).analyte === analyte,
    );
    return index < 0 ? undefined : `lines.${index}`;
  };
  const field = (analyte: Analyte) => (
    <QuantityField
      key={analyte}
      label={analyte === 'egfr' ? 'eGFR (shown, decides nothing)' : analyte.charAt(0).toUpperCase() + analyte.slice(1)}
      help={helps[analyte]}
      at={at(analyte)}
      units={unitsOf[analyte]}
      value={sample.values[analyte] ?? nothingTyped}
      onChange={set(analyte)}
    />
  );
  const furtherField = (analyte: Analyte) => {
    if (!isMineral(analyte)) return field(analyte);
    const limit = mineralLimits[analyte];
    return (
      <Fragment key={analyte}>
        {field(analyte)}
        <TextField
          label={`Laboratory's ${limit === 'referenceHigh' ? 'upper' : 'lower'} limit for ${analyte}`}
          help="Without it the value says nothing, and a prescriber has to look."
          at={at(analyte) === undefined ? undefined : `${at(analyte)}.body.${limit}`}
          short
          value={sample.mineralLimits[analyte] ?? ''}
          onChange={(typed) =>
            setSample((before) => ({ ...before, mineralLimits: { ...before.mineralLimits, [analyte]: typed } }))
          }
          optional
        />
      </Fragment>
    );
  };
  const send = (): void => {
    const act = { name: 'record together', patient: person.patient, lines } as ActBody['act'];
    void attempt.send(act);
  };
  return (
    <ActForm refusals={attempt.refusals} send={send}>
      <p className="quiet">
        Copy value and unit exactly as the laboratory printed them. A result counts once a registered practitioner has
        signed it.
      </p>
      <Outcome of={attempt} />
      <DateField
        label="Date of the sample"
        at="lines.0.effectiveAt"
        value={sample.on}
        onChange={(on) => setSample((before) => ({ ...before, on }))}
        near="past"
      />
      <div className={css['tests']}>{usual.map(field)}</div>
      <div className={css['tests']}>
        <TextField
          label="Laboratory's lower limit for the calcium"
          at="referenceLow"
          short
          value={sample.low}
          onChange={(low) => setSample((before) => ({ ...before, low }))}
          optional
        />
        <TextField
          label="Laboratory's upper limit for the calcium"
          at="referenceHigh"
          short
          value={sample.high}
          onChange={(high) => setSample((before) => ({ ...before, high }))}
          optional
        />
        <QuantityField
          label="Weight that day"
          help="Only if it was measured with the sample."
          units={['kg', 'lb']}
          value={sample.weight}
          onChange={(weight) => setSample((before) => ({ ...before, weight }))}
          optional
        />
        <TextField
          label="Laboratory"
          value={sample.laboratory}
          onChange={(laboratory) => setSample((before) => ({ ...before, laboratory }))}
          optional
        />
      </div>
      <ChoiceField
        label="Taken while acutely ill in hospital?"
        help="Such a sample is never carried forward."
        value={sample.acute}
        onChange={(acute) => setSample((before) => ({ ...before, acute }))}
        options={[{ value: 'no' }, { value: 'yes' }]}
      />
      <Why about="that can be entered" word="further tests">
        <div className={css['tests']}>{further.map(furtherField)}</div>
      </Why>
      <div className={css['acts']}>
        <Button type="submit" tone="act" busy={attempt.busy} disabled={lines.length === 0}>
          {lines.length === 0
            ? 'Enter a value first'
            : `Record ${lines.length === 1 ? 'one value' : `${lines.length} values`}`}
        </Button>
        <Button onClick={close}>Leave without recording</Button>
      </div>
    </ActForm>
  );
}
