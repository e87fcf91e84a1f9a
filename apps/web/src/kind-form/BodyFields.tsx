import { useCallback } from 'react';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { FieldGroup } from '../fields/FieldGroup.tsx';
import type { FieldValue, FormValues } from './form-values.ts';
import { OneField } from './OneField.tsx';
import { fieldWords } from './field-words.ts';
import type { Shape, ShapeField } from './shape.ts';

/** Entries or regimens a field may point at, by the field's path. */
export type Picks = Readonly<Record<string, readonly { readonly value: string; readonly says: string }[]>>;

type Props = {
  readonly kind: string;
  readonly shape: Shape;
  readonly values: FormValues;
  readonly onChange: (path: string, value: FieldValue) => void;
  readonly picks?: Picks;
  readonly path?: string;
};

/** The fields of one body, in the order of its schema. */
export function BodyFields({ kind, shape, values, onChange, picks = {}, path = '' }: Props) {
  const at = (key: string): string => (path === '' ? key : `${path}.${key}`);
  const each = useCallback(
    ({ key, shape: inner, optional }: ShapeField) => {
      const here = path === '' ? key : `${path}.${key}`;
      if (inner.is === 'group' || inner.is === 'kinds of answer') {
        return (
          <FieldGroup key={here} label={fieldWords(kind, here).label} optional={optional}>
            <BodyFields kind={kind} shape={inner} values={values} onChange={onChange} picks={picks} path={here} />
          </FieldGroup>
        );
      }
      return (
        <OneField
          key={here}
          kind={kind}
          path={here}
          shape={inner}
          optional={optional}
          value={values[here]}
          picks={picks[here]}
          onChange={(value) => onChange(here, value)}
        />
      );
    },
    [kind, path, values, onChange, picks],
  );
  if (shape.is === 'group') return <>{shape.fields.map(each)}</>;
  if (shape.is !== 'kinds of answer') return null;
  const chosen = values[at(shape.on)] as string | undefined;
  const words = fieldWords(kind, at(shape.on));
  return (
    <>
      <ChoiceField
        {...words}
        at={at(shape.on)}
        value={chosen}
        onChange={(value) => onChange(at(shape.on), value)}
        options={shape.variants.map(({ value }) => ({ value }))}
      />
      {shape.variants.find(({ value }) => value === chosen)?.fields.map(each)}
    </>
  );
}
