/** Upright bars over equal steps of a scale, with a line where something ends: how often, or how many. */
import { type Drawing, element, palette, svg, text } from './drawing.ts';

export type BarsData = {
  readonly caption: string;
  readonly sentence: string;
  /** Heads of the table: what stands below, what the bars count. */
  readonly head: readonly [string, string];
  readonly bars: readonly { readonly label: string; readonly value: number; readonly says: string }[];
  /** A line before this bar, with its word: "closes". */
  readonly mark?: { readonly before: number; readonly says: string } | undefined;
};

const height = 150;
const foot = 26;
const top = 22;
const leastLabelWidth = 46;

/** Below the middle of its bar, or as near to it as leaves the whole word in the drawing. */
function labelBelow(middle: number, width: number, label: string): string {
  const half = leastLabelWidth / 2;
  const y = height - 8;
  if (middle < half) return text(0, y, label, { size: 12, anchor: 'start' });
  if (middle > width - half) return text(width, y, label, { size: 12, anchor: 'end' });
  return text(middle, y, label, { size: 12, anchor: 'middle' });
}

export function barsDrawing({ caption, sentence, head, bars, mark }: BarsData, width: number): Drawing {
  const each = width / Math.max(1, bars.length);
  const highest = Math.max(1e-9, ...bars.map(({ value }) => value));
  const base = height - foot;
  const every = Math.max(1, Math.ceil(leastLabelWidth / each));
  const drawn = bars.flatMap(({ label, value }, index) => {
    const tall = (value / highest) * (base - top);
    const late = mark !== undefined && index >= mark.before;
    return [
      element('rect', {
        x: index * each + 1,
        y: base - tall,
        width: Math.max(1, each - 2),
        height: tall,
        fill: late ? palette.sheet : palette.done,
        stroke: palette.done,
        'stroke-width': 1.5,
      }),
      index % every === 0 ? labelBelow(index * each + each / 2, width, label) : '',
    ];
  });
  const line =
    mark === undefined
      ? []
      : [
          element('path', {
            d: `M${mark.before * each} 4V${base}`,
            stroke: palette.ink,
            'stroke-width': 1.5,
            'stroke-dasharray': '5 3',
          }),
          text(Math.min(width - 4, mark.before * each), 14, mark.says, {
            size: 12,
            anchor: mark.before * 2 > bars.length ? 'end' : 'start',
          }),
        ];
  return {
    svg: svg(
      width,
      height,
      ...drawn,
      element('path', { d: `M0 ${base}H${width}`, stroke: palette.rule, 'stroke-width': 1 }),
      ...line,
    ),
    sentence,
    table: { caption, head, rows: bars.map(({ label, says }) => [label, says]) },
  };
}
