import type { SessionView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { TextField } from '../fields/TextField.tsx';
import { useMay } from '../frame/may.ts';
import { useUnit } from '../frame/unit.ts';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { Why } from '../paper/Why.tsx';
import { FindOther, type Found } from '../person/one-or-two/FindOther.tsx';
import { useAct } from '../server/use-act.ts';
import { atTime, localMoment } from '../words/local-moment.ts';
import { readTypedTime } from '../words/typed-time.ts';

/** Somebody came instead of another while the network was down, and stands on the paper only: found in the notes, put on the list of that day. */
export function CameUnlisted({ data }: { data: SessionView }) {
  const may = useMay();
  if (!may('book')) return null;
  const free = data.list.find(({ who }) => who === undefined)?.place;
  return (
    <div style={{ marginTop: '1.6rem' }}>
      <Why word="somebody came who is not on this list" about="and has a sheet on paper">
        {free === undefined ? (
          <Note tone="caution">
            Every place of this list is somebody’s. Plan the session anew with one place more, then type it in.
          </Note>
        ) : (
          <Form data={data} place={free} />
        )}
      </Why>
    </div>
  );
}

function Form({ data, place }: { data: SessionView; place: number }) {
  const { unit } = useUnit();
  const zone = unit?.zone ?? 'Europe/London';
  const [found, setFound] = useState<Found>();
  const [time, setTime] = useState('');
  const [reason, setReason] = useState('');
  const attempt = useAct(() => {
    setFound(undefined);
    setTime('');
    setReason('');
  });
  const read = readTypedTime(time);
  const causes = attempt.refusals.flatMap(({ name, field }) =>
    name === 'trouble-not-accepted' && field !== undefined ? [field] : [],
  );
  const lacking =
    found === undefined
      ? 'Who came?'
      : read === undefined
        ? 'When, as on the sheet?'
        : causes.length > 0 && reason.trim() === ''
          ? 'Why all the same?'
          : undefined;
  return (
    <ActForm
      refusals={attempt.refusals}
      send={() => {
        if (found === undefined || read === undefined || lacking !== undefined) return;
        void attempt.send({
          name: 'book',
          patient: found.patient,
          session: data.session,
          place,
          happenedAt: atTime(localMoment(Date.parse(`${data.on}T12:00:00Z`), zone), read),
          ...(causes.length === 0 ? {} : { accepts: { causes, reason: reason.trim() } }),
        });
      }}
    >
      <FindOther label="Who came" but="" chosen={found} choose={setFound} />
      <TextField
        label="When they were put on the list"
        help="The first time on their sheet, hours and minutes: 10:40."
        short
        at="happenedAt"
        trouble={time.trim() !== '' && read === undefined ? 'Not a time of the day.' : undefined}
        value={time}
        onChange={setTime}
      />
      {causes.length > 0 && (
        <TextField
          label="Why they had the place all the same"
          help="As decided that day, and by whom."
          lines="several"
          at="accepts"
          value={reason}
          onChange={setReason}
        />
      )}
      <Outcome of={attempt} />
      <Button type="submit" tone="act" size="big" busy={attempt.busy} disabled={lacking !== undefined}>
        {lacking ?? 'Put them on the list of that day'}
      </Button>
    </ActForm>
  );
}
