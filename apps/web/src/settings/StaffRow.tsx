import { roles as everyRole } from '@twelvemonth/clinical';
import type { StaffView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { TextField } from '../fields/TextField.tsx';
import { TicksField } from '../fields/TicksField.tsx';
import { Button } from '../paper/Button.tsx';
import { Trouble } from '../paper/Trouble.tsx';
import { usePosting } from '../server/use-posting.ts';
import { shortDay } from '../words/dates.ts';
import css from './Settings.module.css';

export function StaffRow({ person, mayChange }: { person: StaffView; mayChange: boolean }) {
  const [open, setOpen] = useState(false);
  const [roles, setRoles] = useState<readonly string[]>(person.roles);
  const [password, setPassword] = useState('');
  const change = usePosting('changeStaff');
  const send = async (more: { active?: boolean }): Promise<void> => {
    const answer = await change.send({
      staff: person.staff,
      roles: [...roles],
      ...(password === '' ? {} : { password }),
      ...more,
    });
    if (answer !== undefined) setOpen(false);
  };
  return (
    <>
      <tr>
        <th scope="row">{person.name}</th>
        <td>{person.username}</td>
        <td>
          {person.roles.join(', ')}
          {person.forToday !== undefined && (
            <>
              {' '}
              · for {shortDay(person.forToday.lastDay)} only, registration {person.forToday.registration}
            </>
          )}
          {!person.active && <strong> · closed</strong>}
        </td>
        <td style={{ textAlign: 'end' }}>
          {mayChange && (
            <Button tone="plain" aria-expanded={open} onClick={() => setOpen(!open)}>
              change<span className="unseen"> {person.name}</span>
            </Button>
          )}
        </td>
      </tr>
      {open && (
        <tr>
          <td colSpan={4} style={{ borderTop: 0 }}>
            <form
              onSubmit={(event) => {
                event.preventDefault();
                void send({});
              }}
            >
              <TicksField
                label="Roles"
                value={roles}
                onChange={setRoles}
                options={everyRole.map((value) => ({ value }))}
              />
              <TextField
                label="New password"
                help="At least 12 characters; leave empty to keep the old one."
                type="password"
                autoComplete="new-password"
                value={password}
                onChange={setPassword}
              />
              {change.error !== undefined && <Trouble error={change.error} />}
              <div className={css['acts']}>
                <Button type="submit" tone="act" busy={change.busy}>
                  Record
                </Button>
                <Button onClick={() => void send({ active: !person.active })}>
                  {person.active ? 'Close: they no longer work here' : 'Open again'}
                </Button>
                <Button onClick={() => setOpen(false)}>Leave</Button>
              </div>
            </form>
          </td>
        </tr>
      )}
    </>
  );
}
