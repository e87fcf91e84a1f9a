import {
  type DangerSign,
  type PlainDate,
  type ReactionSymptom,
  aftercareScript,
  amountsDrunk,
  feelings,
  paracetamolTaken,
  redFlagNamed,
  redFlagsIn,
  severityWords,
  symptomSeverities,
  toldBy,
  waysAsked,
} from '@twelvemonth/clinical';
import type { ActBody, AftercareOfPersonView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { DateField } from '../fields/DateField.tsx';
import { TemperatureField } from '../fields/TemperatureField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';
import { useUnitWords } from '../words/american.ts';
import { counted } from '../words/texts.ts';
import css from './Aftercare.module.css';
import { Flags } from './RedFlags.tsx';
import { type Answers, type Felt, type YesNo, linesOf, nothingAsked, stillToAsk, toldSoFar } from './answers.ts';
import { YesNoLine } from './YesNoLine.tsx';

type Props = { readonly data: AftercareOfPersonView; readonly dose: NonNullable<AftercareOfPersonView['dose']> };

const options = <Value extends string>(values: readonly Value[]) => values.map((value) => ({ value }));
const severities = symptomSeverities.map((value) => ({ value, says: severityWords[value] }));

/** The questions one a line; nothing preset. What may not wait says so where it is told, before anything is sent. */
export function AskForm({ data, dose }: Props) {
  const inUnitWords = useUnitWords();
  const [answers, setAnswers] = useState<Answers>(nothingAsked);
  const attempt = useAct(() => setAnswers(nothingAsked), { [`patient/${data.patient}`]: data.seq });
  const set = (change: Partial<Answers>): void => setAnswers((before) => ({ ...before, ...change }));
  const today = data.today as PlainDate;
  const flags = redFlagsIn(toldSoFar(answers, today), data.limits);
  const open = stillToAsk(answers);
  const send = (): void => {
    const lines = linesOf(answers, dose.entry, today);
    void attempt.send({ name: 'record together', patient: data.patient, lines } as ActBody['act']);
  };
  const sign = (name: DangerSign, asks: string) => (
    <YesNoLine
      key={name}
      asks={asks}
      answer={answers.signs[name]}
      give={(answer) => set({ signs: { ...answers.signs, [name]: answer } })}
    >
      {answers.signs[name] === 'yes' && (
        <Note tone="stop" speaks="at once">
          <Flags flags={[redFlagNamed(name)]} />
        </Note>
      )}
    </YesNoLine>
  );
  const symptom = (name: ReactionSymptom, asks: string) => (
    <YesNoLine
      key={name}
      asks={asks}
      answer={answers.symptoms[name]}
      give={(answer) => set({ symptoms: { ...answers.symptoms, [name]: answer } })}
    >
      {answers.symptoms[name] === 'yes' && (
        <FeltFields
          about={name}
          felt={answers.felt[name] ?? {}}
          set={(change) => set({ felt: { ...answers.felt, [name]: { ...answers.felt[name], ...change } } })}
        />
      )}
    </YesNoLine>
  );
  return (
    <ActForm refusals={attempt.refusals} send={send} className={css['form']}>
      <h2>The questions</h2>
      <ChoiceField
        label="How do you ask?"
        at="how"
        value={answers.how}
        onChange={(how) => set({ how })}
        options={options(waysAsked)}
      />
      <ChoiceField
        label="Who answers?"
        at="toldBy"
        value={answers.by}
        onChange={(by) => set({ by })}
        options={options(toldBy)}
      />
      {aftercareScript.map((question) => {
        switch (question.id) {
          case 'sign':
            return sign(question.sign, inUnitWords(question.asks));
          case 'symptom':
            return symptom(question.symptom, inUnitWords(question.asks));
          case 'feels':
            return (
              <ChoiceField
                key={question.id}
                label={inUnitWords(question.asks)}
                at="feels"
                value={answers.feels}
                onChange={(feels) => set({ feels })}
                options={options(feelings)}
              />
            );
          case 'temperature':
            return (
              <TemperatureField
                key={question.id}
                label={inUnitWords(question.asks)}
                help="Leave it empty if it was not taken."
                optional
                value={answers.temperature}
                onChange={(temperature) => set({ temperature })}
              />
            );
          case 'drinks':
            return (
              <ChoiceField
                key={question.id}
                label={inUnitWords(question.asks)}
                at="drinks"
                value={answers.drinks}
                onChange={(drinks) => set({ drinks })}
                options={options(amountsDrunk)}
              />
            );
          case 'paracetamol':
            return (
              <ChoiceField
                key={question.id}
                label={inUnitWords(question.asks)}
                help={inUnitWords(
                  'Other products with paracetamol count too. How much they may take stands in their pack.',
                )}
                at="paracetamol"
                value={answers.paracetamol}
                onChange={(paracetamol) => set({ paracetamol })}
                options={options(paracetamolTaken)}
              />
            );
          case 'words':
            return (
              <TextField
                key={question.id}
                label={inUnitWords(question.asks)}
                at="words"
                lines="several"
                optional
                value={answers.words}
                onChange={(words) => set({ words })}
              />
            );
        }
      })}
      {flags.length > 0 && (
        <Note tone="stop" speaks="at once">
          <p>
            <strong>{counted(flags.length, 'red flag')}. Say what to do now before you hang up.</strong>
          </p>
          <Flags flags={flags} />
        </Note>
      )}
      <Outcome of={attempt} />
      <output className={css['open']}>
        {open === 0 ? 'Everything was asked.' : `${counted(open, 'question')} not asked yet.`}
      </output>
      <Button type="submit" tone="act" busy={attempt.busy}>
        Write the answers down
      </Button>
    </ActForm>
  );
}

function FeltFields({ about, felt, set }: { about: string; felt: Felt; set: (change: Partial<Felt>) => void }) {
  return (
    <fieldset className={css['felt']} aria-label={about}>
      <DateField
        label="Since when?"
        at="beganOn"
        near="past"
        value={felt.beganOn}
        onChange={(beganOn) => set({ beganOn })}
      />
      <ChoiceField
        label="How bad at its worst?"
        at="severity"
        value={felt.severity}
        onChange={(severity) => set({ severity })}
        options={severities}
      />
      <ChoiceField<YesNo>
        label="Is it over?"
        value={felt.over}
        onChange={(over) => set({ over })}
        options={options(['yes', 'no'] as const)}
      />
      {felt.over === 'yes' && (
        <DateField
          label="Last day of it"
          at="endedOn"
          near="past"
          value={felt.endedOn}
          onChange={(endedOn) => set({ endedOn })}
        />
      )}
    </fieldset>
  );
}
