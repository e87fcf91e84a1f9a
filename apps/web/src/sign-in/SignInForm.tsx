import type { StatusView } from '@twelvemonth/exchange';
import { type FormEvent, useState } from 'react';
import { TextField } from '../fields/TextField.tsx';
import { Button } from '../paper/Button.tsx';
import { Trouble } from '../paper/Trouble.tsx';
import { beforeSignIn } from '../server/leaving.ts';
import { begin } from '../server/queries.ts';
import { post } from '../server/request.ts';
import { DemoPeople } from './DemoPeople.tsx';
import css from './SignIn.module.css';

/** Who is at the desk. In the demonstration the people are listed; a press fills the form in. */
export function SignInForm({
  status,
  instead,
  heading,
}: {
  status: StatusView;
  instead?: (() => void) | undefined;
  heading: string;
}) {
  const [username, setUsername] = useState('');
  const [password, setPassword] = useState('');
  const [busy, setBusy] = useState(false);
  const [error, setError] = useState<Error>();
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    if (busy) return;
    setBusy(true);
    setError(undefined);
    try {
      await beforeSignIn();
      begin(await post('signIn', { username: username.trim(), password }));
    } catch (caught) {
      setError(caught instanceof Error ? caught : new Error(String(caught)));
      setPassword('');
    } finally {
      setBusy(false);
    }
  };
  return (
    <div className={css['columns']}>
      <form onSubmit={(event) => void submit(event)}>
        <h1>{heading}</h1>
        <TextField label="Username" value={username} onChange={setUsername} autoComplete="username" first />
        <TextField
          label="Password"
          type="password"
          value={password}
          onChange={setPassword}
          autoComplete="current-password"
        />
        {error !== undefined && <Trouble error={error} />}
        <p style={{ display: 'flex', gap: '0.7rem', marginTop: '1rem' }}>
          <Button type="submit" tone="act" busy={busy} busyWords="signing in …">
            Sign in
          </Button>
          {instead !== undefined && <Button onClick={instead}>Stay as I am</Button>}
        </p>
      </form>
      {status.demoPeople !== undefined && (
        <DemoPeople
          people={status.demoPeople}
          chosen={username}
          choose={(name) => {
            setUsername(name);
            setPassword(status.demoPassword ?? '');
          }}
        />
      )}
    </div>
  );
}
