import type { SessionDayView } from '@twelvemonth/exchange';
import { NumberField } from '../fields/NumberField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { useTroubleAt } from '../fields/field-trouble.ts';
import { Note } from '../paper/Note.tsx';
import { Why } from '../paper/Why.tsx';
import { shortDay } from '../words/dates.ts';
import { dotted } from '../words/texts.ts';
import { type PackCounts, countOf, countsToSend } from './pack-counts.ts';

type Batch = SessionDayView['batches'][number];
type Props = {
  readonly data: SessionDayView;
  readonly counts: PackCounts;
  readonly setCounts: (counts: PackCounts) => void;
  /** At the closing: how many were opened today, and what is known about a difference. */
  readonly closing?: boolean;
};

/** One count a batch; the sum is not shown before: who has read it counts to it. What should not lie here is one tap away. */
export function PackCountFields(props: Props) {
  const { batches } = props.data;
  if (batches.length === 0)
    return <Note>No packs that may be used were received here: receive them under Stock to count them.</Note>;
  const [here, elsewhere] = [batches.filter(({ isHere }) => isHere), batches.filter(({ isHere }) => !isHere)];
  return (
    <>
      {here.map((batch) => (
        <PackCount key={batch.batch} {...props} of={batch} />
      ))}
      {elsewhere.length > 0 && (
        <Why word="packs of another batch lie here" about="batches of which none should be on the shelf">
          {elsewhere.map((batch) => (
            <PackCount key={batch.batch} {...props} of={batch} />
          ))}
        </Why>
      )}
    </>
  );
}

function PackCount({ data, counts, setCounts, closing = false, of }: Props & { of: Batch }) {
  const { batch, expiresOn, opened } = of;
  const value = countOf(counts, batch);
  // Refusals name a place in what was sent.
  const at = `counts.${countsToSend(counts, data).findIndex((sent) => sent.batch === batch)}`;
  const differs = useTroubleAt(`${at}.packs`) !== undefined;
  return (
    <div>
      <NumberField
        label={`Packs of ${batch} on the shelf`}
        help={dotted(`may be used until ${shortDay(expiresOn)}`, closing && `${opened} opened today`)}
        unit="packs"
        at={at}
        value={value.packs}
        onChange={(packs) => setCounts({ ...counts, [batch]: { ...value, packs } })}
      />
      {closing && (differs || value.note !== '') && (
        <TextField
          label={`If ${batch} does not add up: what is known`}
          optional
          at={`${at}.note`}
          value={value.note}
          onChange={(note) => setCounts({ ...counts, [batch]: { ...value, note } })}
        />
      )}
    </div>
  );
}
