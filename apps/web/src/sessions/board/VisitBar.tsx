import { type Day, type Drawn, leavesAt } from '@twelvemonth/planning';
import type { CSSProperties, KeyboardEvent } from 'react';
import css from './Board.module.css';
import type { DrawingAct } from './drawing-state.ts';
import { LockSign } from './LockSign.tsx';
import { seatOf } from './seat.ts';
import type { Shown } from './StaffRows.tsx';
import { type Scale, useDrag } from './use-drag.ts';
import { visitWords } from './visit-words.ts';

type Props = {
  readonly day: Day;
  readonly drawn: Drawn;
  readonly visit: number;
  /** The row it lies in, from 0. */
  readonly row: number;
  readonly scale: Scale;
  readonly shown: Shown;
  readonly isHeld: boolean;
  readonly isChosen: boolean;
  readonly isBroken: boolean;
  /** In its chair another sits at the same time. */
  readonly isOver: boolean;
  readonly act: (act: DrawingAct) => void;
};

const arrows: Readonly<Record<string, { readonly ticks: number; readonly chairs: number }>> = {
  ArrowLeft: { ticks: -1, chairs: 0 },
  ArrowRight: { ticks: 1, chairs: 0 },
  ArrowUp: { ticks: 0, chairs: -1 },
  ArrowDown: { ticks: 0, chairs: 1 },
};

/** One visit on the board: in its chair as a card, before and after it as a thin line of steps. */
export function VisitBar({ day, drawn, visit, row, scale, shown, isHeld, isChosen, isBroken, isOver, act }: Props) {
  const drag = useDrag(visit, scale, act);
  const own = day.visits[visit];
  const times = drawn.plan[visit];
  const words = visitWords(day, drawn, visit);
  if (own === undefined || times === null || times === undefined || words === undefined) return null;
  const end = leavesAt(own, times);
  const startOf = (step: number): number => times.starts[step] ?? 0;
  const endOf = (step: number): number => startOf(step) + (own.steps[step]?.ticks ?? 0);
  const { sits, rises } = seatOf(own, times);
  const across = (from: number, until: number): CSSProperties => ({
    insetInlineStart: `${((from - shown.from) / shown.ticks) * 100}%`,
    inlineSize: `${((until - from) / shown.ticks) * 100}%`,
  });
  const inside = (from: number, until: number): CSSProperties => ({
    insetInlineStart: `${((from - sits) / (rises - sits)) * 100}%`,
    inlineSize: `${((until - from) / (rises - sits)) * 100}%`,
  });
  const keys = (event: KeyboardEvent): void => {
    const arrow = arrows[event.key];
    if (arrow !== undefined) act({ does: 'step', visit, ...arrow });
    else if (event.key === 'Escape') act({ does: 'take back' });
    else if (event.key === 'Enter' || event.key === ' ') act({ does: 'let go' });
    else return;
    if (arrow !== undefined || isHeld) event.preventDefault();
  };
  const steps = own.steps.map(({ name, nurse }, step) => ({ name, nurse, from: startOf(step), until: endOf(step) }));
  const isSeated = (step: (typeof steps)[number]): boolean => step.from >= sits && step.until <= rises;
  return (
    <div className={css['visit']} style={{ insetBlockStart: row * scale.rowPixels, blockSize: scale.rowPixels }}>
      <span className={`${css['stay']} ${css['before']}`} style={across(times.arrives, sits)} />
      <span className={`${css['stay']} ${css['after']}`} style={across(rises, end)} />
      {steps.map((step) =>
        isSeated(step) ? null : (
          <span
            key={step.name}
            className={`${css['step']} ${css[step.nurse]} ${step.until <= sits ? css['before'] : css['after']}`}
            style={across(step.from, step.until)}
          />
        ),
      )}
      <button
        type="button"
        {...drag}
        className={[
          css['card'],
          isHeld ? css['held'] : '',
          isChosen ? css['chosen'] : '',
          isBroken ? css['broken'] : '',
          isOver ? css['over'] : '',
          words.lock === undefined ? '' : css['locked'],
        ].join(' ')}
        style={across(sits, rises)}
        aria-describedby="board-how"
        aria-pressed={isChosen}
        onFocus={() => act({ does: 'choose', visit })}
        onBlur={() => act({ does: 'let go' })}
        onKeyDown={keys}
      >
        <span className={css['who']}>
          {words.lock !== undefined && <LockSign />}
          {own.name}
        </span>
        <span className="unseen">, </span>
        <span className={css['when']}>
          {words.comes}
          <span className={isHeld ? undefined : 'unseen'}> to {words.leaves}</span>
        </span>
        <span className="unseen">
          {['', words.chair, ...(words.lock === undefined ? [] : [words.lock])].join(', ')}
          {isBroken && ', breaks a rule'}
        </span>
        <span className={css['chain']}>
          {steps.map((step) =>
            isSeated(step) ? (
              <span
                key={step.name}
                className={`${css['step']} ${css[step.nurse]}`}
                style={inside(step.from, step.until)}
              />
            ) : null,
          )}
        </span>
      </button>
    </div>
  );
}
