import type { SupportsView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { TextField } from '../fields/TextField.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useSupport } from './use-support.ts';

/** One answer in words about a booking. */
export function AnswerForm({
  data,
  label,
  help,
  at,
  act,
  body,
  done,
}: {
  data: SupportsView;
  label: string;
  help?: string;
  at: string;
  act: string;
  body: (text: string) => unknown;
  done: () => void;
}) {
  const { attempt, write } = useSupport(data, done);
  const [text, setText] = useState('');
  return (
    <ActForm refusals={attempt.refusals} send={() => write(body(text.trim()))}>
      <TextField
        label={label}
        {...(help === undefined ? {} : { help })}
        at={at}
        first
        value={text}
        onChange={setText}
      />
      <Outcome of={attempt} />
      <p style={{ display: 'flex', gap: '0.6rem' }}>
        <Button type="submit" tone="act" size="big" busy={attempt.busy} disabled={text.trim() === ''}>
          {act}
        </Button>
        <Button size="big" onClick={done}>
          Leave
        </Button>
      </p>
    </ActForm>
  );
}
