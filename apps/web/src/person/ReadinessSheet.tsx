import { useQuery } from '@tanstack/react-query';
import { useNavigate, useSearch } from '@tanstack/react-router';
import { windowBar } from '@twelvemonth/charts';
import type { PersonView, ReadinessWire } from '@twelvemonth/exchange';
import { Picture } from '../drawing/Picture.tsx';
import { DateField } from '../fields/DateField.tsx';
import { Note } from '../paper/Note.tsx';
import { Trouble } from '../paper/Trouble.tsx';
import { Why } from '../paper/Why.tsx';
import { readinessOn } from '../server/queries.ts';
import { Verdict } from '../verdict/Verdict.tsx';
import { useUnitWords } from '../words/american.ts';
import { dayInWords } from '../words/dates.ts';
import { without } from '../words/without.ts';
import { NextSteps } from './NextSteps.tsx';
import css from './Person.module.css';
import { RequirementsTable } from './RequirementsTable.tsx';
import { WindowWords } from './WindowWords.tsx';
import { windowBarData } from './window-bar-data.ts';

/** When the dose may be given and why: the bar, what must hold today and on a date, what next. */
export function ReadinessSheet({ data, readiness }: { data: PersonView; readiness: ReadinessWire }) {
  const { on } = useSearch({ from: '/people/$patient' });
  const navigate = useNavigate({ from: '/people/$patient' });
  const inUnitWords = useUnitWords();
  const asked = useQuery({ ...readinessOn(data.patient, on ?? readiness.on), enabled: on !== undefined });
  const shown = on === undefined ? readiness : (inUnitWords(asked.data) ?? readiness);
  const otherDate = shown.on !== shown.today;
  return (
    <>
      <Picture
        draw={(width) => windowBar(windowBarData(readiness, data.place), { id: `window-${data.patient}`, width })}
      />
      <WindowWords readiness={readiness} />
      <section aria-labelledby="what-must-hold">
        <div className={css['mustHold']}>
          <h2 id="what-must-hold">What must hold for a dose</h2>
          <div className="screenOnly">
            <DateField
              label="Ask about another date"
              value={on}
              onChange={(date) =>
                void navigate({
                  search: (before) => (date === undefined ? without(before, 'on') : { ...before, on: date }),
                  replace: true,
                })
              }
            />
          </div>
        </div>
        {otherDate && (
          <p>
            <Verdict is={shown.verdictOn}>
              {dayInWords(shown.on)}, as things stand: {shown.headlineOn}
            </Verdict>
          </p>
        )}
        {on !== undefined && asked.error !== null && <Trouble error={asked.error} />}
        <RequirementsTable readiness={shown} />
        {shown.askedOnTheDay.length > 0 && (
          <Why about="whatever the notes say" word={`asked on the day itself (${shown.askedOnTheDay.length})`}>
            <ul>
              {shown.askedOnTheDay.map((question) => (
                <li key={question}>{question}</li>
              ))}
            </ul>
          </Why>
        )}
      </section>
      <NextSteps data={data} readiness={readiness} />
      <div style={{ marginTop: '1rem' }}>
        <Note>
          Computed under protocol “{shown.protocolVersion}”. It supports and never replaces the judgement of a licensed
          prescriber and your local protocol. {shown.cautions.join(' ')}
        </Note>
      </div>
    </>
  );
}
