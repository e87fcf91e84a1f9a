import type { PlainDate } from '@twelvemonth/clinical';
import { useState } from 'react';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { DateField } from '../fields/DateField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { Why } from '../paper/Why.tsx';
import { useAct } from '../server/use-act.ts';
import type { VersionView } from './Version.tsx';

/** Two named people, a clinician and a pharmacist, sign the very same content with the same first day. */
export function SignForm({ unit, version }: { unit: string; version: VersionView }) {
  const [as, setAs] = useState<'clinician' | 'pharmacist'>();
  const [from, setFrom] = useState<string | undefined>(version.signatures[0]?.inForceFrom);
  const [username, setUsername] = useState('');
  const [password, setPassword] = useState('');
  const attempt = useAct();
  const other = username.trim() !== '';
  return (
    <ActForm
      refusals={attempt.refusals}
      className="screenOnly"
      send={() => {
        if (as === undefined) return;
        void attempt.send(
          {
            name: 'sign protocol',
            unit,
            version: version.version,
            contentHash: version.contentHash,
            as,
            inForceFrom: (from ?? '') as PlainDate,
          },
          other ? { signedBy: { username: username.trim(), password } } : {},
        );
      }}
    >
      <h3>Sign this version</h3>
      <p className="quiet">
        You have read every number below and take it as this unit's. It comes into force when a clinician and a
        pharmacist have both signed.
      </p>
      <ChoiceField
        label="You sign as"
        at="as"
        value={as}
        onChange={setAs}
        options={[{ value: 'clinician' }, { value: 'pharmacist' }]}
      />
      <DateField label="In force from" at="inForceFrom" value={from} onChange={setFrom} />
      <Why about="at this screen" word="someone else signs here">
        <TextField label="Their username" at="signedBy" value={username} onChange={setUsername} />
        <TextField label="Their password" type="password" value={password} onChange={setPassword} />
      </Why>
      <Outcome of={attempt} />
      <p style={{ marginTop: '0.8rem' }}>
        <Button type="submit" tone="act" busy={attempt.busy} disabled={as === undefined || from === undefined}>
          Sign
        </Button>
      </p>
    </ActForm>
  );
}
