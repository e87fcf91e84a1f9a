import { starterProtocols } from '@twelvemonth/clinical';
import { type FormEvent, useState } from 'react';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { FieldTroubles } from '../fields/field-trouble.ts';
import { Button } from '../paper/Button.tsx';
import { Trouble } from '../paper/Trouble.tsx';
import { begin } from '../server/queries.ts';
import { post } from '../server/request.ts';
import { ServerProblem } from '../server/server-problem.ts';

/** An empty service: the first visitor on this machine names it and becomes its administrator. */
export function FirstAdministrator() {
  const [form, setForm] = useState({ service: '', name: '', username: '', password: '' });
  const [starter, setStarter] = useState<string>();
  const [busy, setBusy] = useState(false);
  const [error, setError] = useState<Error>();
  const set = (key: keyof typeof form) => (value: string) => setForm((before) => ({ ...before, [key]: value }));
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    if (busy) return;
    setBusy(true);
    setError(undefined);
    try {
      begin(await post('firstAdministrator', { ...form, ...(starter === undefined ? {} : { starter }) }));
    } catch (caught) {
      setError(caught instanceof Error ? caught : new Error(String(caught)));
    } finally {
      setBusy(false);
    }
  };
  return (
    <FieldTroubles value={error instanceof ServerProblem ? (error.problem.refusals ?? []) : []}>
      <form onSubmit={(event) => void submit(event)}>
        <h1>Set up this service</h1>
        <p className="quiet">
          Nobody has signed in here yet. You become its administrator: you add units and staff. Doses are given by
          nurses under their own names, never by the administrator.
        </p>
        <TextField
          label="What the service is called"
          at="service"
          value={form.service}
          onChange={set('service')}
          first
        />
        <TextField label="Your name" at="name" value={form.name} onChange={set('name')} autoComplete="name" />
        <TextField
          label="Username"
          at="username"
          help="Three to forty of a-z, 0-9, dot, hyphen."
          value={form.username}
          onChange={set('username')}
          autoComplete="username"
        />
        <TextField
          label="Password"
          at="password"
          help="At least 12 characters. Several words in a row are easy to keep and hard to guess."
          type="password"
          value={form.password}
          onChange={set('password')}
          autoComplete="new-password"
        />
        <ChoiceField
          label="The protocol begins from"
          help="It is offered first when somebody begins the unit’s protocol, and can be taken otherwise then. None is in force by itself: two people sign what the unit decides."
          at="starter"
          value={starter}
          onChange={setStarter}
          options={starterProtocols.map(({ version, title }) => ({ value: version, says: title }))}
        />
        {error !== undefined && <Trouble error={error} />}
        <Button type="submit" tone="act" busy={busy} disabled={starter === undefined}>
          Begin
        </Button>
      </form>
    </FieldTroubles>
  );
}
