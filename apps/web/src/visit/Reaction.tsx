import { Link } from '@tanstack/react-router';
import {
  type GradedTerm,
  gradesOf,
  infusionThen,
  reactionActions,
  reactionOutcomes,
  severityOfGrade,
} from '@twelvemonth/clinical';
import { useState } from 'react';
import { cardHash } from '../anaphylaxis/card-open.ts';
import { useUnit } from '../frame/unit.ts';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { TicksField } from '../fields/TicksField.tsx';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { timeOfDay } from '../words/dates.ts';
import type { StepProps } from './StepBody.tsx';
import { StepForm } from './StepForm.tsx';
import css from './Visit.module.css';
import { useStep } from './use-step.ts';

/** The texts of the grades are from memory of this version (docs/safety/sources.md); it stands beside every grade. */
const gradeVersion = '5.0';

/** What may be seen at the chair; what comes days to years later is written in the notes, with its own grades. */
const terms = [
  'fever',
  'flu-like symptoms',
  'infusion-related reaction',
  'anaphylaxis',
  'atrial fibrillation',
  'infusion site extravasation',
] as const satisfies readonly GradedTerm[];
type Term = (typeof terms)[number];

/** What was seen at the chair, from the door to the leaving: there on every step, open by itself once the drip stands still for it. */
export function Reaction({ data, done }: StepProps) {
  const [opened, setOpened] = useState(false);
  const { unit } = useUnit();
  const { reactions, reactionToWrite } = data;
  const open = opened || reactionToWrite;
  return (
    <section aria-label="Reaction" style={{ marginTop: '1rem' }}>
      {reactions.map(({ at, by, says }) => (
        <Note key={`${at} ${says}`} tone="caution">
          {timeOfDay(at, unit?.zone)}: {says} ({by})
        </Note>
      ))}
      {open ? (
        <div className={css['card']}>
          <ReactionForm
            data={data}
            done={(says) => {
              setOpened(false);
              done(says);
            }}
          />
        </div>
      ) : (
        <p style={{ marginTop: '0.8rem' }}>
          <Button size="big" onClick={() => setOpened(true)}>
            {reactions.length === 0 ? 'A reaction' : 'Another reaction'}
          </Button>
        </p>
      )}
    </section>
  );
}

function ReactionForm({ data, done }: StepProps) {
  const step = useStep(data, done);
  const [what, setWhat] = useState('');
  const [term, setTerm] = useState<Term>();
  const [grade, setGrade] = useState<string>();
  const [infusion, setInfusion] = useState<(typeof infusionThen)[number]>();
  const [actions, setActions] = useState<readonly (typeof reactionActions)[number][]>([]);
  const [outcome, setOutcome] = useState<(typeof reactionOutcomes)[number]>();
  const missing =
    what.trim() === ''
      ? 'What was seen?'
      : term === undefined || grade === undefined
        ? 'What it is, and its grade'
        : infusion === undefined || outcome === undefined
          ? 'The infusion, and how it ended'
          : undefined;
  return (
    <StepForm
      title="Reaction at the chair"
      help={
        <p>
          Trouble breathing, swelling, collapse: stop the drip, call for help,{' '}
          <Link to="." search hash={cardHash} resetScroll={false}>
            the anaphylaxis card
          </Link>
          . Write afterwards.
        </p>
      }
      step={step}
      timedAs="Began"
      act="Record the reaction"
      missing={missing}
      send={() =>
        step.record({
          kind: 'reaction',
          body: {
            what: what.trim(),
            severity: severityOfGrade(Number(grade)),
            term,
            grade: Number(grade),
            gradeVersion,
            infusion,
            actions,
            outcome,
          },
        })
      }
    >
      <TextField label="What was seen, in order" at="what" lines="several" value={what} onChange={setWhat} />
      <ChoiceField
        label="What it is"
        at="term"
        size="big"
        value={term}
        onChange={(chosen) => {
          setTerm(chosen);
          setGrade(undefined);
        }}
        options={terms.map((value) => ({ value }))}
      />
      {term !== undefined && (
        <ChoiceField
          label={`Grade (CTCAE ${gradeVersion})`}
          help="From 3 on nothing is given again until a prescriber has decided about it."
          at="grade"
          size="big"
          value={grade}
          onChange={setGrade}
          options={gradesOf(term).map(({ grade: number, says }) => ({
            value: String(number),
            says: `${number}: ${says}`,
          }))}
        />
      )}
      <ChoiceField
        label="The infusion"
        at="infusion"
        size="big"
        value={infusion}
        onChange={setInfusion}
        options={infusionThen.map((value) => ({ value }))}
      />
      <TicksField
        label="What was done"
        at="actions"
        size="big"
        value={actions}
        onChange={setActions}
        options={reactionActions.map((value) => ({ value }))}
      />
      <ChoiceField
        label="How it is now"
        at="outcome"
        size="big"
        value={outcome}
        onChange={setOutcome}
        options={reactionOutcomes.map((value) => ({ value }))}
      />
    </StepForm>
  );
}
