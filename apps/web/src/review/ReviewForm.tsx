import { type Day, type ReviewBasis, consequencesOf, day, entryKinds } from '@twelvemonth/clinical';
import type { ActBody, ReviewView } from '@twelvemonth/exchange';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { DateField } from '../fields/DateField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { useActingRole } from '../frame/acting-role.ts';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';
import { shortDay } from '../words/dates.ts';
import css from './Review.module.css';
import { type Decision, type Outcomes, bodyOf, choiceOf, nothingDecided, outcomeWords } from './decision.ts';

const usualTriggers = 'a fracture, new back pain, lost height, a new steroid, bone lost on a scan, markers up';

const optionalDay = (date: string | undefined): Day | undefined => (date === undefined ? undefined : day(date));
const basisOf = ({ basis }: ReviewView): ReviewBasis => ({
  ...basis,
  today: day(basis.today),
  lastDose: optionalDay(basis.lastDose),
  anniversary: optionalDay(basis.anniversary),
  recallLeadDays: basis.recallLeadDays,
  breakUntil: optionalDay(basis.breakUntil),
  breakLatest: day(basis.breakLatest),
  booked: optionalDay(basis.booked),
});

/** The decision, with what it leads to said before it is signed. Nothing is preset that a prescriber has to decide. */
export function ReviewForm({ data }: { data: ReviewView }) {
  const { roles } = useActingRole();
  const navigate = useNavigate();
  const { patient, basis } = data;
  const [decision, setDecision] = useState<Decision>({ ...nothingDecided, triggers: usualTriggers });
  const attempt = useAct(() => void navigate({ to: '/people/$patient', params: { patient } }), {
    [`patient/${patient}`]: data.seq,
  });
  if (!entryKinds['course-review'].writes.some((role) => roles.includes(role)))
    return (
      <section aria-labelledby="decision">
        <h2 id="decision">Decision</h2>
        <Note>A prescriber decides and signs. This sheet can be printed for them.</Note>
      </section>
    );
  const set = (change: Partial<Decision>): void => setDecision((before) => ({ ...before, ...change }));
  const choose = (outcome: Outcomes | undefined): void =>
    set({ outcome, reviewOn: decision.reviewOn ?? (outcome === 'planned break' ? basis.breakUntil : undefined) });
  const choice = choiceOf(decision);
  const send = (): void => {
    const line = { kind: 'course-review', body: bodyOf(decision), effectiveAt: data.today };
    void attempt.send({ name: 'record', patient, line } as ActBody['act']);
  };
  const onSteroid = decision.outcome === 'planned break' && basis.steroids.length > 0;
  const goesOn = decision.outcome === 'carry on' || decision.outcome === 'new course';
  return (
    <section aria-labelledby="decision" className={`screenOnly ${css['form']}`}>
      <h2 id="decision">Decision</h2>
      <ActForm refusals={attempt.refusals} send={send}>
        <Outcome of={attempt} />
        <ChoiceField
          label="What is decided"
          at="outcome"
          value={decision.outcome}
          onChange={choose}
          options={outcomeWords}
        />
        {decision.outcome === 'carry on' && (
          <NumberField
            label="Up to how many doses in this course"
            help={`${basis.given} given so far.`}
            at="toDoses"
            unit="doses"
            value={decision.toDoses}
            onChange={(toDoses) => set({ toDoses })}
          />
        )}
        {decision.outcome === 'new course' && (
          <NumberField
            label="Planned doses of the new course"
            at="plannedDoses"
            unit="doses"
            value={decision.plannedDoses}
            onChange={(plannedDoses) => set({ plannedDoses })}
          />
        )}
        {decision.outcome === 'planned break' && (
          <>
            {onSteroid && (
              <Note tone="stop">
                No planned break while on {basis.steroids.join(' and ')}: the protocol allows none.
              </Note>
            )}
            <DateField
              label="Reviewed on"
              help={`At the latest ${shortDay(basis.breakLatest)}.${basis.lastDose === undefined ? '' : ` The break is counted from the last infusion, ${shortDay(basis.lastDose)}.`}`}
              at="reviewOn"
              value={decision.reviewOn}
              onChange={(reviewOn) => set({ reviewOn })}
            />
            <TextField
              label="Sooner if"
              at="triggers"
              lines="several"
              value={decision.triggers}
              onChange={(triggers) => set({ triggers })}
            />
          </>
        )}
        {decision.outcome === 'other treatment' && (
          <>
            <TextField label="To which treatment" at="to" value={decision.to} onChange={(to) => set({ to })} />
            <DateField
              label="It starts on"
              help="A promise with a date: nobody is moved on without one."
              at="dueOn"
              value={decision.dueOn}
              onChange={(dueOn) => set({ dueOn })}
            />
          </>
        )}
        {basis.needsSpecialist && goesOn && (
          <Note tone="caution">
            {basis.consecutive} doses in a row without a planned break: only a specialist may let it go on.
          </Note>
        )}
        <ChoiceField
          label="Decided as"
          at="capacity"
          value={decision.capacity}
          onChange={(capacity) => set({ capacity })}
          options={[{ value: 'specialist' }, { value: 'other prescriber' }]}
        />
        <TextField
          label="Who decided, if not you"
          at="decidedBy"
          optional
          value={decision.decidedBy}
          onChange={(decidedBy) => set({ decidedBy })}
        />
        <TextField
          label="Reason"
          at="reason"
          lines="several"
          value={decision.reason}
          onChange={(reason) => set({ reason })}
        />
        <div className={css['follows']} aria-live="polite">
          <h3>What follows</h3>
          {choice === undefined ? (
            <p className="quiet">Said here once a decision is complete, before it is signed.</p>
          ) : (
            <ul>
              {consequencesOf(basisOf(data), choice).map((says) => (
                <li key={says}>{says}</li>
              ))}
            </ul>
          )}
        </div>
        <Button type="submit" tone="act" size="big" busy={attempt.busy}>
          Sign the review
        </Button>
      </ActForm>
    </section>
  );
}
