import type { LetterRow, LettersOfPersonView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { DateField } from '../fields/DateField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { addressOf } from '../server/paths.ts';
import { useAct } from '../server/use-act.ts';
import { dayInWords } from '../words/dates.ts';
import { letterName, sentBy } from './letter-words.ts';
import css from './Letters.module.css';
import { useUnitWords } from '../words/american.ts';

/** What became of each letter, and the next thing to write down about it. */
export function LettersKept({ data }: { data: LettersOfPersonView }) {
  if (data.letters.length === 0) return null;
  return (
    <section aria-labelledby="kept">
      <h2 id="kept">Letters so far ({data.letters.length})</h2>
      <ul style={{ listStyle: 'none', padding: 0 }}>
        {data.letters.map((row) => (
          <li key={row.entry}>
            <Kept row={row} today={data.today} />
          </li>
        ))}
      </ul>
    </section>
  );
}

const ways = [{ value: 'post' }, { value: 'handed over' }, { value: 'e-mail' }, { value: 'another way' }] as const;

function Kept({ row, today }: { row: LetterRow; today: string }) {
  const { patient, entry, waitsFor, due, state, stopped } = row;
  const attempt = useAct();
  const called = useUnitWords()(letterName(row));
  const [way, setWay] = useState<(typeof ways)[number]['value']>('post');
  return (
    <>
      <p>
        <strong>{called}</strong>: {state}
        {waitsFor === 'answer' && `; ask for the answer on ${dayInWords(due)}`}
        {waitsFor === 'signature' && '; waits for a signature'}{' '}
        {waitsFor !== undefined && (
          <a href={addressOf('letterDocument', { patient, entry })} target="_blank" rel="noreferrer" className="finger">
            open it<span className="unseen">: {called}</span>
          </a>
        )}
      </p>
      {stopped !== undefined && <p>Not sent: {stopped}.</p>}
      <Outcome of={attempt} />
      {waitsFor === 'sending' && stopped === undefined && (
        <>
          <ChoiceField label="How it goes" value={way} onChange={(value) => setWay(value ?? 'post')} options={ways} />
          <div className={`${css['acts']} screenOnly`}>
            <Button busy={attempt.busy} onClick={() => void attempt.send(sentBy(row, way, today))}>
              It is sent
            </Button>
          </div>
        </>
      )}
      {waitsFor === 'answer' && <AnswerForm row={row} today={today} />}
    </>
  );
}

const outcomes = [{ value: 'answered' }, { value: 'asked again' }, { value: 'not asked further' }] as const;

function AnswerForm({ row: { patient, entry }, today }: { row: LetterRow; today: string }) {
  const attempt = useAct();
  const [outcome, setOutcome] = useState<(typeof outcomes)[number]['value']>();
  const [words, setWords] = useState('');
  const [chaseOn, setChaseOn] = useState<string>();
  const send = (): void => {
    const body = {
      outcome,
      letter: entry,
      ...(words.trim() === '' ? {} : { words: words.trim() }),
      ...(outcome === 'asked again' && chaseOn !== undefined ? { chaseOn } : {}),
    };
    void attempt.send({ name: 'record', patient, line: { kind: 'letter-answered', body, effectiveAt: today } });
  };
  return (
    <ActForm refusals={attempt.refusals} send={send}>
      <ChoiceField label="What came of it" at="outcome" value={outcome} onChange={setOutcome} options={outcomes} />
      <TextField
        label="What they said"
        at="words"
        lines="several"
        value={words}
        onChange={setWords}
        optional={outcome === 'asked again'}
      />
      {outcome === 'asked again' && (
        <DateField label="Look again on" at="chaseOn" value={chaseOn} onChange={setChaseOn} />
      )}
      <Outcome of={attempt} />
      <Button type="submit" busy={attempt.busy}>
        Write it down
      </Button>
    </ActForm>
  );
}
