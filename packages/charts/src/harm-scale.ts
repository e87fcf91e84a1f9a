/**
 * The harm scale: how common harms are, all of one number of people, on a line where each step is ten times more. A bar is the
 * range, a disc the best number, a ring the number without the treatment.
 */
import { type Drawing, element, palette, svg, text, textWidth } from './drawing.ts';
import { wrapped } from './wrapped.ts';

export type HarmRow = {
  readonly says: string;
  readonly point?: number | undefined;
  readonly range?: { readonly from: number; readonly to: number } | undefined;
  readonly without?: number | undefined;
  /** "uncommon" */
  readonly common: string;
};
export type HarmScaleData = { readonly caption: string; readonly of: number; readonly rows: readonly HarmRow[] };

const SIZE = 14;
const LINE = 18;

const grouped = (value: number): string => String(value).replaceAll(/\B(?=(\d{3})+$)/g, ',');

function numbers({ point, range, without }: HarmRow): string {
  const between = range === undefined ? undefined : `${grouped(range.from)} to ${grouped(range.to)}`;
  const best =
    point === undefined ? (between ?? 'not known') : `${grouped(point)}${between === undefined ? '' : ` (${between})`}`;
  return `${best}${without === undefined ? '' : `; without the treatment ${grouped(without)}`}`;
}

export function harmScale(data: HarmScaleData, style: { readonly width?: number } = {}): Drawing {
  const width = Math.max(240, style.width ?? 620);
  const left = 14;
  const right = width - 30;
  const steps = Math.log10(data.of);
  /** Less than one is drawn at the very left: "none seen". */
  const x = (value: number): number =>
    left + ((value < 1 ? 0 : Math.log10(value) + 0.4) / (steps + 0.4)) * (right - left);
  const parts: string[] = [];
  let y = 8;
  for (const row of data.rows) {
    for (const line of wrapped(`${row.says}: ${row.common}`, width - 8, SIZE)) {
      parts.push(text(4, y + 12, line, { size: SIZE }));
      y += LINE;
    }
    const middle = y + 9;
    parts.push(element('path', { d: `M${left} ${middle}H${Math.round(right)}`, stroke: palette.rule }));
    if (row.range !== undefined) {
      const from = x(row.range.from);
      parts.push(
        element('rect', {
          x: from,
          y: middle - 4,
          width: Math.max(3, x(row.range.to) - from),
          height: 8,
          fill: '#dfe1f0',
          stroke: palette.ink,
        }),
      );
    }
    if (row.without !== undefined)
      parts.push(
        element('circle', {
          cx: x(row.without),
          cy: middle,
          r: 5,
          fill: palette.sheet,
          stroke: palette.ink,
          'stroke-width': 2,
        }),
      );
    if (row.point !== undefined)
      parts.push(element('circle', { cx: x(row.point), cy: middle, r: 6, fill: palette.ink }));
    y += 28;
  }
  for (let step = 0; step <= steps; step += 1) {
    const at = x(10 ** step);
    const label = grouped(10 ** step);
    parts.unshift(element('path', { d: `M${Math.round(at)} 4V${y}`, stroke: palette.faintRule }));
    parts.push(
      text(Math.min(at, width - textWidth(label, 13) / 2 - 2), y + 14, label, {
        size: 13,
        anchor: 'middle',
        fill: palette.secondInk,
      }),
    );
  }
  parts.push(text(4, y + 34, `people of ${grouped(data.of)}`, { size: 13, fill: palette.secondInk }));
  const legend = [
    [element('circle', { cx: 12, cy: 0, r: 6, fill: palette.ink }), 'with the treatment'],
    [element('rect', { x: 4, y: -4, width: 16, height: 8, fill: '#dfe1f0', stroke: palette.ink }), 'range'],
    [
      element('circle', { cx: 12, cy: 0, r: 5, fill: palette.sheet, stroke: palette.ink, 'stroke-width': 2 }),
      'without the treatment; at the very left: none',
    ],
  ] as const;
  let below = y + 54;
  for (const [shape, says] of legend) {
    parts.push(element('g', { transform: `translate(0 ${below})` }, shape));
    for (const line of wrapped(says, width - 36, 13)) {
      parts.push(text(28, below + 5, line, { size: 13 }));
      below += LINE;
    }
  }
  return {
    svg: svg(width, below, ...parts),
    sentence: `${data.caption}, of ${grouped(data.of)} people: ${data.rows.map((row) => `${row.says}: ${numbers(row)} (${row.common})`).join('; ')}.`,
    table: {
      caption: data.caption,
      head: ['what', `of ${grouped(data.of)} people`, 'without the treatment', 'how common'],
      rows: data.rows.map((row) => [
        row.says,
        numbers({ ...row, without: undefined }),
        row.without === undefined ? 'not known' : grouped(row.without),
        row.common,
      ]),
    },
  };
}
