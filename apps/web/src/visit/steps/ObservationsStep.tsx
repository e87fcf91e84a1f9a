import { type EarlyWarningFor, consciousnesses, day, earlyWarningSays, news2Source } from '@twelvemonth/clinical';
import type { VisitView } from '@twelvemonth/exchange';
import { Fragment, useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { NumberField } from '../../fields/NumberField.tsx';
import { QuantityField } from '../../fields/QuantityField.tsx';
import { TemperatureField, type TypedTemperature } from '../../fields/TemperatureField.tsx';
import { nothingTyped } from '../../fields/typed-quantity.ts';
import { Note } from '../../paper/Note.tsx';
import { without } from '../../words/without.ts';
import css from '../Visit.module.css';
import type { StepProps } from '../StepBody.tsx';
import { StepForm } from '../StepForm.tsx';
import { useStep } from '../use-step.ts';

const measures = [
  ['systolicMmHg', 'Systolic pressure', 'mmHg'],
  ['diastolicMmHg', 'Diastolic pressure', 'mmHg'],
  ['pulsePerMinute', 'Pulse', 'a minute'],
  ['saturationPercent', 'Oxygen saturation', '%'],
  ['breathsPerMinute', 'Breaths', 'a minute'],
] as const;
type Measure = (typeof measures)[number][0];

const whomOf = (whom: VisitView['earlyWarningFor']): EarlyWarningFor =>
  'notFor' in whom
    ? whom
    : { scale: whom.scale, decidedOn: whom.decidedOn === undefined ? undefined : day(whom.decidedOn) };

export function ObservationsStep({ data, done }: StepProps) {
  const step = useStep(data, done);
  const [values, setValues] = useState<Partial<Record<Measure, number>>>({});
  const [temperature, setTemperature] = useState<TypedTemperature>({});
  const [irregular, setIrregular] = useState<'yes' | 'no'>();
  const [oxygen, setOxygen] = useState<'air' | 'oxygen'>();
  const [consciousness, setConsciousness] = useState<(typeof consciousnesses)[number]>();
  const [weight, setWeight] = useState(nothingTyped);
  const set = (key: Measure) => (value: number | undefined) =>
    setValues((before) => (value === undefined ? without(before, key) : { ...before, [key]: value }));
  const observed = {
    ...values,
    ...temperature,
    ...(oxygen === undefined ? {} : { onOxygen: oxygen === 'oxygen' }),
    ...(consciousness === undefined ? {} : { consciousness }),
  };
  const send = (): void => {
    const body = {
      ...observed,
      ...(irregular === undefined ? {} : { newIrregularPulse: irregular === 'yes' }),
      when: 'before',
    };
    const weighed = {
      comparator: weight.comparator,
      value: weight.value,
      ...(weight.unit === undefined ? {} : { unit: weight.unit }),
    };
    step.record(
      { kind: 'observations', body },
      ...(weight.value.trim() === ''
        ? []
        : [{ kind: 'weight' as const, body: { quantity: weighed, method: 'measured' } }]),
    );
  };
  return (
    <StepForm
      title="Observations"
      help="As measured. Leave out what was not measured."
      step={step}
      act="Record"
      send={send}
      missing={Object.keys(values).length + Object.keys(temperature).length === 0 ? 'Enter a value first' : undefined}
    >
      {data.putOffValues.length > 0 && (
        <Note tone="caution">The protocol puts off at: {data.putOffValues.join('; ')}.</Note>
      )}
      <div className={css['facts']}>
        {measures.map(([key, label, unit]) => (
          <Fragment key={key}>
            {key === 'saturationPercent' && (
              <TemperatureField label="Temperature" value={temperature} onChange={setTemperature} />
            )}
            <NumberField label={label} unit={unit} at={key} value={values[key]} onChange={set(key)} />
          </Fragment>
        ))}
      </div>
      <ChoiceField
        label="A new irregular pulse?"
        help="Feel it: left blank it is not a no, and the dose waits."
        at="newIrregularPulse"
        size="big"
        value={irregular}
        onChange={setIrregular}
        options={[{ value: 'no' }, { value: 'yes' }]}
      />
      <ChoiceField
        label="Air or oxygen"
        optional
        at="onOxygen"
        value={oxygen}
        onChange={setOxygen}
        options={[{ value: 'air' }, { value: 'oxygen' }]}
      />
      <ChoiceField
        label="Consciousness"
        help="Confusion of long standing is not new."
        optional
        at="consciousness"
        value={consciousness}
        onChange={setConsciousness}
        options={consciousnesses.map((value) => ({ value }))}
      />
      <output className={css['facts']}>
        <p>
          <strong>NEWS2</strong> {earlyWarningSays(observed, whomOf(data.earlyWarningFor))}.{' '}
          <span className="quiet small">
            {news2Source}. It decides nothing about the dose: the protocol’s put-off values do.
          </span>
        </p>
      </output>
      <QuantityField
        label="Weight today"
        help="Shoes off. The decision to go wants a weight of the day."
        at="quantity"
        units={['kg', 'lb']}
        value={weight}
        onChange={setWeight}
      />
    </StepForm>
  );
}
