import { type ReactNode, useId } from 'react';
import css from './Aftercare.module.css';
import type { YesNo } from './answers.ts';

type Props = {
  readonly asks: string;
  readonly answer: YesNo | undefined;
  readonly give: (answer: YesNo) => void;
  /** What a "yes" asks on, or says. */
  readonly children?: ReactNode;
};

/** One question with its two answers beside it. */
export function YesNoLine({ asks, answer, give, children }: Props) {
  const name = useId();
  return (
    <fieldset aria-labelledby={`${name}-asks`} className={css['question']}>
      <p id={`${name}-asks`}>{asks}</p>
      <div className={css['answers']}>
        {(['no', 'yes'] as const).map((value) => (
          <label key={value} className={css['answer']}>
            <input type="radio" name={name} checked={answer === value} onChange={() => give(value)} />
            {value}
          </label>
        ))}
      </div>
      {children !== undefined && children !== false && <div className={css['more']}>{children}</div>}
    </fieldset>
  );
}
