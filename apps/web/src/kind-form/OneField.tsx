import { ChoiceField } from '../fields/ChoiceField.tsx';
import { DateField } from '../fields/DateField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { QuantityField } from '../fields/QuantityField.tsx';
import { type TypedQuantity, nothingTyped } from '../fields/typed-quantity.ts';
import { TextField } from '../fields/TextField.tsx';
import { TicksField } from '../fields/TicksField.tsx';
import type { FieldValue } from './form-values.ts';
import { fieldWords } from './field-words.ts';
import type { Shape } from './shape.ts';

type Props = {
  readonly kind: string;
  readonly path: string;
  readonly shape: Exclude<Shape, { is: 'group' | 'kinds of answer' }>;
  readonly optional: boolean;
  readonly value: FieldValue;
  readonly onChange: (value: FieldValue) => void;
  readonly picks: readonly { readonly value: string; readonly says: string }[] | undefined;
};

const yesOrNo = [{ value: 'yes' }, { value: 'no' }] as const;

export function OneField({ kind, path, shape, optional, value, onChange, picks }: Props) {
  const words = { ...fieldWords(kind, path), at: path, optional };
  if (picks !== undefined && shape.is === 'several texts') {
    return (
      <TicksField
        {...words}
        value={Array.isArray(value) ? (value as readonly string[]) : []}
        onChange={onChange}
        options={picks}
      />
    );
  }
  if (picks !== undefined)
    return <ChoiceField {...words} value={value as string | undefined} onChange={onChange} options={picks} />;
  switch (shape.is) {
    case 'choice':
      return (
        <ChoiceField
          {...words}
          value={value as string | undefined}
          onChange={onChange}
          options={shape.values.map((each) => ({ value: each }))}
        />
      );
    case 'ticks':
      return (
        <TicksField
          {...words}
          value={Array.isArray(value) ? (value as readonly string[]) : []}
          onChange={onChange}
          options={shape.values.map((each) => ({ value: each }))}
        />
      );
    case 'yes or no':
      return (
        <ChoiceField
          {...words}
          value={value === undefined ? undefined : value === true ? 'yes' : 'no'}
          onChange={(answer) => onChange(answer === undefined ? undefined : answer === 'yes')}
          options={yesOrNo}
        />
      );
    case 'number':
      return <NumberField {...words} value={value as number | undefined} onChange={onChange} />;
    case 'date':
      return <DateField {...words} value={value as string | undefined} onChange={onChange} />;
    case 'quantity':
      return (
        <QuantityField
          {...words}
          value={(value ?? nothingTyped) as TypedQuantity}
          onChange={onChange}
          units={shape.units}
        />
      );
    case 'several texts':
    case 'long text':
      return <TextField {...words} lines="several" value={(value ?? '') as string} onChange={onChange} />;
    case 'text':
      return <TextField {...words} value={(value ?? '') as string} onChange={onChange} />;
  }
}
