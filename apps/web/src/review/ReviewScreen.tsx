import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import type { ReviewView } from '@twelvemonth/exchange';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Page } from '../paper/Page.tsx';
import { review } from '../server/queries.ts';
import { shortDay } from '../words/dates.ts';
import { dotted, sentence, unbroken } from '../words/texts.ts';
import { Criteria } from './Criteria.tsx';
import { Gathered } from './Gathered.tsx';
import css from './Review.module.css';
import { ReviewForm } from './ReviewForm.tsx';

/** The review of a course on one sheet: why now, what is known, what is missing, what each decision would lead to. */
export function ReviewScreen() {
  const { patient } = useParams({ from: '/people/$patient/review' });
  const asked = useQuery(review(patient));
  return (
    <Awaited query={asked} what="the review">
      {(data) => <Sheet key={data.patient} data={data} />}
    </Awaited>
  );
}

function Sheet({ data }: { data: ReviewView }) {
  const { patient } = data;
  return (
    <Page
      title="Review of the course"
      sub={dotted(data.name, `born ${data.born}`, unbroken(data.number), sentence(data.standing))}
      acts={
        <>
          <Link to="/people/$patient" params={{ patient }}>
            back to the person
          </Link>
          {data.reviewed && (
            <Link to="/people/$patient/letter" params={{ patient }} search={{ about: 'review' }}>
              letter about the newest review
            </Link>
          )}
          <Button onClick={() => window.print()}>Print</Button>
        </>
      }
    >
      <Note tone={data.needed === undefined ? 'quiet' : 'caution'}>
        {data.needed === undefined ? (
          <p>No review is asked for now. One may be decided all the same.</p>
        ) : (
          <p>
            <strong>Why now:</strong> {data.needed.says}, since {shortDay(data.needed.since)}. No further dose is due
            until it is decided.
          </p>
        )}
        {data.events.length > 1 && (
          <ul>
            {data.events.map(({ says, entry }) => (
              <li key={entry}>{says}</li>
            ))}
          </ul>
        )}
      </Note>
      {data.gaps.length > 0 && (
        <section aria-labelledby="missing">
          <h2 id="missing">What is missing</h2>
          <ul className={css['gaps']}>
            {data.gaps.map(({ says, record }) => (
              <li key={says}>
                {says}{' '}
                <Link className="screenOnly" to="/people/$patient" params={{ patient }} search={{ record }}>
                  write it<span className="unseen">: {says}</span>
                </Link>
              </li>
            ))}
          </ul>
        </section>
      )}
      <section aria-labelledby="known">
        <h2 id="known">What is known</h2>
        <div className={css['known']}>
          {data.sections.map((section) => (
            <Gathered key={section.title} section={section} patient={patient} />
          ))}
        </div>
      </section>
      <Criteria
        id="failure"
        title="Has the treatment failed?"
        says={data.failure.says}
        criteria={data.failure.criteria}
        patient={patient}
      />
      <Criteria
        id="carrying-on"
        title="What speaks for carrying on"
        says="Each one met speaks for more doses; none decides."
        criteria={data.carryingOn}
        patient={patient}
      />
      <ReviewForm data={data} />
      <div className="paperOnly">
        <h2>Decision</h2>
        <p>
          Carry on to ___ doses · planned break until ____________ · other treatment ____________ from ____________ ·
          stop
        </p>
        <p>Reason ________________________________________________________________________</p>
        <p>Decided by ______________________________ as specialist / other prescriber, date ____________</p>
      </div>
      <p className="quiet small">
        {data.unit} · protocol {data.protocolVersion} · {data.cautions.join(' ')}
      </p>
    </Page>
  );
}
