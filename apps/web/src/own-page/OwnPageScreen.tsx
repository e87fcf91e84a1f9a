import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import type { OwnPageView } from '@twelvemonth/exchange';
import { useMay } from '../frame/may.ts';
import { Awaited } from '../paper/Awaited.tsx';
import { Page } from '../paper/Page.tsx';
import { addressOf } from '../server/paths.ts';
import { ownPage } from '../server/queries.ts';
import { dotted, unbroken } from '../words/texts.ts';
import { FromPaper } from './FromPaper.tsx';
import { HandOver } from './HandOver.tsx';
import css from './OwnPage.module.css';
import { Told } from './Told.tsx';

/** What a person can open and answer at home, on a page of their own or on paper, and what they told us. */
export function OwnPageScreen() {
  const { patient } = useParams({ from: '/people/$patient/own-page' });
  const asked = useQuery(ownPage(patient));
  return (
    <Awaited query={asked} what="the own page">
      {(data) => (
        <Page
          title="Own page and questions"
          sub={dotted(data.name, `born ${data.born}`, unbroken(data.number))}
          acts={
            <Link to="/people/$patient" params={{ patient }}>
              back to the person
            </Link>
          }
        >
          <Sheet data={data} />
        </Page>
      )}
    </Awaited>
  );
}

function Sheet({ data }: { data: OwnPageView }) {
  const may = useMay();
  const { patient } = data;
  return (
    <div className={css['columns']}>
      <Told data={data} />
      <section aria-labelledby="page-of-their-own">
        <h2 id="page-of-their-own">A page of their own</h2>
        <p>
          Their dates, how to get ready, a calendar file and eight questions about how they are. It opens by an address
          and their date of birth. What they answer is asked again on the day: it clears nothing.
        </p>
        <HandOver data={data} allowed={may('handOverPage')} />
      </section>
      <section aria-labelledby="on-paper">
        <h2 id="on-paper">The same questions on paper</h2>
        <p>
          <a href={addressOf('questionsOnPaper', { patient })} target="_blank" rel="noreferrer" className="finger">
            open the questions to print
          </a>
        </p>
        {may('handOverPage') && <FromPaper key={data.seq} data={data} />}
      </section>
    </div>
  );
}
