import { useQuery } from '@tanstack/react-query';
import { Link, useNavigate, useSearch } from '@tanstack/react-router';
import type { CohortView } from '@twelvemonth/exchange';
import { NoUnitYet } from '../frame/NoUnitYet.tsx';
import { useUnit } from '../frame/unit.ts';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Empty } from '../paper/Empty.tsx';
import { Page } from '../paper/Page.tsx';
import { cohort } from '../server/queries.ts';
import { shortDay } from '../words/dates.ts';
import { counted } from '../words/texts.ts';
import css from './Cohort.module.css';
import { Curve } from './Curve.tsx';

/** Of everybody who began in a year: who came for the second and third dose, who fell out where, and the people behind each step. */
export function CohortScreen() {
  const { unit } = useUnit();
  const { year } = useSearch({ from: '/recall/cohorts' });
  const asked = useQuery({ ...cohort(unit?.unit, year), enabled: unit !== undefined });
  return (
    <Page
      title="Who fell out where"
      sub="Of those who had their first dose here. The largest loss is after the first."
      acts={
        <>
          <Link to="/recall">back to the recall</Link>
          <Button onClick={() => window.print()}>Print</Button>
        </>
      }
    >
      {unit === undefined ? (
        <NoUnitYet />
      ) : (
        <Awaited query={asked} what="who fell out where">
          {(data) => <Sheet data={data} />}
        </Awaited>
      )}
    </Page>
  );
}

function Sheet({ data }: { data: CohortView }) {
  const { years, year, began, curves, staying, today } = data;
  const navigate = useNavigate({ from: '/recall/cohorts' });
  if (years.length === 0) return <Empty says="Nobody has had a first dose here yet." />;
  return (
    <>
      <p className={css['choose']}>
        <label htmlFor="year">Began in</label>
        <select
          id="year"
          value={year ?? ''}
          onChange={(event) => {
            const chosen = event.target.value;
            void navigate({ search: chosen === '' ? {} : { year: chosen }, replace: true });
          }}
        >
          <option value="">any year</option>
          {years.map((one) => (
            <option key={one.year} value={one.year}>
              {one.year} ({one.began})
            </option>
          ))}
        </select>
        <span>
          {counted(began, 'person', 'people')}, as the notes stand on {shortDay(today)}
        </span>
      </p>
      {curves.map((curve) => (
        <Curve key={curve.title} curve={curve} />
      ))}
      {staying !== undefined && <Curve curve={staying} />}
    </>
  );
}
