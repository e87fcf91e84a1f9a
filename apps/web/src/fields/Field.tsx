import { type ReactNode, useId } from 'react';
import css from './Field.module.css';
import { InUnitWords } from '../words/InUnitWords.tsx';
import { useTroubleAt } from './field-trouble.ts';

export type FieldWords = {
  readonly label: string;
  readonly help?: string | undefined;
  /** Path of what is entered, as refusals name it. */
  readonly at?: string | undefined;
  readonly optional?: boolean;
  /** A trouble the screen itself sees. */
  readonly trouble?: string | undefined;
};

type Wired = {
  readonly id: string;
  readonly 'aria-describedby': string | undefined;
  readonly 'aria-invalid': boolean | undefined;
};

/** A label, a line of help, the control and what is wrong with it, tied together for every reader. */
export function Field({
  label,
  help,
  at,
  optional = false,
  trouble,
  children,
}: FieldWords & { children: (wired: Wired) => ReactNode }) {
  const id = useId();
  const refused = useTroubleAt(at);
  const wrong = trouble ?? refused;
  const described = [help === undefined ? '' : `${id}-help`, wrong === undefined ? '' : `${id}-wrong`].join(' ').trim();
  return (
    <div className={css['field']}>
      <label className={css['label']} htmlFor={id}>
        <InUnitWords>{label}</InUnitWords>
        {optional && <span className={css['optional']}> (optional)</span>}
      </label>
      {help !== undefined && (
        <p className={css['help']} id={`${id}-help`}>
          <InUnitWords>{help}</InUnitWords>
        </p>
      )}
      {children({
        id,
        'aria-describedby': described === '' ? undefined : described,
        'aria-invalid': wrong === undefined ? undefined : true,
      })}
      {wrong !== undefined && (
        <p className={css['error']} id={`${id}-wrong`}>
          <InUnitWords>{wrong}</InUnitWords>
        </p>
      )}
    </div>
  );
}
