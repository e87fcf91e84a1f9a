import { roles as everyRole } from '@twelvemonth/clinical';
import { useState } from 'react';
import { TextField } from '../fields/TextField.tsx';
import { TicksField } from '../fields/TicksField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { Button } from '../paper/Button.tsx';
import { Trouble } from '../paper/Trouble.tsx';
import { ServerProblem } from '../server/server-problem.ts';
import { usePosting } from '../server/use-posting.ts';
import css from './Settings.module.css';

export function NewStaff({ close }: { close: () => void }) {
  const [form, setForm] = useState({ name: '', username: '', password: '' });
  const [roles, setRoles] = useState<readonly string[]>([]);
  const add = usePosting('addStaff');
  const set = (key: keyof typeof form) => (value: string) => setForm((before) => ({ ...before, [key]: value }));
  return (
    <ActForm
      refusals={add.error instanceof ServerProblem ? (add.error.problem.refusals ?? []) : []}
      send={() => void add.send({ ...form, roles: [...roles] }).then((answer) => answer !== undefined && close())}
    >
      <h3>Add someone</h3>
      <TextField label="Name" at="name" value={form.name} onChange={set('name')} />
      <TextField
        label="Username"
        help="Three to forty of a-z, 0-9, dot, hyphen."
        at="username"
        value={form.username}
        onChange={set('username')}
      />
      <TextField
        label="First password"
        help="At least 12 characters."
        at="password"
        type="password"
        autoComplete="new-password"
        value={form.password}
        onChange={set('password')}
      />
      <TicksField
        label="Roles"
        at="roles"
        value={roles}
        onChange={setRoles}
        options={everyRole.map((value) => ({ value }))}
      />
      {add.error !== undefined && <Trouble error={add.error} />}
      <div className={css['acts']}>
        <Button type="submit" tone="act" busy={add.busy}>
          Add
        </Button>
        <Button onClick={close}>Leave</Button>
      </div>
    </ActForm>
  );
}
