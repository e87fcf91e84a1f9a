import { type PlainDate, type Role, competences, registrants } from '@twelvemonth/clinical';
import type { SessionDayView } from '@twelvemonth/exchange';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { DateField } from '../fields/DateField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { useMay } from '../frame/may.ts';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { Why } from '../paper/Why.tsx';
import { me } from '../server/queries.ts';
import { useAct } from '../server/use-act.ts';
import { shortDay } from '../words/dates.ts';

/** What each of the staff has shown, and until when it counts. */
export function Competences({ data }: { data: SessionDayView }) {
  const may = useMay();
  const shown = data.staff.filter(({ competences: each }) => each.length > 0);
  return (
    <div style={{ marginTop: '2rem' }}>
      <Why about="who has shown what, and until when it counts" word="competences of the staff">
        {shown.length === 0 ? (
          <p>
            Nothing is written yet. From the first competence on, nothing is given at this unit before its session is
            open.
          </p>
        ) : (
          <ul>
            {shown.map(({ staff, name, competences: each }) => (
              <li key={staff}>
                {name}:{' '}
                {each
                  .map(({ what, until, inDate }) => `${what} ${inDate ? 'until' : 'ran out'} ${shortDay(until)}`)
                  .join('; ')}
              </li>
            ))}
          </ul>
        )}
        {may('record competence') && <CompetenceForm data={data} />}
      </Why>
    </div>
  );
}

function CompetenceForm({ data }: { data: SessionDayView }) {
  const attempt = useAct();
  const [staff, setStaff] = useState<string>();
  const [what, setWhat] = useState<(typeof competences)[number]>();
  const [until, setUntil] = useState<string>();
  const mine = useQuery(me).data?.staff;
  const member = data.staff.find((one) => one.staff === staff);
  const role =
    member === undefined ? undefined : (registrants.find((one) => member.roles.includes(one)) ?? member.roles[0]);
  return (
    <ActForm
      refusals={attempt.refusals}
      send={() => {
        if (staff === undefined || what === undefined || until === undefined || role === undefined) return;
        void attempt.send({
          name: 'record competence',
          unit: data.unit,
          body: { staff, role: role as Role, what, until: until as PlainDate },
        });
      }}
    >
      <ChoiceField
        label="Who"
        at="staff"
        openUpTo={0}
        value={staff}
        onChange={setStaff}
        help="What you have shown yourself is written by another nurse in charge or the service lead."
        options={data.staff.filter((one) => one.staff !== mine).map((one) => ({ value: one.staff, says: one.name }))}
      />
      <ChoiceField
        label="Has shown"
        at="what"
        value={what}
        onChange={setWhat}
        options={competences.map((value) => ({ value }))}
      />
      <DateField label="Counts until" at="until" value={until} onChange={setUntil} />
      <Outcome of={attempt} />
      <Button
        type="submit"
        tone="act"
        busy={attempt.busy}
        disabled={staff === undefined || what === undefined || until === undefined}
      >
        Record the competence
      </Button>
    </ActForm>
  );
}
