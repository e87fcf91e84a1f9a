import { type EarlyWarningFor, consciousnesses, day, earlyWarningSays, news2Source } from '@twelvemonth/clinical';
import type { VisitView } from '@twelvemonth/exchange';
import { Fragment, useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { NumberField } from '../../fields/NumberField.tsx';
import { TemperatureField, type TypedTemperature } from '../../fields/TemperatureField.tsx';
import { without } from '../../words/without.ts';
import css from '../Visit.module.css';

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

/** Observations as they are typed; the same before and after the dose. */
export function useObservations() {
  const [values, setValues] = useState<Partial<Record<Measure, number>>>({});
  const [temperature, setTemperature] = useState<TypedTemperature>({});
  const [irregular, setIrregular] = useState<'yes' | 'no'>();
  const [oxygen, setOxygen] = useState<'air' | 'oxygen'>();
  const [consciousness, setConsciousness] = useState<(typeof consciousnesses)[number]>();
  const set = (key: Measure) => (value: number | undefined) =>
    setValues((before) => (value === undefined ? without(before, key) : { ...before, [key]: value }));
  const observed = {
    ...values,
    ...temperature,
    ...(irregular === undefined ? {} : { newIrregularPulse: irregular === 'yes' }),
    ...(oxygen === undefined ? {} : { onOxygen: oxygen === 'oxygen' }),
    ...(consciousness === undefined ? {} : { consciousness }),
  };
  return {
    /** The body of an entry, without when it was. */
    observed,
    anyFigure: Object.keys(values).length + Object.keys(temperature).length > 0,
    values,
    set,
    temperature,
    setTemperature,
    irregular,
    setIrregular,
    oxygen,
    setOxygen,
    consciousness,
    setConsciousness,
  };
}

type Props = {
  readonly of: ReturnType<typeof useObservations>;
  readonly whom: VisitView['earlyWarningFor'];
  /** What a pulse not felt means here. */
  readonly pulseHelp: string;
  /** What the score does not decide. */
  readonly decides: string;
};

export function ObservationFields({ of, whom, pulseHelp, decides }: Props) {
  return (
    <>
      <div className={css['facts']}>
        {measures.map(([key, label, unit]) => (
          <Fragment key={key}>
            {key === 'saturationPercent' && (
              <TemperatureField label="Temperature" value={of.temperature} onChange={of.setTemperature} />
            )}
            <NumberField label={label} unit={unit} at={key} value={of.values[key]} onChange={of.set(key)} />
          </Fragment>
        ))}
      </div>
      <ChoiceField
        label="A new irregular pulse?"
        help={pulseHelp}
        at="newIrregularPulse"
        size="big"
        value={of.irregular}
        onChange={of.setIrregular}
        options={[{ value: 'no' }, { value: 'yes' }]}
      />
      <ChoiceField
        label="Air or oxygen"
        optional
        at="onOxygen"
        value={of.oxygen}
        onChange={of.setOxygen}
        options={[{ value: 'air' }, { value: 'oxygen' }]}
      />
      <ChoiceField
        label="Consciousness"
        help="Confusion of long standing is not new."
        optional
        at="consciousness"
        value={of.consciousness}
        onChange={of.setConsciousness}
        options={consciousnesses.map((value) => ({ value }))}
      />
      <output className={css['facts']}>
        <p>
          <strong>NEWS2</strong> {earlyWarningSays(of.observed, whomOf(whom))}.{' '}
          <span className="quiet small">
            {news2Source}. {decides}
          </span>
        </p>
      </output>
    </>
  );
}
