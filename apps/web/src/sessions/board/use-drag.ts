import { type PointerEvent, useRef } from 'react';
import type { DrawingAct } from './drawing-state.ts';

/** Pixels a finger may wander while it only presses. */
const pressSlack = 4;

/** How far one tick is across the board, measured when a visit is taken up, and how high a row is. */
export type Scale = { readonly pixelsPerTick: () => number; readonly rowPixels: number };

type Taken = { readonly pointer: number; readonly x: number; readonly y: number; said: string; moves: boolean };

/**
 * Dragging with a mouse, a pen or a finger: pointer events of the platform, which know all three. The visit follows in whole
 * ticks and whole rows.
 */
export function useDrag(visit: number, scale: Scale, act: (act: DrawingAct) => void) {
  const taken = useRef<Taken>(undefined);
  const end = (event: PointerEvent<HTMLElement>, does: 'let go' | 'take back'): void => {
    if (taken.current?.pointer !== event.pointerId) return;
    const { moves } = taken.current;
    taken.current = undefined;
    if (moves) act({ does });
  };
  return {
    onPointerDown(event: PointerEvent<HTMLElement>): void {
      if (event.button !== 0 || taken.current !== undefined) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      taken.current = { pointer: event.pointerId, x: event.clientX, y: event.clientY, said: '0 0', moves: false };
      act({ does: 'choose', visit });
    },
    onPointerMove(event: PointerEvent<HTMLElement>): void {
      const from = taken.current;
      if (from?.pointer !== event.pointerId) return;
      const across = event.clientX - from.x;
      const down = event.clientY - from.y;
      if (!from.moves) {
        if (Math.abs(across) < pressSlack && Math.abs(down) < pressSlack) return;
        from.moves = true;
        act({ does: 'hold', visit });
      }
      const ticks = Math.round(across / scale.pixelsPerTick());
      const chairs = Math.round(down / scale.rowPixels);
      if (from.said === `${ticks} ${chairs}`) return;
      from.said = `${ticks} ${chairs}`;
      act({ does: 'drag', ticks, chairs });
    },
    onPointerUp: (event: PointerEvent<HTMLElement>): void => end(event, 'let go'),
    onPointerCancel: (event: PointerEvent<HTMLElement>): void => end(event, 'take back'),
  };
}
