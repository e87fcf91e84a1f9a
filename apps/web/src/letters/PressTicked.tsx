import { Button } from '../paper/Button.tsx';
import css from './Letters.module.css';
import type { useMany } from './use-many.ts';

type Props = {
  readonly many: ReturnType<typeof useMany>;
  readonly chosen: number;
  readonly words: string;
  readonly start: () => void;
  readonly tickAll: { readonly words: string; readonly possible: boolean; readonly press: () => void };
};

/** One press for all that are ticked, with how far it is and a stop; or tick them all first. */
export function PressTicked({ many, chosen, words, start, tickAll }: Props) {
  return (
    <div className={`${css['acts']} screenOnly`}>
      <Button
        tone="act"
        busy={many.busy}
        busyWords={`${many.progress?.done ?? 0} of ${chosen} …`}
        disabled={chosen === 0}
        onClick={start}
      >
        {words}
      </Button>
      {many.busy ? (
        <Button onClick={many.stop}>Stop</Button>
      ) : (
        <Button disabled={!tickAll.possible} onClick={tickAll.press}>
          {tickAll.words}
        </Button>
      )}
    </div>
  );
}
