/** A verdict's shape: filled disc, square with a bar, hollow diamond, dash. Always beside its word. */
import type { Verdict } from '@twelvemonth/clinical';
import { element, palette, svg } from './drawing.ts';

export function verdictMark(verdict: Verdict, size = 14): string {
  const half = 7;
  switch (verdict) {
    case 'ready':
      return scaled(size, element('circle', { cx: half, cy: half, r: 6.5, fill: palette.ready }));
    case 'not ready':
      return scaled(
        size,
        element('rect', { x: 0.5, y: 0.5, width: 13, height: 13, fill: palette.notReady }) +
          element('path', { d: 'M3 7H11', stroke: '#ffffff', 'stroke-width': 2.5 }),
      );
    case 'cannot say':
      return scaled(
        size,
        element('path', { d: 'M7 1L13 7L7 13L1 7Z', fill: 'none', stroke: palette.cannotSay, 'stroke-width': 2 }),
      );
    case 'does not apply':
      return scaled(size, element('path', { d: 'M2 7H12', stroke: palette.secondInk, 'stroke-width': 2 }));
  }
}
const scaled = (size: number, content: string): string =>
  svg(14, 14, content).replace('width="14" height="14"', `width="${size}" height="${size}"`);
