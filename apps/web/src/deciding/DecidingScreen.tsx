import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { WORDING, sheetOf } from '@twelvemonth/counselling';
import type { DecidingView } from '@twelvemonth/exchange';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Page } from '../paper/Page.tsx';
import { deciding } from '../server/queries.ts';
import { longDay } from '../words/dates.ts';
import { dotted, sentence, unbroken } from '../words/texts.ts';
import { Choices } from './Choices.tsx';
import css from './Deciding.module.css';
import { Feeling } from './Feeling.tsx';
import { FoundInTrial } from './FoundInTrial.tsx';
import { LastTime } from './LastTime.tsx';
import { RareHarms } from './RareHarms.tsx';
import { Sources } from './Sources.tsx';
import { Talk } from './Talk.tsx';
import { WhatMatters } from './WhatMatters.tsx';
import { YourRisk } from './YourRisk.tsx';
import { baselines, personFacts } from './facts.ts';

/** Nurse and person side by side: what matters, the risk, the choices both ways, what it may feel like, what was decided. */
export function DecidingScreen() {
  const { patient } = useParams({ from: '/people/$patient/deciding' });
  const asked = useQuery(deciding(patient));
  return (
    <Awaited query={asked} what="the sheet for deciding">
      {(data) => <Sheet key={data.patient} data={data} />}
    </Awaited>
  );
}

function Sheet({ data }: { data: DecidingView }) {
  const { patient, unit } = data;
  const sheet = sheetOf(personFacts(data), baselines(data));
  return (
    <div className={css['sheet']}>
      <Page
        title="Deciding together"
        sub={dotted(data.name, `born ${data.born}`, unbroken(data.number), sentence(data.standing))}
        acts={
          <>
            <Link to="/people/$patient" params={{ patient }}>
              back to the person
            </Link>
            <Button onClick={() => window.print()}>Print</Button>
          </>
        }
      >
        {unit.demo && <p className="paperOnly">Demonstration: nobody here is real.</p>}
        <WhatMatters talks={data.talks} />
        <YourRisk data={data} sheet={sheet} />
        <Choices sheet={sheet} />
        <LastTime felt={data.felt} dosesGiven={data.person.dosesGiven} />
        <Feeling sheet={sheet} hadBoneTablets={data.person.hadBoneTablets} />
        <RareHarms />
        <FoundInTrial found={sheet.found} />
        <Talk data={data} />
        <Sources sheet={sheet} />
        <p className="quiet small">
          {unit.name}, {unit.telephone} · {longDay(data.today)} · wording {WORDING}
          {data.protocolVersion === undefined ? '' : ` · protocol ${data.protocolVersion}`} · The numbers come from
          trials and from a risk worked out elsewhere. They do not decide: you do, with your nurse and your doctor.{' '}
          {data.cautions.join(' ')}
        </p>
      </Page>
    </div>
  );
}
