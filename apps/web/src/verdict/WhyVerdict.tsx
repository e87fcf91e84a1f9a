import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import type { ReadinessWire } from '@twelvemonth/exchange';
import { useState } from 'react';
import { useServiceToday } from '../frame/unit.ts';
import { Awaited } from '../paper/Awaited.tsx';
import { Why } from '../paper/Why.tsx';
import css from '../paper/Why.module.css';
import { Working } from '../person/Working.tsx';
import { readinessOn } from '../server/queries.ts';
import { useUnitWords } from '../words/american.ts';
import { dayInWords } from '../words/dates.ts';
import { Verdict } from './Verdict.tsx';

/** The working of a verdict, fetched when it is asked for: the same sentences as on the person's page. */
export function WhyVerdict({ patient, on, about }: { patient: string; on?: string | undefined; about: string }) {
  const [open, setOpen] = useState(false);
  return (
    <details className={`${css['why']} screenOnly`} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        why?<span className="unseen"> {about}</span>
      </summary>
      {open && (
        <div className={css['inside']}>
          <Workings patient={patient} on={on} />
        </div>
      )}
    </details>
  );
}

function Workings({ patient, on }: { patient: string; on: string | undefined }) {
  const today = useServiceToday();
  const asked = useQuery(readinessOn(patient, on ?? today));
  const inUnitWords = useUnitWords();
  return (
    <Awaited query={asked} what="the working">
      {(readiness) => <Requirements readiness={inUnitWords(readiness)} patient={patient} />}
    </Awaited>
  );
}

type Requirement = ReadinessWire['requirements'][number];
const saidOn = ({ onDate, today }: Requirement): Requirement['today'] => onDate ?? today;
const holds = (each: Requirement): boolean => {
  const { verdict, nearLimit } = saidOn(each);
  return (verdict === 'ready' || verdict === 'does not apply') && !nearLimit;
};

function Requirements({ readiness, patient }: { readiness: ReadinessWire; patient: string }) {
  const inOrder = [
    ...readiness.requirements.filter((each) => !holds(each)),
    ...readiness.requirements.filter((each) => holds(each)),
  ];
  return (
    <>
      <p>
        {dayInWords(readiness.on)}, as things stand: {readiness.headline}
      </p>
      <ul style={{ listStyle: 'none', padding: 0 }}>
        {inOrder.map((each) => (
          <li key={each.id} style={{ marginBottom: '0.3rem' }}>
            <Verdict is={saidOn(each).verdict}>
              {each.title}: {holds(each) ? saidOn(each).verdict : saidOn(each).cause}
            </Verdict>
            <Why about={each.title} word="working" open={!holds(each)}>
              <p>{(each.workingOnDate ?? each.working).says}</p>
              <Working working={each.workingOnDate ?? each.working} requirement={each} patient={patient} />
            </Why>
          </li>
        ))}
      </ul>
      <p className="small quiet">
        {readiness.cautions.join(' ')} Computed under protocol {readiness.protocolVersion}.{' '}
        <Link to="/people/$patient" params={{ patient }}>
          The whole page
        </Link>
      </p>
    </>
  );
}
