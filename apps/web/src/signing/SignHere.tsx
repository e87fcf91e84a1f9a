import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Button } from '../paper/Button.tsx';
import { me } from '../server/queries.ts';
import type { Attempt, Signature } from '../server/use-act.ts';
import { SignatureFields } from './SignatureFields.tsx';

/** Who signs is asked, at a shared screen or at one that nobody enrolled. What was entered stands; the same act is sent again with the signature. */
export function SignHere({ toSign, busy }: { toSign: NonNullable<Attempt['toSign']>; busy: boolean }) {
  const username = useQuery(me).data?.username;
  const [signature, setSignature] = useState<Signature>();
  const sign = (): void => {
    if (signature !== undefined) toSign.send(signature);
  };
  return (
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions -- it stands inside the form of the step; a scanner's Enter signs
    <section
      aria-label="Your signature"
      onKeyDown={(event) => {
        if (event.key !== 'Enter' || !(event.target instanceof HTMLInputElement)) return;
        event.preventDefault();
        sign();
      }}
    >
      <h3>Your signature</h3>
      <SignatureFields patient={toSign.patient} username={username} onChange={setSignature} />
      <p>
        <Button tone="act" size="big" busy={busy} disabled={signature === undefined} onClick={sign}>
          Sign
        </Button>
      </p>
    </section>
  );
}
