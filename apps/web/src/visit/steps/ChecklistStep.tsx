import { useState } from 'react';
import { counted } from '../../words/texts.ts';
import type { StepProps } from '../StepBody.tsx';
import { StepForm } from '../StepForm.tsx';
import { useStep } from '../use-step.ts';
import { Question } from './Question.tsx';

export type Answer = { readonly answer: 'yes' | 'no'; readonly note?: string };

/** The questions of the day on one screen. Nothing is preset: what is not answered was not asked. */
export function ChecklistStep({ data, done }: StepProps) {
  const step = useStep(data, done);
  const [answers, setAnswers] = useState<Readonly<Record<string, Answer>>>({});
  const open = data.questions.filter(({ id }) => answers[id] === undefined).length;
  return (
    <StepForm
      title="Questions of the day"
      step={step}
      act="Record the answers"
      missing={open === 0 ? undefined : `${counted(open, 'question')} to ask`}
      send={() => step.record({ kind: 'checklist', body: { answers } })}
    >
      {data.questions.map((question) => (
        <Question
          key={question.id}
          question={question}
          answer={answers[question.id]}
          give={(answer) => setAnswers((before) => ({ ...before, [question.id]: answer }))}
        />
      ))}
    </StepForm>
  );
}
