import { type DayQuestion, usualDayQuestions } from '@twelvemonth/clinical';
import { useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { TicksField } from '../../fields/TicksField.tsx';
import { Button } from '../../paper/Button.tsx';
import { Why } from '../../paper/Why.tsx';
import { ReasonField } from './ReasonField.tsx';
import { StruckOut } from './StruckOut.tsx';
import { FoldedPart } from './FoldedPart.tsx';
import { partOf } from './parts.ts';
import { type Draft, changedPaths, idFrom, replaced } from './draft.ts';
import css from './Editor.module.css';

/** Questions only the day can settle: how they are worded and what an answer means. */
export function QuestionFields({ draft }: { draft: Draft }) {
  const { sheet, base, set } = draft;
  const changed = changedPaths(draft);
  const [added, setAdded] = useState('');
  const id = idFrom(added);
  const taken = sheet.dayQuestions.some((one) => one.id === id) || base.dayQuestions.some((one) => one.id === id);
  const absent = usualDayQuestions.filter(
    (one) =>
      !sheet.dayQuestions.some(({ id: named }) => named === one.id) &&
      !base.dayQuestions.some(({ id: named }) => named === one.id),
  );
  return (
    <FoldedPart part={partOf.dayQuestions}>
      {sheet.dayQuestions.map((question) => (
        <div key={question.id} className={css['item']}>
          <Why about={question.asks} word={`${question.asks} (“${question.holdsOn}” means ${question.then})`}>
            <OneQuestion
              question={question}
              set={(fields) => set({ dayQuestions: replaced(sheet.dayQuestions, question.id, fields) })}
            />
            <p>
              <Button
                size="slim"
                onClick={() => set({ dayQuestions: sheet.dayQuestions.filter((one) => one.id !== question.id) })}
              >
                strike out<span className="unseen">: {question.asks}</span>
              </Button>
            </p>
          </Why>
          <ReasonField
            draft={draft}
            path={`dayQuestions.${question.id}`}
            changed={changed.has(`dayQuestions.${question.id}`)}
          />
        </div>
      ))}
      <StruckOut
        draft={draft}
        list="dayQuestions"
        items={base.dayQuestions.map(({ id: named, asks }) => ({ id: named, says: asks }))}
        putBack={(named) => {
          const found = base.dayQuestions.find((one) => one.id === named);
          if (found !== undefined) set({ dayQuestions: [...sheet.dayQuestions, found] });
        }}
      />
      {absent.length > 0 && (
        <ChoiceField
          label="Put in one that a starter asks"
          value={undefined}
          onChange={(named) => {
            const found = absent.find((one) => one.id === named);
            if (found !== undefined) set({ dayQuestions: [...sheet.dayQuestions, found] });
          }}
          options={absent.map((one) => ({ value: one.id, says: one.asks }))}
          openUpTo={0}
        />
      )}
      <TextField
        label="Another question"
        optional
        value={added}
        onChange={setAdded}
        trouble={taken ? 'There is a question of this name: word it otherwise.' : undefined}
      />
      <Button
        disabled={id === '' || taken}
        onClick={() => {
          const asks = added.trim();
          set({ dayQuestions: [...sheet.dayQuestions, { id, asks, holdsOn: 'yes', then: 'cannot say', says: asks }] });
          setAdded('');
        }}
      >
        Put it in
      </Button>
    </FoldedPart>
  );
}

function OneQuestion({ question, set }: { question: DayQuestion; set: (fields: Partial<DayQuestion>) => void }) {
  const at = `dayQuestions.${question.id}`;
  return (
    <>
      <TextField
        label="The question"
        at={`${at}.asks`}
        lines="several"
        value={question.asks}
        onChange={(asks) => set({ asks })}
      />
      <ChoiceField
        label="The answer that holds the dose"
        value={question.holdsOn}
        onChange={(holdsOn) => holdsOn !== undefined && set({ holdsOn })}
        options={[{ value: 'yes' }, { value: 'no' }]}
      />
      <ChoiceField
        label="It then is"
        value={question.then}
        onChange={(then) => then !== undefined && set({ then })}
        options={[{ value: 'not ready' }, { value: 'cannot say' }]}
      />
      <TextField
        label="In a few words, for the verdict"
        at={`${at}.says`}
        value={question.says}
        onChange={(says) => set({ says })}
      />
      <TicksField
        label="After the day"
        value={question.staysUntilCleared === true ? ['stays'] : []}
        onChange={(ticked) => set({ staysUntilCleared: ticked.includes('stays') })}
        options={[{ value: 'stays', says: 'holds until someone clears it' }]}
      />
    </>
  );
}
