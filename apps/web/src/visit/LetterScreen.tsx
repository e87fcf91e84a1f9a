import { useQuery } from '@tanstack/react-query';
import { Link, useNavigate, useParams, useSearch } from '@tanstack/react-router';
import type { VisitView } from '@twelvemonth/exchange';
import { useServiceToday } from '../frame/unit.ts';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { Page } from '../paper/Page.tsx';
import { addressOf } from '../server/paths.ts';
import { readDocument } from '../server/request.ts';
import { visit } from '../server/queries.ts';
import { useAct } from '../server/use-act.ts';
import css from './Letter.module.css';
import { letterText, wordingOf } from './letter-text.ts';

/** The letter to the family doctor as it will go out; signing puts its very text into the notes. */
export function LetterScreen() {
  const { patient } = useParams({ from: '/people/$patient/letter' });
  const asked = useQuery(visit(patient));
  const { about } = useSearch({ from: '/people/$patient/letter' });
  const document = useQuery({
    queryKey: ['letter', { patient, about }],
    queryFn: () => readDocument('letter', patient, about),
  });
  return (
    <Page
      title="Letter to the family doctor"
      acts={
        about === 'review' ? (
          <Link to="/people/$patient/review" params={{ patient }}>
            back to the review
          </Link>
        ) : (
          <Link to="/people/$patient/visit" params={{ patient }}>
            back to the visit
          </Link>
        )
      }
    >
      <Awaited query={asked} what="the visit">
        {(data) => (
          <Awaited query={document} what="the letter">
            {(html) => <Letter data={data} html={html} asked={about} />}
          </Awaited>
        )}
      </Awaited>
    </Page>
  );
}

function Letter({ data, html, asked }: { data: VisitView; html: string; asked: 'review' | undefined }) {
  const today = useServiceToday();
  const navigate = useNavigate();
  const { patient } = data;
  const done = (): void =>
    void navigate({ to: asked === 'review' ? '/people/$patient' : '/people/$patient/visit', params: { patient } });
  const attempt = useAct(done, { [`patient/${patient}`]: data.seq });
  const about = asked ?? (data.decision?.decision === 'put off' ? 'put off' : 'dose given');
  const sign = (): void => {
    const text = letterText(html);
    const body = { to: 'family doctor', about, version: wordingOf(text), text };
    void attempt.send({ name: 'record', patient, line: { kind: 'letter', body, effectiveAt: today } });
  };
  const sent = asked === undefined && data.letterSent;
  return (
    <>
      {sent && <Note tone="done">This letter is signed and in the notes.</Note>}
      <iframe
        className={css['letter']}
        title={`Letter about ${data.name}`}
        src={addressOf('letter', { patient, about: asked })}
        sandbox=""
      />
      <Outcome of={attempt} />
      <p className="screenOnly" style={{ display: 'flex', gap: '0.8rem', flexWrap: 'wrap', marginTop: '1rem' }}>
        {!sent && (
          <Button tone="act" size="big" busy={attempt.busy} onClick={sign}>
            Sign the letter
          </Button>
        )}
        <a href={addressOf('letter', { patient, about: asked })} target="_blank" rel="noreferrer" className="finger">
          open it alone to print
        </a>
      </p>
    </>
  );
}
