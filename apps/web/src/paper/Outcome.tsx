import { useEffect, useRef } from 'react';
import type { Attempt } from '../server/use-act.ts';
import { momentInWords } from '../words/dates.ts';
import { SignHere } from '../signing/SignHere.tsx';
import { InUnitWords } from '../words/InUnitWords.tsx';
import { Button } from './Button.tsx';
import { Note } from './Note.tsx';
import { inSummary, remedyOf } from './refusal-words.ts';

/** What came of an act: recorded, refused by name with what to do instead, moved on meanwhile, or not reached. Takes the focus when refused. */
export function Outcome({
  of: attempt,
}: {
  of: Pick<Attempt, 'refusals' | 'trouble' | 'missed' | 'answer'> &
    Partial<Pick<Attempt, 'confirm' | 'toSign' | 'takeOver' | 'busy'>>;
}) {
  const { refusals, trouble, missed, answer, confirm, toSign, takeOver, busy = false } = attempt;
  const place = useRef<HTMLDivElement>(null);
  const refused = refusals.length > 0 || trouble !== undefined || missed.length > 0;
  useEffect(() => {
    if (refusals.length > 0 || trouble !== undefined || missed.length > 0) place.current?.focus();
  }, [refusals, trouble, missed]);
  if (confirm !== undefined) {
    return (
      <div ref={place} tabIndex={-1}>
        <Note tone="caution" speaks="at once">
          <p>
            <strong>Is it right? Nothing is recorded yet.</strong>
          </p>
          <ul>
            {refusals.map(({ says, field }) => (
              <li key={`${field ?? ''} ${says}`}>
                <InUnitWords>{says}</InUnitWords>
              </li>
            ))}
          </ul>
          <p>
            Correct it below or above, or{' '}
            <Button size="slim" onClick={confirm}>
              record it as typed: I looked
            </Button>
          </p>
        </Note>
      </div>
    );
  }
  const onlyToSign = toSign !== undefined && refusals.every(({ name }) => name === 'signature-needed');
  if (refused) {
    return (
      <div ref={place} tabIndex={-1}>
        {!onlyToSign && (
          <Note tone="stop" speaks="at once">
            {trouble !== undefined && missed.length === 0 && (
              <p>
                <strong>{trouble.says}</strong>
                {trouble.quote !== undefined && ` Number to quote: ${trouble.quote}.`}
              </p>
            )}
            {refusals.length > 0 && (
              <>
                <p>
                  <strong>
                    {refusals.length === 1 ? 'Not recorded.' : `Not recorded, for ${refusals.length} reasons.`}
                  </strong>
                </p>
                <ul>
                  {refusals.map((refusal) => (
                    <li key={`${refusal.name} ${refusal.field ?? ''} ${inSummary(refusal)}`}>
                      <InUnitWords>{inSummary(refusal)}</InUnitWords>
                      {remedyOf(refusal) !== undefined && (
                        <span className="quiet">
                          {' '}
                          (<InUnitWords>{remedyOf(refusal)}</InUnitWords>)
                        </span>
                      )}
                    </li>
                  ))}
                </ul>
              </>
            )}
            {takeOver !== undefined && (
              <p>
                <Button size="big" onClick={takeOver}>
                  Take it over: go on at this screen
                </Button>
              </p>
            )}
            {missed.length > 0 && (
              <>
                <p>
                  Someone wrote in these notes while you were busy. Read it, then press again if your entry still
                  stands:
                </p>
                <ul>
                  {missed.map((entry) => (
                    <li key={entry.id}>
                      {entry.text}{' '}
                      <span className="quiet">
                        ({entry.by}, {momentInWords(entry.recordedAt)})
                      </span>
                    </li>
                  ))}
                </ul>
              </>
            )}
          </Note>
        )}
        {toSign !== undefined && <SignHere toSign={toSign} busy={busy} />}
      </div>
    );
  }
  return answer === undefined ? null : (
    <Note tone="done" speaks="politely">
      {answer.says}
    </Note>
  );
}
