import type { VisitView } from '@twelvemonth/exchange';
import { useId } from 'react';
import { TextField } from '../../fields/TextField.tsx';
import css from '../Visit.module.css';
import type { Answer } from './ChecklistStep.tsx';

type Props = {
  readonly question: VisitView['questions'][number];
  readonly answer: Answer | undefined;
  readonly give: (answer: Answer) => void;
};

/** One question: two large answers; what was told before stands beside it and is asked all the same. */
export function Question({ question, answer, give }: Props) {
  const name = useId();
  const holds = answer?.answer === question.holdsOn;
  return (
    <fieldset aria-labelledby={`${name}-asks`} className={`${css['question']} ${holds ? css['holds'] : ''}`}>
      <div>
        <p className={css['asks']} id={`${name}-asks`}>
          {question.asks}
        </p>
        {question.toldUs !== undefined && <p className={css['told']}>told us: {question.toldUs}</p>}
      </div>
      <div className={css['answers']}>
        {(['no', 'yes'] as const).map((value) => (
          <label key={value} className={css['answer']}>
            <input
              type="radio"
              name={name}
              checked={answer?.answer === value}
              onChange={() => give({ ...answer, answer: value })}
            />
            {value === 'no' ? 'No' : 'Yes'}
          </label>
        ))}
      </div>
      {holds && (
        <div className={css['note']}>
          <TextField
            label="What they said"
            help="This answer holds the dose until someone has looked."
            value={answer.note ?? ''}
            onChange={(note) => give(note.trim() === '' ? { answer: answer.answer } : { answer: answer.answer, note })}
          />
        </div>
      )}
    </fieldset>
  );
}
