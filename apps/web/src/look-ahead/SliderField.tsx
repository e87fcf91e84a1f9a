import { NumberField } from '../fields/NumberField.tsx';
import css from './LookAhead.module.css';
import type { Slider } from './what-ifs.ts';
import { useUnitWords } from '../words/american.ts';

type Props = {
  readonly slider: Slider;
  readonly value: number;
  readonly usual: number;
  readonly onChange: (value: number) => void;
};

/** A slider and the same as a number beside it. Once moved, what it is as things stand is said, and one press goes back. */
export function SliderField({ slider, value, usual, onChange }: Props) {
  const { unit, least, most, step, help } = slider;
  const label = useUnitWords()(slider.label);
  return (
    <div className={css['slider']} data-moved={value !== usual}>
      <NumberField
        label={label}
        unit={unit}
        help={help}
        value={value}
        onChange={(typed) => {
          if (typed !== undefined) onChange(Math.min(most, Math.max(least, typed)));
        }}
      />
      <input
        className={css['range']}
        type="range"
        aria-label={`${label}, ${unit}`}
        aria-valuetext={`${value} ${unit}`}
        min={least}
        max={most}
        step={step}
        value={value}
        onChange={(event) => onChange(Number(event.target.value))}
      />
      {value !== usual && (
        <p className={css['usual']}>
          now {usual}{' '}
          <button type="button" className={css['back']} onClick={() => onChange(usual)}>
            back
            <span className="unseen">
              {' '}
              to {usual}: {label}
            </span>
          </button>
        </p>
      )}
    </div>
  );
}
