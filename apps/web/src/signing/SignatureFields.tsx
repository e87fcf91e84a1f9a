import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { Button } from '../paper/Button.tsx';
import { signing } from '../server/queries.ts';
import type { Signature } from '../server/use-act.ts';

type Props = {
  readonly patient: string;
  /** Whose name and password are asked for, unless it is changed. */
  readonly username?: string | undefined;
  /** Called with each keystroke; undefined: not whole yet. */
  readonly onChange: (signature: Signature | undefined) => void;
};

/** A badge is long and not only digits; a PIN is six to ten digits. */
const looksLikePin = (typed: string): boolean => /^\d{0,10}$/.test(typed);
const pinIsWhole = (typed: string): boolean => /^\d{6,10}$/.test(typed);

/**
 * Who signs, proven here and now: on a shared screen of an open session by badge, or by name and PIN; elsewhere by name and
 * password. A scanner is a keyboard: the badge is read into the same field.
 */
export function SignatureFields({ patient, username, onChange }: Props) {
  const { device, people } = useQuery(signing(patient)).data ?? { device: undefined, people: [] };
  const [byPassword, setByPassword] = useState(false);
  if (device === undefined || byPassword) return <NameAndPassword of={username} onChange={onChange} />;
  return (
    <>
      <BadgeOrPin people={people} onChange={onChange} />
      <p>
        <Button
          tone="plain"
          style={{ minHeight: '48px' }}
          onClick={() => {
            onChange(undefined);
            setByPassword(true);
          }}
        >
          sign with name and password
        </Button>
      </p>
    </>
  );
}

function BadgeOrPin({
  people,
  onChange,
}: Pick<Props, 'onChange'> & { readonly people: readonly { readonly staff: string; readonly name: string }[] }) {
  const [staff, setStaff] = useState<string>();
  const [typed, setTyped] = useState('');
  const change = (who: string | undefined, secret: string): void => {
    setStaff(who);
    setTyped(secret);
    if (!looksLikePin(secret)) onChange(secret.trim().length < 8 ? undefined : { badge: secret.trim() });
    else onChange(who === undefined || !pinIsWhole(secret) ? undefined : { staff: who, pin: secret });
  };
  return (
    <>
      <ChoiceField
        label="Who signs"
        help="Not needed with a badge."
        at="signer"
        size="big"
        value={staff}
        onChange={(who) => change(who, typed)}
        options={people.map(({ staff: value, name }) => ({ value, says: name }))}
      />
      <TextField
        label="PIN, or scan your badge"
        type="password"
        short
        at="signedBy"
        autoComplete="off"
        value={typed}
        onChange={(secret) => change(staff, secret)}
      />
    </>
  );
}

function NameAndPassword({ of = '', onChange }: Pick<Props, 'onChange'> & { readonly of?: string | undefined }) {
  const [username, setUsername] = useState(of);
  const [password, setPassword] = useState('');
  const change = (name: string, secret: string): void => {
    setUsername(name);
    setPassword(secret);
    onChange(name.trim() === '' || secret === '' ? undefined : { username: name.trim(), password: secret });
  };
  return (
    <>
      <TextField
        label="Your username"
        at="signedBy"
        value={username}
        onChange={(name) => change(name, password)}
        autoComplete="off"
      />
      <TextField
        label="Your password"
        type="password"
        value={password}
        onChange={(secret) => change(username, secret)}
        autoComplete="off"
      />
    </>
  );
}
