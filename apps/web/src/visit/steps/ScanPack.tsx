import type { PackReadingView } from '@twelvemonth/exchange';
import { Button } from '../../paper/Button.tsx';
import { Note } from '../../paper/Note.tsx';
import { usePosting } from '../../server/use-posting.ts';
import { dayInWords } from '../../words/dates.ts';
import css from '../Visit.module.css';
import { CameraScan } from './CameraScan.tsx';
import { ScanField } from './ScanField.tsx';
import type { ScannedPack } from './pack-in-hand.ts';

type Props = {
  readonly patient: string;
  readonly scanned: ScannedPack | undefined;
  readonly take: (pack: ScannedPack | undefined) => void;
};

const inWords = ({ says, remedy }: PackReadingView['troubles'][number]): string =>
  remedy === undefined ? says : `${says} ${remedy.slice(0, 1).toUpperCase()}${remedy.slice(1)}.`;

/** The code of the pack, read by the server; a pack that may not be used is not taken. A reading, never a check. */
export function ScanPack({ patient, scanned, take }: Props) {
  const reading = usePosting('readPack');
  const read = async (code: string): Promise<void> => {
    take(undefined);
    const answer = await reading.send({ code }, { patient }, { refresh: false });
    if (answer !== undefined && answer.troubles.length === 0) take(answer.pack);
  };
  if (scanned !== undefined) {
    return (
      <section aria-label="What the code says" className={css['order']}>
        <output>
          <dl>
            <dt>the code says</dt>
            <dd>{scanned.product}</dd>
            <dt>batch</dt>
            <dd>{scanned.batch ?? 'not in the code'}</dd>
            <dt>may be used until</dt>
            <dd>{scanned.expiresOn === undefined ? 'not in the code' : dayInWords(scanned.expiresOn)}</dd>
            <dt>serial</dt>
            <dd>{scanned.serial ?? 'not in the code'}</dd>
          </dl>
        </output>
        {scanned.lookAt.map((each) => (
          <Note key={each} tone="caution">
            {each}
          </Note>
        ))}
        <p style={{ marginTop: '0.6rem' }}>
          <Button size="big" onClick={() => take(undefined)}>
            Scan another pack
          </Button>
        </p>
      </section>
    );
  }
  const troubles = reading.answer?.troubles ?? [];
  const first = troubles[0];
  const trouble =
    reading.error === undefined ? (first === undefined ? undefined : inWords(first)) : reading.error.message;
  return (
    <>
      <ScanField
        label="Scan the square code on the pack"
        help="The scanner types here and reads by itself; by hand, press Enter at the end."
        at="scan"
        trouble={trouble}
        busy={reading.busy}
        onScan={(code) => void read(code)}
      />
      <CameraScan busy={reading.busy} onScan={(code) => void read(code)} />
      {reading.answer?.pack !== undefined && first !== undefined && (
        <div style={{ marginBottom: '1rem' }}>
          <Note tone="stop" speaks="at once">
            <p>
              <strong>Do not use this pack.</strong>
            </p>
            {troubles.slice(1).map((each) => (
              <p key={`${each.name} ${each.says}`}>{inWords(each)}</p>
            ))}
          </Note>
        </div>
      )}
    </>
  );
}
