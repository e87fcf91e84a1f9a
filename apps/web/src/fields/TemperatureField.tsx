import { celsiusOfFahrenheit, fahrenheitField } from '@twelvemonth/clinical';
import { useWritesAmerican } from '../words/american.ts';
import type { FieldWords } from './Field.tsx';
import { NumberField } from './NumberField.tsx';

/** As read off the thermometer; where that reads Fahrenheit, with the Celsius by which it is judged. */
export type TypedTemperature = {
  readonly temperatureCelsius?: number | undefined;
  readonly temperatureFahrenheit?: number | undefined;
};

type Props = Pick<FieldWords, 'label' | 'help' | 'optional'> & {
  readonly value: TypedTemperature;
  readonly onChange: (value: TypedTemperature) => void;
};

/** What no thermometer reads in Fahrenheit is sent as it was typed, and refused with the words for it. */
const inBoth = (fahrenheit: number): TypedTemperature =>
  fahrenheitField.safeParse(fahrenheit).success
    ? { temperatureCelsius: celsiusOfFahrenheit(fahrenheit), temperatureFahrenheit: fahrenheit }
    : { temperatureFahrenheit: fahrenheit };

/** In the degrees of the unit's thermometers. The two scales share no number, so what is read off the other is asked about. */
export function TemperatureField({ value, onChange, ...words }: Props) {
  const american = useWritesAmerican();
  const { temperatureCelsius, temperatureFahrenheit } = value;
  if (!american)
    return (
      <NumberField
        {...words}
        at="temperatureCelsius"
        unit="°C"
        value={temperatureCelsius}
        onChange={(celsius) => onChange(celsius === undefined ? {} : { temperatureCelsius: celsius })}
      />
    );
  const same = temperatureCelsius === undefined ? '' : ` = ${temperatureCelsius} °C`;
  return (
    <NumberField
      {...words}
      at="temperatureFahrenheit"
      unit={`°F${same}`}
      value={temperatureFahrenheit}
      onChange={(fahrenheit) => onChange(fahrenheit === undefined ? {} : inBoth(fahrenheit))}
    />
  );
}
