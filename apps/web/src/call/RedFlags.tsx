import { type AskedFlag, flagsIn, noRedFlag, redFlagNames, redFlags } from '@twelvemonth/clinical';
import { TicksField } from '../fields/TicksField.tsx';
import { useUnit } from '../frame/unit.ts';
import { Note } from '../paper/Note.tsx';
import css from './Call.module.css';

/** Asked before anything else; what is ticked says at once what to do. */
export function RedFlags({
  asked,
  setAsked,
}: {
  asked: readonly AskedFlag[];
  setAsked: (asked: readonly AskedFlag[]) => void;
}) {
  const { unit } = useUnit();
  const flags = flagsIn(asked);
  return (
    <div className={css['ask']}>
      <TicksField
        label="Ask first: any of these?"
        help="The local protocol and a prescriber decide; this list only reminds."
        at="body.redFlags"
        value={asked}
        onChange={(now) => {
          const saysNone = now.includes(noRedFlag) && !asked.includes(noRedFlag);
          setAsked(saysNone ? [noRedFlag] : now.filter((flag) => flag !== noRedFlag));
        }}
        options={[...redFlagNames, noRedFlag].map((value) => ({ value }))}
      />
      {flags.length > 0 && (
        <div className={css['flags']}>
          {flags.map((flag) => {
            const { urgency, thinkOf, now, symptom, source } = redFlags[flag];
            return (
              <Note key={flag} tone={urgency === 'at once' ? 'stop' : 'caution'} speaks="at once">
                <p>
                  <strong>{now}</strong>
                  {urgency === 'at once' && unit?.emergencyNumber !== undefined && (
                    <>
                      {' '}
                      The unit’s emergency number: <strong>{unit.emergencyNumber}</strong>.
                    </>
                  )}
                </p>
                <p>
                  {flag}: think of {thinkOf} <small>({source})</small>. A prescriber hears of it{' '}
                  {urgency === 'at once' ? 'as soon as help is on its way' : 'today'}.
                  {symptom !== undefined &&
                    ' It is written as a symptom too: a prescriber or nurse looks at it before a dose.'}
                </p>
              </Note>
            );
          })}
        </div>
      )}
    </div>
  );
}
