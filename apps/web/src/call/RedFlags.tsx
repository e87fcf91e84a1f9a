import { type AskedFlag, flagsIn, flagsToAsk, noRedFlag } from '@twelvemonth/clinical';
import { Flags } from '../aftercare/RedFlags.tsx';
import { TicksField } from '../fields/TicksField.tsx';
import { useUnit } from '../frame/unit.ts';
import { Note } from '../paper/Note.tsx';
import css from './Call.module.css';

/** Asked before anything else; what is ticked says at once who acts, by when, and what the person does now. */
export function RedFlags({
  asked,
  setAsked,
}: {
  asked: readonly AskedFlag[];
  setAsked: (asked: readonly AskedFlag[]) => void;
}) {
  const { unit } = useUnit();
  const flags = flagsIn(asked);
  const atOnce = flags.some(({ urgency }) => urgency === 'now');
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
        options={[...flagsToAsk, noRedFlag].map((value) => ({ value }))}
      />
      {flags.length > 0 && (
        <div className={css['flags']}>
          <Note tone={atOnce ? 'stop' : 'caution'} speaks="at once">
            <Flags flags={flags} />
            {atOnce && unit?.emergencyNumber !== undefined && (
              <p>
                The unit’s emergency number: <strong>{unit.emergencyNumber}</strong>.
              </p>
            )}
          </Note>
        </div>
      )}
    </div>
  );
}
