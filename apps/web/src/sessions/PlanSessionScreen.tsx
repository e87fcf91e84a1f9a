import { useNavigate } from '@tanstack/react-router';
import type { PlainDate } from '@twelvemonth/clinical';
import type { UnitView } from '@twelvemonth/exchange';
import { useRef, useState } from 'react';
import { DateField } from '../fields/DateField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { NoUnitYet } from '../frame/NoUnitYet.tsx';
import { useUnit } from '../frame/unit.ts';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { Page } from '../paper/Page.tsx';
import { useAct } from '../server/use-act.ts';
import { weekday, day } from '@twelvemonth/clinical';
import { counted } from '../words/texts.ts';
import { arrivalTimes, typedTimes } from './arrival-times.ts';

export function PlanSessionScreen() {
  const { unit } = useUnit();
  return (
    <Page title="Plan a session" sub={unit?.name}>
      {unit === undefined ? <NoUnitYet /> : <Form key={unit.unit} unit={unit} />}
    </Page>
  );
}

/** Places a session of this unit usually has: one a chair and arrival, as long as an arrival can still be treated. */
const usualPlaces = 14;

function Form({ unit }: { unit: UnitView }) {
  const navigate = useNavigate();
  const session = useRef(crypto.randomUUID());
  const [on, setOn] = useState<string>();
  const [opensAt, setOpensAt] = useState(unit.opensAt);
  const [closesAt, setClosesAt] = useState(unit.closesAt);
  const [places, setPlaces] = useState<number | undefined>(usualPlaces);
  const [times, setTimes] = useState(() =>
    arrivalTimes(unit.opensAt, unit.minutesBetweenArrivals, usualPlaces, unit.closesAt).join(' '),
  );
  const attempt = useAct(() => void navigate({ to: '/sessions/$session', params: { session: session.current } }));
  const arriveAt = typedTimes(times);
  const unusual = on !== undefined && !unit.sessionWeekdays.includes(weekday(day(on)));
  const closed = on !== undefined && unit.closedDays.includes(on);
  const spread = (count: number | undefined): void => {
    setPlaces(count);
    if (count !== undefined) setTimes(arrivalTimes(opensAt, unit.minutesBetweenArrivals, count, closesAt).join(' '));
  };
  return (
    <ActForm
      refusals={attempt.refusals}
      send={() =>
        void attempt.send({
          name: 'plan session',
          session: session.current,
          body: { unit: unit.unit, on: (on ?? '') as PlainDate, zone: unit.zone, arriveAt, opensAt, closesAt },
        })
      }
    >
      <Outcome of={attempt} />
      <DateField label="Date" at="body.on" value={on} onChange={setOn} />
      {unusual && <Note tone="caution">The unit does not usually open on that weekday.</Note>}
      {closed && <Note tone="caution">The unit is closed on that day.</Note>}
      <TextField label="Opens at" at="opensAt" short value={opensAt} onChange={setOpensAt} />
      <TextField label="Closes at" at="closesAt" short value={closesAt} onChange={setClosesAt} />
      <NumberField
        label="Places"
        help={`Spread every ${unit.minutesBetweenArrivals} minutes from opening; change single times below.`}
        value={places}
        onChange={spread}
      />
      <TextField
        label={`Arrival times (${counted(arriveAt.length, 'place')})`}
        at="arriveAt"
        lines="several"
        value={times}
        onChange={setTimes}
      />
      <Button type="submit" tone="act" busy={attempt.busy}>
        Plan it
      </Button>
    </ActForm>
  );
}
