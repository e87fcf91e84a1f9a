import { useQuery } from '@tanstack/react-query';
import { useNavigate, useParams, useSearch } from '@tanstack/react-router';
import type { PersonView } from '@twelvemonth/exchange';
import { Awaited } from '../paper/Awaited.tsx';
import { Note } from '../paper/Note.tsx';
import { Page } from '../paper/Page.tsx';
import { person } from '../server/queries.ts';
import { useUnitWords } from '../words/american.ts';
import { Course } from './Course.tsx';
import { Entries } from './Entries.tsx';
import { PersonCautions } from './PersonCautions.tsx';
import { ReadinessSheet } from './ReadinessSheet.tsx';
import { Reading } from './Reading.tsx';
import { RecordPanel } from './record/RecordPanel.tsx';
import { StandingLine } from './StandingLine.tsx';
import { headerWords } from './header-words.ts';

export function PersonScreen() {
  const { patient } = useParams({ from: '/people/$patient' });
  const asked = useQuery(person(patient));
  return (
    <Awaited query={asked} what="the notes">
      {(data) => <Sheet key={data.patient} data={data} />}
    </Awaited>
  );
}

function Sheet({ data: asked }: { data: PersonView }) {
  const readiness = useUnitWords()(asked.readiness);
  const data = readiness === undefined ? asked : { ...asked, readiness };
  const search = useSearch({ from: '/people/$patient' });
  const navigate = useNavigate({ from: '/people/$patient' });
  const close = (): void => void navigate({ search: ({ record: _r, correct: _c, about: _a, ...rest }) => rest });
  return (
    <Page title={data.name} tab="A person" sub={headerWords(data)}>
      <PersonCautions data={data} />
      <StandingLine data={data} />
      {search.record !== undefined && (
        <RecordPanel
          key={`${search.record} ${search.correct}`}
          person={data}
          record={search.record}
          correct={search.correct}
          about={search.about}
          close={close}
        />
      )}
      {data.readiness === undefined ? (
        <Note tone="caution">
          <p>
            <strong>Readiness cannot be told.</strong> {data.noReadiness}
          </p>
        </Note>
      ) : (
        <ReadinessSheet data={data} readiness={data.readiness} />
      )}
      {data.course !== undefined && (
        <Course patient={data.patient} course={data.course} today={data.readiness?.today} />
      )}
      {data.reading !== undefined && <Reading parts={data.reading} />}
      <Entries data={data} />
    </Page>
  );
}
