import { useState } from 'react';
import { ActForm } from '../../fields/ActForm.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { useMay } from '../../frame/may.ts';
import { Button } from '../../paper/Button.tsx';
import { Note } from '../../paper/Note.tsx';
import { Outcome } from '../../paper/Outcome.tsx';
import { useAct } from '../../server/use-act.ts';
import { counted } from '../../words/texts.ts';
import css from './Rest.module.css';

export type MovedPerson = {
  readonly name: string;
  readonly patient: string | undefined;
  readonly from: string;
  readonly to: string;
  readonly because: string;
};

/** Who has to be told another time and why; ticked once told, then written down by one act. */
export function TellThem({ session, moved }: { session: string; moved: readonly MovedPerson[] }) {
  const may = useMay();
  const [told, setTold] = useState<readonly string[]>([]);
  const [reason, setReason] = useState('');
  const attempt = useAct(() => setTold([]));
  const key = ({ name, to }: MovedPerson): string => `${name} ${to}`;
  const ticked = moved.filter((one) => told.includes(key(one)));
  if (moved.length === 0) return <Note tone="done">Nobody has to be told another time.</Note>;
  return (
    <ActForm
      refusals={attempt.refusals}
      send={() =>
        void attempt.send({
          name: 'tell times',
          session,
          times: ticked.flatMap(({ patient, to }) => (patient === undefined ? [] : [{ patient, arriveAt: to }])),
          reason,
        })
      }
    >
      <h3>{counted(moved.length, 'person has', 'people have')} to be told another time</h3>
      <Outcome of={attempt} />
      <ul className={css['tell']}>
        {moved.map((one) => (
          <li key={key(one)}>
            <label>
              <input
                type="checkbox"
                checked={told.includes(key(one))}
                onChange={(event) =>
                  setTold(event.target.checked ? [...told, key(one)] : told.filter((name) => name !== key(one)))
                }
              />
              <span>
                <strong>{one.name}</strong>: {one.to} instead of {one.from}. I have told them.
                <span className={css['because']}>Why: {one.because}</span>
              </span>
            </label>
          </li>
        ))}
      </ul>
      {may('tell times') && (
        <div className="screenOnly">
          <TextField label="Why the times change" at="reason" value={reason} onChange={setReason} />
          <div className={css['acts']}>
            <Button type="submit" tone="act" busy={attempt.busy} disabled={ticked.length === 0 || reason.trim() === ''}>
              Write down {counted(ticked.length, 'new time')}
            </Button>
          </div>
        </div>
      )}
    </ActForm>
  );
}
