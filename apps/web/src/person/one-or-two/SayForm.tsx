import type { PersonView } from '@twelvemonth/exchange';
import type { ActNamed } from '@twelvemonth/clinical';
import { useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { ActForm } from '../../fields/ActForm.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { TicksField } from '../../fields/TicksField.tsx';
import { Button } from '../../paper/Button.tsx';
import { Note } from '../../paper/Note.tsx';
import { Outcome } from '../../paper/Outcome.tsx';
import { useAct } from '../../server/use-act.ts';
import { dayInWords } from '../../words/dates.ts';

type Alike = PersonView['lookAlikes'][number];
type Identifier = ActNamed<'say one person'>['agree'][number];
type Said = 'one' | 'two';

/** What somebody says after comparing. One person takes two people; the second signs here with a name of their own. */
export function SayForm({ data, alike, done }: { data: PersonView; alike: Alike; done: (patient: string) => void }) {
  const proposed = alike.answer === 'proposed';
  const [said, setSaid] = useState<Said | undefined>(undefined);
  const [kept, setKept] = useState<string | undefined>(alike.kept ?? data.patient);
  const [compared, setCompared] = useState<readonly string[]>([]);
  const [reason, setReason] = useState('');
  const [username, setUsername] = useState('');
  const [password, setPassword] = useState('');
  const other = kept === alike.patient ? data.patient : alike.patient;
  const attempt = useAct(() => done(said === 'one' ? (kept ?? data.patient) : data.patient));
  const identifiers = alike.compared.map(({ identifier }) => ({ value: identifier }));
  const signing = proposed && said === 'one';
  const missing =
    said === undefined ||
    reason.trim() === '' ||
    compared.length < (said === 'one' ? 2 : 1) ||
    (signing && (username.trim() === '' || password === ''));
  const send = (): void => {
    if (missing) return;
    const chosen = compared as readonly Identifier[];
    if (said === 'two') {
      void attempt.send({
        name: 'say two people',
        patient: data.patient,
        other: alike.patient,
        differ: chosen,
        reason,
      });
    } else {
      const about = { patient: kept ?? data.patient, other, agree: chosen, reason };
      void (signing
        ? attempt.send({ name: 'confirm one person', ...about }, { signedBy: { username: username.trim(), password } })
        : attempt.send({ name: 'say one person', ...about }));
    }
  };
  return (
    <ActForm refusals={attempt.refusals} send={send}>
      {proposed && alike.answered !== undefined && (
        <Note tone="caution">
          <p>
            <strong>
              {alike.answered.by} said on {dayInWords(alike.answered.on)} that they are one person:
            </strong>{' '}
            {alike.answered.reason} ({alike.agree?.join(', ')} agreed; kept are{' '}
            {alike.kept === data.patient ? 'these notes' : 'the other notes'}). A second person compares them and
            confirms.
          </p>
        </Note>
      )}
      <ChoiceField
        label="You have compared them: they are"
        value={said}
        onChange={(value) => {
          setSaid(value);
          setCompared([]);
        }}
        options={[
          { value: 'one', says: proposed ? 'one person, as was said' : 'one person' },
          { value: 'two', says: 'two people' },
        ]}
      />
      {said === 'one' && !proposed && (
        <ChoiceField
          label="Which notes are kept"
          help="The other ones are read in them. Who the person is, the kept ones say. Nothing is moved, and it can be taken back."
          value={kept}
          onChange={setKept}
          options={[
            { value: data.patient, says: `number ${data.number}, these` },
            { value: alike.patient, says: `number ${alike.number}, the other` },
          ]}
        />
      )}
      {said !== undefined && (
        <TicksField
          label={said === 'one' ? 'What agrees' : 'What differs'}
          help={said === 'one' ? 'At least two, compared by yourself side by side.' : 'At least one.'}
          at={said === 'one' ? 'agree' : 'differ'}
          value={compared}
          onChange={setCompared}
          options={identifiers}
        />
      )}
      <TextField
        label="How you know"
        help="For example: asked her, she moved in 2024."
        at="reason"
        value={reason}
        onChange={setReason}
      />
      {signing && (
        <>
          <h3>The second person signs</h3>
          <TextField label="Your username" at="signedBy" value={username} onChange={setUsername} />
          <TextField label="Your password" type="password" value={password} onChange={setPassword} />
        </>
      )}
      <Outcome of={attempt} />
      <p style={{ marginTop: '0.8rem' }}>
        <Button type="submit" tone="act" busy={attempt.busy} disabled={missing}>
          {said === 'two' ? 'They are two people' : signing ? 'Confirm: one person' : 'Say so'}
        </Button>
      </p>
    </ActForm>
  );
}
