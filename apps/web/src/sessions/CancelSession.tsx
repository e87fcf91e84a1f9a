import type { SessionView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { TextField } from '../fields/TextField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { Why } from '../paper/Why.tsx';
import { useAct } from '../server/use-act.ts';
import { counted } from '../words/texts.ts';

export function CancelSession({ session }: { session: SessionView }) {
  const [reason, setReason] = useState('');
  const attempt = useAct(undefined, { [`session/${session.session}`]: session.seq });
  return (
    <div className="screenOnly" style={{ marginTop: '2rem' }}>
      <Why about="with a reason" word="cancel this session">
        <ActForm
          refusals={attempt.refusals}
          send={() => void attempt.send({ name: 'cancel session', session: session.session, reason })}
        >
          <Outcome of={attempt} />
          <TextField
            label="Why"
            help={
              session.taken === 0
                ? undefined
                : `${counted(session.taken, 'person is', 'people are')} on the list: move or give up every place first; each of them must hear of it.`
            }
            at="reason"
            value={reason}
            onChange={setReason}
          />
          <Button type="submit" busy={attempt.busy}>
            Cancel the session
          </Button>
        </ActForm>
      </Why>
    </div>
  );
}
