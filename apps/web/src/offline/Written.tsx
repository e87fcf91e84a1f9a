import { useUnit } from '../frame/unit.ts';
import { momentInWords } from '../words/dates.ts';
import { actInWords } from './act-in-words.ts';
import type { WaitingAct } from './waiting.ts';

/** One that waits: about whom, what, by whom and when. */
export function Written({ act }: { act: WaitingAct }) {
  const { unit } = useUnit();
  return (
    <>
      <strong>{act.name}</strong>: {actInWords(act.act)}{' '}
      <span className="quiet">
        ({act.staffName}, {momentInWords(act.wroteAt, unit?.zone)})
      </span>
    </>
  );
}
