import { useQuery } from '@tanstack/react-query';
import type { SessionDayView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { TextField } from '../fields/TextField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { me } from '../server/queries.ts';
import { useAct } from '../server/use-act.ts';

/** The person it is for reads it and takes it on: at their own screen, or here with their own name and password. */
export function AcceptHandover({
  data,
  closed,
}: {
  data: SessionDayView;
  closed: NonNullable<SessionDayView['closed']>;
}) {
  const attempt = useAct(undefined, { [`session/${data.session}`]: data.seq });
  const isForMe = useQuery(me).data?.staff === closed.toStaff;
  const [note, setNote] = useState('');
  const [username, setUsername] = useState('');
  const [password, setPassword] = useState('');
  return (
    <ActForm
      refusals={attempt.refusals}
      send={() =>
        void attempt.send(
          { name: 'accept handover', session: data.session, ...(note.trim() === '' ? {} : { note }) },
          isForMe ? {} : { signedBy: { username: username.trim(), password } },
        )
      }
    >
      <p>
        For <strong>{closed.to}</strong> to read and take on.
      </p>
      <TextField label="Asked or added" optional at="note" value={note} onChange={setNote} />
      {!isForMe && (
        <>
          <TextField label={`Username of ${closed.to}`} at="signedBy" value={username} onChange={setUsername} />
          <TextField label={`Password of ${closed.to}`} type="password" value={password} onChange={setPassword} />
        </>
      )}
      <Outcome of={attempt} />
      <Button
        type="submit"
        tone="act"
        size="big"
        busy={attempt.busy}
        disabled={!isForMe && (username.trim() === '' || password === '')}
      >
        I have read it and take it on
      </Button>
    </ActForm>
  );
}
