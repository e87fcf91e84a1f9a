import { competences } from '@twelvemonth/clinical';
import type { SessionDayView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { TextField } from '../fields/TextField.tsx';
import { TicksField } from '../fields/TicksField.tsx';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Trouble } from '../paper/Trouble.tsx';
import { Why } from '../paper/Why.tsx';
import { ServerProblem } from '../server/server-problem.ts';
import { usePosting } from '../server/use-posting.ts';

const nothing = { name: '', username: '', registration: '', password: '', own: '', witness: '', proof: '' };

/** Who has come from the bank signs with a name of their own. */
export function NurseForToday({ data }: { data: SessionDayView }) {
  return (
    <div style={{ marginTop: '1.6rem' }}>
      <Why word="a nurse from the bank" about="who is here for today only">
        <Form data={data} />
      </Why>
    </div>
  );
}

function Form({ data }: { data: SessionDayView }) {
  const [form, setForm] = useState(nothing);
  const [shown, setShown] = useState<readonly (typeof competences)[number][]>([]);
  const add = usePosting('addStaffForToday');
  const set = (key: keyof typeof nothing) => (value: string) => setForm((before) => ({ ...before, [key]: value }));
  const { name, username, registration, password } = form;
  const send = async (): Promise<void> => {
    const answer = await add.send({
      name,
      username,
      registration,
      password,
      unit: data.unit,
      shown: [...shown],
      ownPassword: form.own,
      witnessUsername: form.witness,
      witnessPassword: form.proof,
    });
    if (answer === undefined) return;
    setForm(nothing);
    setShown([]);
  };
  return (
    <ActForm
      refusals={add.error instanceof ServerProblem ? (add.error.problem.refusals ?? []) : []}
      send={() => void send()}
    >
      <p>
        Nobody works under somebody else’s name. This makes an account of their own as a nurse, which ends by itself at
        midnight. Look at their registration first. Who was here before uses the same name and username again.
      </p>
      {add.answer !== undefined && (
        <Note speaks="politely">
          <strong>
            {add.answer.name} can sign in today as {add.answer.username}.
          </strong>{' '}
          They prepare, check and start once the opening of the session names them.
        </Note>
      )}
      <TextField label="Their name" at="name" value={name} onChange={set('name')} />
      <TextField
        label="Their registration"
        help="The number in the register of nurses, as you have looked it up."
        at="registration"
        value={registration}
        onChange={set('registration')}
      />
      <TicksField
        label="What you have seen that they can do"
        at="shown"
        value={shown}
        onChange={setShown}
        options={competences.map((value) => ({ value }))}
      />
      <TextField
        label="Their username"
        help="Three to forty of a-z, 0-9, dot, hyphen."
        at="username"
        value={username}
        onChange={set('username')}
      />
      <TextField
        label="Their password for today"
        help="At least 12 characters. They type it themselves."
        at="password"
        type="password"
        autoComplete="new-password"
        value={password}
        onChange={set('password')}
      />
      <TextField
        label="Your own password"
        help="Being signed in at a screen that others use proves nothing."
        at="ownPassword"
        type="password"
        value={form.own}
        onChange={set('own')}
      />
      <h3>Another registered person has seen who it is</h3>
      <TextField
        label="Username of who vouches"
        help="Neither you nor somebody who is here for today only."
        at="witnessUsername"
        value={form.witness}
        onChange={set('witness')}
      />
      <TextField
        label="Password of who vouches"
        at="witnessPassword"
        type="password"
        value={form.proof}
        onChange={set('proof')}
      />
      {add.error !== undefined && <Trouble error={add.error} />}
      <Button type="submit" tone="act" size="big" busy={add.busy}>
        Make the account for today
      </Button>
    </ActForm>
  );
}
