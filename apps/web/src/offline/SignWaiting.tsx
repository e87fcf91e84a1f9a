import { useState } from 'react';
import css from '../fields/Field.module.css';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { useTicks } from '../paper/use-ticks.ts';
import type { Signature } from '../server/use-act.ts';
import { SignHere } from '../signing/SignHere.tsx';
import { counted } from '../words/texts.ts';
import { LetGo } from './LetGo.tsx';
import { Written } from './Written.tsx';
import { sendSigned } from './send-waiting.ts';
import type { WaitingAct } from './waiting.ts';

/** The screen asks who signs it, and nothing else stands against it. */
export const isToSign = ({ needs }: WaitingAct): boolean =>
  needs !== undefined && needs.refusals.length > 0 && needs.refusals.every(({ field }) => field === 'signedBy');

/**
 * Those to sign, and those of the same person that were written after one of them and wait behind it. `by`: only what they wrote;
 * undefined at a shared screen, where whoever was signed in need not have written it.
 */
export function toBeSigned(all: readonly WaitingAct[], by: string | undefined): readonly WaitingAct[] {
  const behind = new Set<string | undefined>();
  return all.filter((act) => {
    if (by !== undefined && act.staff !== by) return false;
    if (isToSign(act)) behind.add(act.patient);
    return isToSign(act) || (act.needs === undefined && behind.has(act.patient));
  });
}

/**
 * Many steps, one proof: who wrote them reads the list, ticks what is theirs, and proves it once. Each is sent under that
 * signature as an act of its own; what is not ticked is left for whoever wrote it.
 */
export function SignWaiting({ acts }: { acts: readonly WaitingAct[] }) {
  const ticked = useTicks<string>();
  const [signing, setSigning] = useState(false);
  const [refused, setRefused] = useState<string>();
  const theirs = acts.filter(({ id }) => ticked.has(id));
  const [first] = acts;
  if (first?.patient === undefined) return null;
  const sign = async (signedBy: Signature): Promise<void> => {
    setSigning(true);
    try {
      setRefused(await sendSigned(new Set(theirs.map(({ id }) => id)), signedBy));
    } finally {
      setSigning(false);
    }
  };
  const why = acts.find(isToSign)?.needs?.refusals[0]?.says;
  return (
    <section aria-labelledby="to-sign" style={{ marginBottom: '2rem' }}>
      <h2 id="to-sign">{counted(acts.length, 'entry to sign', 'entries to sign')}</h2>
      {why !== undefined && <p>{why}</p>}
      <p>
        Read each. Tick what you did yourself, and sign once: every entry ticked goes into the notes under your name.
        What somebody else did stays here until they sign it.
      </p>
      <ul className={css['choices']} style={{ listStyle: 'none', padding: 0, marginBlock: '0.8rem' }}>
        {acts.map((act) => (
          <li key={act.id}>
            <label className={css['choice']} style={{ minHeight: '48px' }}>
              <input type="checkbox" checked={ticked.has(act.id)} onChange={() => ticked.turn(act.id)} />
              <span>
                <Written act={act} />
              </span>
            </label>
            {act.patient !== undefined && (
              <details>
                <summary className="finger">it does not stand</summary>
                <LetGo act={act} patient={act.patient} />
              </details>
            )}
          </li>
        ))}
      </ul>
      {acts.length > 1 && (
        <p>
          <Button size="big" onClick={() => ticked.exactly(acts.map(({ id }) => id))}>
            I read them: all of them are mine
          </Button>
        </p>
      )}
      {refused !== undefined && (
        <Note tone="stop" speaks="at once">
          <strong>Not recorded.</strong> {refused}
        </Note>
      )}
      {theirs.length > 0 && (
        <>
          <p>{counted(theirs.length, 'entry is', 'entries are')} ticked.</p>
          <SignHere toSign={{ patient: first.patient, send: (signedBy) => void sign(signedBy) }} busy={signing} />
        </>
      )}
    </section>
  );
}
