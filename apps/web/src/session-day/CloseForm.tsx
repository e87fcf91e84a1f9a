import { useQuery } from '@tanstack/react-query';
import { registrants } from '@twelvemonth/clinical';
import type { SessionDayView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { me } from '../server/queries.ts';
import { useAct } from '../server/use-act.ts';
import { PackCountFields } from './PackCountFields.tsx';
import { StillOpen } from './StillOpen.tsx';
import { type PackCounts, countsToSend } from './pack-counts.ts';

/** What stands in the way first; then packs, and what is left to do with the person who takes it on. */
export function CloseForm({ data }: { data: SessionDayView }) {
  const attempt = useAct(undefined, { [`session/${data.session}`]: data.seq });
  const self = useQuery(me).data?.staff;
  const [counts, setCounts] = useState<PackCounts>({});
  const [handover, setHandover] = useState('');
  const [to, setTo] = useState<string>();
  const receivers = data.staff.filter(
    ({ staff, roles }) => staff !== self && registrants.some((role) => roles.includes(role)),
  );
  return (
    <ActForm
      refusals={attempt.refusals}
      send={() => {
        if (to === undefined) return;
        void attempt.send({
          name: 'close session',
          session: data.session,
          body: { counts: countsToSend(counts, data), handover, to },
        });
      }}
    >
      <h2>Close the session</h2>
      <StillOpen data={data} />
      <PackCountFields data={data} counts={counts} setCounts={setCounts} closing />
      <TextField
        label="What is left to do"
        help="Whom to ring, what to chase, what to look at next time. “Nothing” is an answer."
        lines="several"
        at="handover"
        value={handover}
        onChange={setHandover}
      />
      <ChoiceField
        label="Handed over to"
        at="to"
        size="big"
        value={to}
        onChange={setTo}
        options={receivers.map(({ staff, name }) => ({ value: staff, says: name }))}
      />
      <Outcome of={attempt} />
      <p style={{ marginTop: '1rem' }}>
        <Button
          type="submit"
          tone="act"
          size="big"
          busy={attempt.busy}
          disabled={to === undefined || handover.trim() === ''}
        >
          {to === undefined || handover.trim() === '' ? 'What is left, and to whom?' : 'Close the session'}
        </Button>
      </p>
    </ActForm>
  );
}
