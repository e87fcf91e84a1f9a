import { type ReactNode, useId } from 'react';
import css from './Field.module.css';
import type { FieldWords } from './Field.tsx';
import { InUnitWords } from '../words/InUnitWords.tsx';
import { useTroubleAt } from './field-trouble.ts';

/** A question with several controls: radio buttons, ticks, a number with its unit. */
export function FieldGroup({
  label,
  help,
  at,
  optional = false,
  trouble,
  children,
}: FieldWords & { children: ReactNode }) {
  const id = useId();
  const refused = useTroubleAt(at);
  const wrong = trouble ?? refused;
  return (
    <fieldset className={css['field']} aria-describedby={wrong === undefined ? undefined : `${id}-wrong`}>
      <legend className={css['label']}>
        <InUnitWords>{label}</InUnitWords>
        {optional && <span className={css['optional']}> (optional)</span>}
      </legend>
      {help !== undefined && (
        <p className={css['help']}>
          <InUnitWords>{help}</InUnitWords>
        </p>
      )}
      {children}
      {wrong !== undefined && (
        <p className={css['error']} id={`${id}-wrong`}>
          <InUnitWords>{wrong}</InUnitWords>
        </p>
      )}
    </fieldset>
  );
}
