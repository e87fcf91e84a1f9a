import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { registrants } from '@twelvemonth/clinical';
import type { SessionDayView, VisitView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { useUnit } from '../frame/unit.ts';
import { Awaited } from '../paper/Awaited.tsx';
import { Note } from '../paper/Note.tsx';
import { Page } from '../paper/Page.tsx';
import { sessionDay, visit } from '../server/queries.ts';
import { FromPaperPlace } from '../visit/from-paper.ts';
import { StepBody } from '../visit/StepBody.tsx';
import css from '../visit/Visit.module.css';
import { longDay, timeOfDay } from '../words/dates.ts';
import { dotted, sentence } from '../words/texts.ts';
import { PaperFinish } from './PaperFinish.tsx';

/** One person's card typed in, step by step in its order; a step that is in the notes already is not asked again. */
export function PaperOfPersonScreen() {
  const { session, patient } = useParams({ from: '/sessions/$session/paper/$patient' });
  const day = useQuery(sessionDay(session));
  return (
    <Awaited query={day} what="the session">
      {(of) => <OfDay of={of} patient={patient} />}
    </Awaited>
  );
}

function OfDay({ of, patient }: { of: SessionDayView; patient: string }) {
  const asked = useQuery(visit(patient, of.on));
  const checkers = of.staff.filter(({ roles }) => registrants.some((role) => roles.includes(role)));
  return (
    <Awaited query={asked} what="the visit">
      {(data) => (
        <FromPaperPlace value={{ checkers }}>
          <Card key={patient} data={{ ...data, session: data.session ?? of.session }} session={of.session} />
        </FromPaperPlace>
      )}
    </Awaited>
  );
}

function Card({ data, session }: { data: VisitView; session: string }) {
  const { unit } = useUnit();
  const [said, setSaid] = useState<string>();
  const done = data.steps.filter(({ state }) => state === 'done');
  const next = data.steps.find(({ step }) => step === data.current);
  return (
    <Page
      title={`From paper: ${data.name}`}
      tab="From paper"
      sub={dotted(longDay(data.on), `born ${data.bornInWords}`, data.number, data.allergies)}
      acts={
        <Link to="/sessions/$session/paper" params={{ session }}>
          everybody's sheets
        </Link>
      }
    >
      {done.length > 0 && (
        <section aria-labelledby="in-the-notes">
          <h2 id="in-the-notes">In the notes already: not typed again</h2>
          <ul>
            {done.map(({ step, at, by }) => (
              <li key={step}>
                {sentence(step)}{' '}
                <span className="quiet">{dotted(at !== undefined && timeOfDay(at, unit?.zone), by)}</span>
              </li>
            ))}
          </ul>
          <Link to="/people/$patient" params={{ patient: data.patient }} hash="notes" className="finger">
            One is wrong? Correct or withdraw it in the notes
          </Link>
        </section>
      )}
      {done.length === 0 && (
        <p>
          <Link to="/people/$patient" params={{ patient: data.patient }} search={{ record: 'call' }} className="finger">
            They did not come? Write down what was said
          </Link>
        </p>
      )}
      {said !== undefined && (
        <Note tone="done" speaks="politely">
          {said}
        </Note>
      )}
      <section className={css['card']} aria-label={next?.step ?? 'the card'}>
        {next === undefined ? (
          <p>Every step of this visit is in the notes.</p>
        ) : data.infusion !== undefined && next.step === 'infusion' ? (
          <PaperFinish key="finish" data={data} done={setSaid} />
        ) : (
          <StepBody key={next.step} data={data} step={next} done={setSaid} />
        )}
      </section>
    </Page>
  );
}
