/** A day drawn by hand: what is held in the hand now, what can be undone, and which visit is looked at. */
import { type Day, type Drawn, type Lock, drawnFrom, moveInDrawing, type Plan } from '@twelvemonth/planning';

export type DrawingState = {
  readonly day: Day;
  readonly proposed: Drawn;
  readonly now: Drawn;
  /** The drawing before each thing that was done, newest last. */
  readonly past: readonly Drawn[];
  /** A visit that is being moved, and the drawing to which Escape goes back. */
  readonly held: { readonly visit: number; readonly from: Drawn } | undefined;
  readonly chosen: number | undefined;
};

export type DrawingAct =
  | { readonly does: 'choose'; readonly visit: number }
  | { readonly does: 'hold'; readonly visit: number }
  /** Dragged: counted from where the visit was taken up. */
  | { readonly does: 'drag'; readonly ticks: number; readonly chairs: number }
  /** One press of an arrow: counted from where it is now. */
  | { readonly does: 'step'; readonly visit: number; readonly ticks: number; readonly chairs: number }
  | { readonly does: 'let go' }
  | { readonly does: 'take back' }
  /** Moved and let go at once, as by a button. */
  | { readonly does: 'move'; readonly visit: number; readonly ticks: number; readonly chairs: number }
  | { readonly does: 'lock'; readonly visit: number; readonly lock: Lock | undefined }
  | { readonly does: 'draw'; readonly drawn: Drawn }
  | { readonly does: 'undo' };

export const drawingFrom = (day: Day, proposed: Drawn): DrawingState => ({
  day,
  proposed,
  now: proposed,
  past: [],
  held: undefined,
  chosen: undefined,
});

export const drawingOf = (day: Day, plan: Plan): DrawingState => drawingFrom(day, drawnFrom(day, plan));

const drawn = (state: DrawingState, now: Drawn): DrawingState =>
  now === state.now ? state : { ...state, now, past: [...state.past, state.now] };

function letGo(state: DrawingState): DrawingState {
  const { held, now, past } = state;
  if (held === undefined) return state;
  return { ...state, held: undefined, past: held.from === now ? past : [...past, held.from] };
}

const holding = (state: DrawingState, visit: number): DrawingState =>
  state.held?.visit === visit ? state : { ...letGo(state), held: { visit, from: state.now }, chosen: visit };

export function drawingAfter(state: DrawingState, act: DrawingAct): DrawingState {
  const { day } = state;
  switch (act.does) {
    case 'choose':
      return { ...state, chosen: act.visit };
    case 'hold':
      return holding(state, act.visit);
    case 'drag': {
      const { held } = state;
      if (held === undefined) return state;
      const now = moveInDrawing(day, held.from, held.visit, act.ticks, act.chairs);
      return { ...state, now };
    }
    case 'step': {
      const taken = holding(state, act.visit);
      return { ...taken, now: moveInDrawing(day, taken.now, act.visit, act.ticks, act.chairs) };
    }
    case 'let go':
      return letGo(state);
    case 'take back':
      return state.held === undefined ? state : { ...state, now: state.held.from, held: undefined };
    case 'move': {
      const settled = letGo(state);
      return {
        ...drawn(settled, moveInDrawing(day, settled.now, act.visit, act.ticks, act.chairs)),
        chosen: act.visit,
      };
    }
    case 'lock': {
      const settled = letGo(state);
      return drawn(settled, { ...settled.now, locks: settled.now.locks.with(act.visit, act.lock) });
    }
    case 'draw':
      return drawn(letGo(state), act.drawn);
    case 'undo': {
      const settled = letGo(state);
      const before = settled.past.at(-1);
      return before === undefined ? settled : { ...settled, now: before, past: settled.past.slice(0, -1) };
    }
  }
}
