import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { NoUnitYet } from '../frame/NoUnitYet.tsx';
import { useUnit } from '../frame/unit.ts';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Empty } from '../paper/Empty.tsx';
import { Page } from '../paper/Page.tsx';
import type { AnswerOf } from '../server/paths.ts';
import { recall } from '../server/queries.ts';
import { RecallTable } from './RecallTable.tsx';

export function RecallScreen() {
  const { unit } = useUnit();
  const asked = useQuery({ ...recall(unit?.unit), enabled: unit !== undefined });
  return (
    <Page
      title="Recall"
      sub="Who is due or overdue, who waits for a review, who is first in line. Nobody is called by a timer: a person rings and writes it down."
      acts={
        <>
          <Link to="/recall/cohorts">who fell out where</Link>
          <Button onClick={() => window.print()}>Print</Button>
        </>
      }
    >
      {unit === undefined ? (
        <NoUnitYet />
      ) : (
        <Awaited query={asked} what="the recall list">
          {(data) => <Lists data={data} />}
        </Awaited>
      )}
    </Page>
  );
}

function Lists({ data }: { data: AnswerOf<'recall'> }) {
  const overdue = data.people.filter(({ daysPastDue }) => (daysPastDue ?? 0) > 0);
  const due = data.people.filter(({ daysPastDue }) => (daysPastDue ?? 0) <= 0);
  if (data.people.length + data.inReview.length + data.firstInLine.length === 0) {
    return <Empty says="Nobody is due, in review or first in line." />;
  }
  return (
    <>
      <RecallTable id="first" title="First in line" rows={data.firstInLine} />
      <RecallTable id="overdue" title="Past their due date" rows={overdue} />
      <RecallTable id="due" title="Due soon" rows={due} />
      <RecallTable id="review" title="In review" rows={data.inReview} />
    </>
  );
}
