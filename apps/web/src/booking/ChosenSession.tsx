import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import type { BookingCheck, PersonView, SessionView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { bookingCheck, session as sessionQuery } from '../server/queries.ts';
import { useAct } from '../server/use-act.ts';
import { Verdict } from '../verdict/Verdict.tsx';
import { WhyVerdict } from '../verdict/WhyVerdict.tsx';
import { dayInWords } from '../words/dates.ts';
import { sentence } from '../words/texts.ts';
import { NewTrouble } from './NewTrouble.tsx';

/** The session that was chosen: every requirement again for its date, then the arrival time, then the booking. */
export function ChosenSession({ person, session }: { person: PersonView; session: string }) {
  const check = useQuery(bookingCheck(person.patient, session));
  const view = useQuery(sessionQuery(session));
  return (
    <Awaited query={check} what="the check">
      {(checked) => (
        <Awaited query={view} what="the list">
          {(seen) => <Confirm person={person} check={checked} session={seen} />}
        </Awaited>
      )}
    </Awaited>
  );
}

const askers = [{ value: 'the patient' }, { value: 'the unit' }] as const;

function Confirm({ person, check, session }: { person: PersonView; check: BookingCheck; session: SessionView }) {
  const navigate = useNavigate();
  const [place, setPlace] = useState<string>();
  const [accepted, setAccepted] = useState<readonly string[]>([]);
  const [reason, setReason] = useState('');
  const [moveReason, setMoveReason] = useState('');
  const [askedBy, setAskedBy] = useState<'the patient' | 'the unit'>();
  const attempt = useAct(() => void navigate({ to: '/people/$patient', params: { patient: person.patient } }), {
    [`patient/${person.patient}`]: person.seq,
    [`session/${session.session}`]: session.seq,
  });
  const free = session.list.filter(({ who }) => who === undefined);
  const acceptable = check.causes.every((cause) => cause.acceptable);
  const unanswered = check.causes.filter(({ cause }) => !accepted.includes(cause));
  const send = (): void => {
    const accepts = check.causes.length === 0 ? {} : { accepts: { causes: accepted, reason } };
    void attempt.send(
      person.place === undefined
        ? { name: 'book', patient: person.patient, session: session.session, place: Number(place), ...accepts }
        : {
            name: 'move',
            patient: person.patient,
            from: person.place.session,
            to: session.session,
            place: Number(place),
            reason: moveReason,
            askedBy: askedBy as 'the unit',
            ...accepts,
          },
    );
  };
  return (
    <section aria-labelledby="check">
      <h2 id="check">{dayInWords(session.on)}, checked again</h2>
      <p>
        <Verdict is={check.verdict} large>
          {sentence(check.headline)}
        </Verdict>{' '}
        <span className="quiet">
          as things stand{check.insideWindow ? '; inside the window' : '; outside the window'}
        </span>
      </p>
      <WhyVerdict patient={person.patient} on={session.on} about={dayInWords(session.on)} />
      {check.steps.length > 0 && (
        <>
          <h3>For this place</h3>
          <ul>
            {check.steps.map((step) => (
              <li key={step.what}>
                {sentence(step.what)}:{' '}
                {step.latest === undefined || step.latest === step.earliest
                  ? dayInWords(step.earliest)
                  : `${dayInWords(step.earliest)} to ${dayInWords(step.latest)}`}
              </li>
            ))}
          </ul>
        </>
      )}
      <ActForm refusals={attempt.refusals} send={send}>
        <NewTrouble
          causes={check.causes}
          accepted={accepted}
          accept={setAccepted}
          reason={reason}
          giveReason={setReason}
        />
        {free.length === 0 ? (
          <p>
            <strong>No place on this list is free any more.</strong> Choose another session above.
          </p>
        ) : (
          <ChoiceField
            label="Arrival time"
            openUpTo={24}
            at="place"
            value={place}
            onChange={setPlace}
            options={free.map((each) => ({ value: String(each.place), says: each.arriveAt }))}
          />
        )}
        {person.place !== undefined && (
          <>
            <ChoiceField
              label="Who asked for the move"
              at="askedBy"
              value={askedBy}
              onChange={setAskedBy}
              options={askers}
            />
            <TextField label="Why it is moved" at="act.reason" value={moveReason} onChange={setMoveReason} />
          </>
        )}
        <Outcome of={attempt} />
        <p style={{ marginTop: '1rem' }}>
          <Button
            type="submit"
            tone="act"
            busy={attempt.busy}
            disabled={
              !free.some((each) => String(each.place) === place) ||
              unanswered.length > 0 ||
              !acceptable ||
              (person.place !== undefined && askedBy === undefined)
            }
          >
            {person.place === undefined ? 'Book this place' : 'Move to this place'}
          </Button>
        </p>
        {!acceptable && (
          <p className="quiet">
            You cannot take this on: ask a nurse, prescriber or pharmacist, settle it first, or choose another date.
          </p>
        )}
      </ActForm>
    </section>
  );
}
