import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { Button } from '../paper/Button.tsx';
import { buttonLook } from '../paper/button-look.ts';
import { Note } from '../paper/Note.tsx';
import { person } from '../server/queries.ts';
import { dotted, unbroken } from '../words/texts.ts';
import { AdviceCallForm } from './AdviceCallForm.tsx';
import css from './Call.module.css';
import { useCallOpen } from './call-open.ts';
import { useListedToday } from './listed-today.ts';
import { type Known, WhoIsIt } from './WhoIsIt.tsx';

type About = Known | 'not found';

/**
 * Somebody rings while something else is being done. What is typed here stays until it is written down, also when the card or
 * another screen is opened in between; begun on a person's page it is about them, and goes on being about them.
 */
export function CallPlace() {
  const open = useCallOpen();
  const onPageOf = useParams({ strict: false }).patient;
  const [wasOpen, setWasOpen] = useState(false);
  const [about, setAbout] = useState<About>();
  const [isTouched, setTouched] = useState(false);
  const [said, setSaid] = useState<string>();
  const [calls, setCalls] = useState(0);
  const anew = (): void => {
    setAbout(undefined);
    setTouched(false);
    setSaid(undefined);
    setCalls(calls + 1);
  };
  if (open !== wasOpen) {
    setWasOpen(open);
    if (open && about === undefined && onPageOf !== undefined) setAbout({ patient: onPageOf, name: '' });
    if (!open && (said !== undefined || !isTouched)) anew();
  }
  if (!open && !isTouched) return null;
  return (
    <section aria-labelledby="call-title">
      <div style={{ display: 'flex', flexWrap: 'wrap', gap: '0.6rem 1.5rem', justifyContent: 'space-between' }}>
        <h1 id="call-title">Advice call</h1>
        <Link to="." search hash="" resetScroll={false} className={buttonLook('quiet')}>
          Back to where you were
        </Link>
      </div>
      {said !== undefined ? (
        <>
          <Note tone="done" speaks="politely">
            {said}
          </Note>
          <p style={{ marginTop: '1rem' }}>
            <Button onClick={anew}>Another call</Button>
          </p>
        </>
      ) : about === undefined ? (
        <WhoIsIt choose={setAbout} notFound={() => setAbout('not found')} />
      ) : (
        <>
          <AboutWhom about={about} />
          <p>
            <Button tone="plain" onClick={anew}>
              {isTouched ? 'Drop this call and begin another' : 'About somebody else'}
            </Button>
          </p>
          <AdviceCallForm
            key={`${calls} ${about === 'not found' ? about : about.patient}`}
            about={about === 'not found' ? undefined : about}
            touched={() => setTouched(true)}
            done={setSaid}
          />
        </>
      )}
    </section>
  );
}

/** Two identifiers stand over the form, whichever way it was opened. */
function AboutWhom({ about }: { about: About }) {
  if (about === 'not found') return <p className={css['about']}>About somebody not found here</p>;
  return <Named about={about} />;
}

function Named({ about }: { about: Known }) {
  const asked = useQuery(person(about.patient));
  const { data } = asked;
  const listed = useListedToday(about.patient);
  return (
    <p className={css['about']}>
      {data === undefined
        ? dotted(
            about.name === '' ? (listed?.name ?? 'this person') : about.name,
            listed !== undefined && unbroken(listed.number),
          )
        : dotted(data.name, `born ${data.bornInWords}`, unbroken(data.number))}
    </p>
  );
}
