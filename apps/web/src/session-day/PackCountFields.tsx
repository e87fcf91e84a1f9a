import type { SessionDayView } from '@twelvemonth/exchange';
import { NumberField } from '../fields/NumberField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { Note } from '../paper/Note.tsx';
import { shortDay } from '../words/dates.ts';
import { dotted } from '../words/texts.ts';
import { type PackCounts, countOf, countsToSend } from './pack-counts.ts';

type Props = {
  readonly data: SessionDayView;
  readonly counts: PackCounts;
  readonly setCounts: (counts: PackCounts) => void;
  /** At the closing somebody may say what is known about a difference. */
  readonly withNotes?: boolean;
};

/** One count a batch; the sum is not shown before: who has read it counts to it. */
export function PackCountFields({ data, counts, setCounts, withNotes = false }: Props) {
  if (data.batches.length === 0)
    return <Note>No packs that may be used were received here: receive them under Stock to count them.</Note>;
  return (
    <>
      {data.batches.map(({ batch, expiresOn, opened }) => {
        const value = countOf(counts, batch);
        // Refusals name a place in what was sent.
        const at = `counts.${countsToSend(counts, data).findIndex((sent) => sent.batch === batch)}`;
        return (
          <div key={batch}>
            <NumberField
              label={`Packs of ${batch} on the shelf`}
              help={dotted(`may be used until ${shortDay(expiresOn)}`, withNotes && `${opened} opened today`)}
              unit="packs"
              at={at}
              value={value.packs}
              onChange={(packs) => setCounts({ ...counts, [batch]: { ...value, packs } })}
            />
            {withNotes && (
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
      })}
    </>
  );
}
