import { useQuery } from '@tanstack/react-query';
import { Link, useNavigate, useParams, useSearch } from '@tanstack/react-router';
import type { VisitStep, VisitView } from '@twelvemonth/exchange';
import { useEffect, useState } from 'react';
import { useUnit } from '../frame/unit.ts';
import { Awaited } from '../paper/Awaited.tsx';
import { Note } from '../paper/Note.tsx';
import { HeldAt } from '../offline/HeldAt.tsx';
import { withWaiting } from '../offline/waiting-steps.ts';
import { useWaiting } from '../offline/waiting.ts';
import { AtPharmacy } from '../pharmacy/AtPharmacy.tsx';
import { callScreen } from '../paper/screen-name.ts';
import { visit } from '../server/queries.ts';
import { PutOffAfterAll } from './PutOffAfterAll.tsx';
import { Reaction } from './Reaction.tsx';
import { StepBody } from './StepBody.tsx';
import { StepDone } from './StepDone.tsx';
import { StoppedPack } from './StoppedPack.tsx';
import { StepList } from './StepList.tsx';
import { VisitHeader } from './VisitHeader.tsx';
import css from './Visit.module.css';

export function VisitScreen() {
  const { patient } = useParams({ from: '/people/$patient/visit' });
  const asked = useQuery(visit(patient));
  const waiting = useWaiting();
  return (
    <Awaited query={asked} what="the visit">
      {(data) => <Chairside key={data.patient} data={withWaiting(data, waiting)} />}
    </Awaited>
  );
}

/** One visit at the chairside: the step that is due fills the screen; what is done and what comes stands beside it. */
function Chairside({ data }: { data: VisitView }) {
  const search = useSearch({ from: '/people/$patient/visit' });
  const navigate = useNavigate({ from: '/people/$patient/visit' });
  const [said, setSaid] = useState<string>();
  /**
   * A step that goes on after it was recorded (a try that failed) begins with an empty form: the same press twice is not two tries.
   * Only that step's: the next one may be on the screen, and half filled in, before the answer to the press is here. The drip is
   * one step and several forms, each begun anew by what the notes say, not by the answer.
   */
  const [recorded, setRecorded] = useState<{ readonly step: string | undefined; readonly times: number }>();
  const { unit } = useUnit();
  useEffect(() => {
    callScreen(`Visit of ${data.name}`, 'Visit');
  }, [data.name]);
  const shown: VisitStep | undefined = data.steps.find(({ step }) => step === (search.step ?? data.current));
  const told = (says: string): void => {
    setSaid(says);
    // To where one is already the router would go back to where it was scrolled to: the next step begins under the person's name.
    if (search.step !== undefined) void navigate({ search: {} });
    window.scrollTo({ top: 0 });
  };
  const pressed = shown?.step;
  const done = (says: string): void => {
    setRecorded((before) => ({ step: pressed, times: (before?.times ?? 0) + 1 }));
    told(says);
  };
  const again = recorded?.step === pressed && pressed !== 'infusion' ? (recorded?.times ?? 0) : 0;
  return (
    <>
      <VisitHeader data={data} />
      <div className={css['visit']}>
        <StepList data={data} shown={shown?.step} />
        <div>
          {said !== undefined && (
            <div style={{ marginBottom: '0.8rem' }}>
              <Note tone="done" speaks="politely">
                {said}
              </Note>
            </div>
          )}
          {data.stoppedPack !== undefined && <StoppedPack stopped={data.stoppedPack} />}
          {data.held !== undefined && <HeldAt held={data.held} zone={unit?.zone} />}
          {data.atPharmacy?.holds === true && (!isGiven(data) || isDoubtedWhileItRuns(data)) && (
            <div style={{ marginBottom: '0.8rem' }}>
              <AtPharmacy state={data.atPharmacy} runs={isGiven(data)} />
            </div>
          )}
          {data.illnessToWrite && (
            <div style={{ marginBottom: '0.8rem' }}>
              <Note tone="caution">
                They are unwell, and no illness is in the notes. What is told on the checklist holds later dates until
                “well since”; a reason for putting off does not:{' '}
                <Link to="/people/$patient" params={{ patient: data.patient }} search={{ record: 'illness' }}>
                  write it in the notes
                </Link>
                .
              </Note>
            </div>
          )}
          <section className={css['card']} aria-label={shown?.step ?? 'the visit'}>
            {shown === undefined ? (
              <Over data={data} />
            ) : shown.state === 'done' ? (
              <StepDone data={data} step={shown} />
            ) : (
              <StepBody key={`${shown.step} ${again}`} data={data} step={shown} done={done} />
            )}
          </section>
          {data.decision?.decision === 'go' && (!isGiven(data) || isNothingGiven(data)) && shown !== undefined && (
            <PutOffAfterAll data={data} done={told} />
          )}
          {data.steps[0]?.state === 'done' && <Reaction data={data} done={told} />}
          {data.letterReady && shown !== undefined && <LetterLink data={data} />}
        </div>
      </div>
      <div style={{ marginTop: '1.6rem' }}>
        <Note>{data.cautions.join(' ')}</Note>
      </div>
    </>
  );
}

/** The drip has begun, or the injection is in. */
const isGiven = ({ infusion, steps }: VisitView): boolean =>
  infusion !== undefined || steps.some(({ step, state }) => step === 'injection' && state === 'done');

/** The drip was ended before anything ran in: what comes next is still to be said. */
const isNothingGiven = ({ infusion }: VisitView): boolean =>
  infusion?.finishedAt !== undefined && infusion.milliliters === 0;

/** A pharmacist who asks or refuses now is heard at the chair, too. */
const isDoubtedWhileItRuns = ({ infusion, atPharmacy }: VisitView): boolean =>
  infusion !== undefined &&
  infusion.finishedAt === undefined &&
  (atPharmacy?.is === 'refused' || atPharmacy?.is === 'asked');

const LetterLink = ({ data }: { data: VisitView }) => (
  <p style={{ marginTop: '1rem' }}>
    <Link to="/people/$patient/letter" params={{ patient: data.patient }} className="finger">
      {data.letterSent ? 'The letter to the family doctor is signed: read it' : 'Letter to the family doctor'}
    </Link>
  </p>
);

function Over({ data }: { data: VisitView }) {
  return (
    <>
      <h2>The visit is over</h2>
      {data.decision !== undefined && <p>{data.decision.says}</p>}
      {data.infusion?.finishedAt !== undefined && <p>Given: {data.infusion.says}.</p>}
      {data.letterReady && <LetterLink data={data} />}
      <p style={{ marginTop: '1rem' }}>
        <Link to="/" className="finger">
          Back to today
        </Link>
      </p>
    </>
  );
}
