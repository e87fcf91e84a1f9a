import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { TextField } from '../fields/TextField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Page } from '../paper/Page.tsx';
import { Trouble } from '../paper/Trouble.tsx';
import { mySignature } from '../server/queries.ts';
import { ServerProblem } from '../server/server-problem.ts';
import { usePosting } from '../server/use-posting.ts';

/** The PIN and the badge of whoever is signed in, set with their password. */
export function MySignatureScreen() {
  const asked = useQuery(mySignature());
  return (
    <Page title="PIN and badge" sub="To sign your steps at a shared screen while the session is open. Nowhere else.">
      <Awaited query={asked} what="your PIN and badge">
        {({ pin, badge }) => (
          <>
            <p>
              {pin ? 'You have a PIN.' : 'You have no PIN yet.'}{' '}
              {badge ? 'You have a badge.' : 'You have no badge yet.'}
            </p>
            <SetMine />
          </>
        )}
      </Awaited>
    </Page>
  );
}

function SetMine() {
  const [pin, setPin] = useState('');
  const [badge, setBadge] = useState('');
  const [password, setPassword] = useState('');
  const { send, busy, error, answer } = usePosting('setMySignature');
  const set = async (): Promise<void> => {
    const kept = await send({
      password,
      ...(pin === '' ? {} : { pin }),
      ...(badge.trim() === '' ? {} : { badge: badge.trim() }),
    });
    if (kept === undefined) return;
    setPin('');
    setBadge('');
    setPassword('');
  };
  const refusals = error instanceof ServerProblem ? (error.problem.refusals ?? []) : [];
  return (
    <ActForm refusals={refusals} send={() => void set()}>
      <TextField
        label="New PIN"
        help="Six to ten digits that nobody guesses. After five wrong tries it is of no use until you set it anew here."
        type="password"
        short
        at="pin"
        autoComplete="off"
        value={pin}
        onChange={setPin}
      />
      <TextField
        label="New badge"
        help="Scan it here. At least 8 signs; only your own."
        type="password"
        at="badge"
        autoComplete="off"
        value={badge}
        onChange={setBadge}
      />
      <TextField
        label="Your password"
        type="password"
        at="password"
        autoComplete="current-password"
        value={password}
        onChange={setPassword}
      />
      {error !== undefined && refusals.length === 0 && <Trouble error={error} />}
      {answer !== undefined && error === undefined && (
        <Note tone="done" speaks="politely">
          It is set.
        </Note>
      )}
      <p style={{ marginTop: '1rem' }}>
        <Button
          type="submit"
          tone="act"
          size="big"
          busy={busy}
          disabled={password === '' || (pin === '' && badge.trim() === '')}
        >
          Set
        </Button>
      </p>
    </ActForm>
  );
}
