/**
 * Something uncertain over time: the mean as a line, the range that holds four in five futures as a hatched band, the one that
 * holds nineteen in twenty as a light band with an edge; what it is held against as a dashed line with its word. Told apart
 * without colour.
 */
import { type Drawing, type Table, element, palette, svg, text, textWidth } from './drawing.ts';

export type RangesData = {
  readonly sentence: string;
  readonly table: Table;
  /** Over equal steps of time. */
  readonly mean: readonly number[];
  readonly low80: readonly number[];
  readonly high80: readonly number[];
  readonly low95: readonly number[];
  readonly high95: readonly number[];
  /** What the values are held against: "26 places". */
  readonly against?: { readonly value: number; readonly says: string } | undefined;
  /** The mean as it was before something was changed: a dotted line. */
  readonly before?: readonly number[] | undefined;
  /** Words below the steps at which they stand. */
  readonly ticks: readonly { readonly at: number; readonly says: string }[];
  /** What stands beside the scale: "places a week". */
  readonly unit: string;
  /** The scale reaches at least so far. */
  readonly atLeast?: number | undefined;
  /** Two pictures on one page have patterns of their own. */
  readonly id: string;
};

const height = 210;
const foot = 26;
const top = 26;
const left = 40;
const right = 8;
const steps = 4;
const small = 12;

/** The next of 1, 2, 4, 5, 10, 20 ... that four equal steps can reach the value with. */
function niceStep(highest: number): number {
  const rough = Math.max(1e-9, highest) / steps;
  const power = 10 ** Math.floor(Math.log10(rough));
  return (
    [1, 2, 2.5, 5, 10]
      .map((factor) => factor * power)
      .find((step) => step >= rough && (step >= 1 || Number.isInteger(step * 10))) ?? power * 10
  );
}

const figure = (value: number): string => String(Math.round(value * 100) / 100);

export function rangesDrawing(data: RangesData, width: number): Drawing {
  const { mean, low80, high80, low95, high95, against, before, ticks, unit, atLeast = 0, id } = data;
  const base = height - foot;
  const highest = Math.max(atLeast, against?.value ?? 0, ...high95, ...(before ?? []));
  const step = niceStep(highest);
  const most = step * steps;
  const last = Math.max(1, mean.length - 1);
  const x = (at: number): number => left + (at / last) * (width - left - right);
  const y = (value: number): number => base - (Math.min(value, most) / most) * (base - top);
  const line = (values: readonly number[]): string =>
    values.map((value, at) => `${at === 0 ? 'M' : 'L'}${tenth(x(at))} ${tenth(y(value))}`).join('');
  const band = (low: readonly number[], high: readonly number[]): string =>
    `${line(high)}${low.map((_, at) => `L${tenth(x(last - at))} ${tenth(y(low[last - at] ?? 0))}`).join('')}Z`;
  const hatch = `hatch-${id}`;
  const scale = Array.from({ length: steps + 1 }, (_, index) => {
    const value = index * step;
    return [
      element('path', { d: `M${left} ${tenth(y(value))}H${width - right}`, stroke: palette.faintRule }),
      text(left - 6, y(value) + 4, figure(value), { size: small, anchor: 'end', fill: palette.secondInk }),
    ];
  });
  const below = ticks.flatMap(({ at, says }) => [
    element('path', { d: `M${tenth(x(at))} ${base}V${base + 5}`, stroke: palette.done }),
    text(clear(x(at), says, width), height - 6, says, { size: small, anchor: 'middle', fill: palette.secondInk }),
  ]);
  return {
    svg: svg(
      width,
      height,
      element(
        'defs',
        {},
        element(
          'pattern',
          { id: hatch, width: 6, height: 6, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(45)' },
          element('rect', { width: 6, height: 6, fill: palette.straw, 'fill-opacity': '0.35' }),
          element('path', { d: 'M0 0V6', stroke: palette.done, 'stroke-width': 1.6 }),
        ),
      ),
      ...scale.flat(),
      text(0, 12, unit, { size: small, fill: palette.secondInk }),
      element('path', {
        d: band(low95, high95),
        fill: palette.waitWash,
        'fill-opacity': '0.7',
        stroke: palette.straw,
        'stroke-width': 1,
      }),
      element('path', { d: band(low80, high80), fill: `url(#${hatch})`, stroke: 'none' }),
      ...(before === undefined
        ? []
        : [
            element('path', {
              d: line(before),
              fill: 'none',
              stroke: palette.secondInk,
              'stroke-width': 2,
              'stroke-dasharray': '1 4',
              'stroke-linecap': 'round',
            }),
          ]),
      element('path', { d: line(mean), fill: 'none', stroke: palette.ink, 'stroke-width': 2.5 }),
      ...(against === undefined
        ? []
        : [
            element('path', {
              d: `M${left} ${tenth(y(against.value))}H${width - right}`,
              stroke: palette.act,
              'stroke-width': 2,
              'stroke-dasharray': '8 4',
            }),
            element('rect', {
              x: width - right - textWidth(against.says, small + 1) - 6,
              y: y(against.value) - 19,
              width: textWidth(against.says, small + 1) + 8,
              height: 16,
              fill: palette.sheet,
              'fill-opacity': '0.85',
            }),
            text(width - right, y(against.value) - 6, against.says, {
              size: small + 1,
              anchor: 'end',
              weight: 650,
              fill: palette.act,
            }),
          ]),
      element('path', { d: `M${left} ${base}H${width - right}`, stroke: palette.done }),
      ...below,
    ),
    sentence: data.sentence,
    table: data.table,
  };
}

const tenth = (value: number): string => String(Math.round(value * 10) / 10);

/** The middle of a word that stays inside the picture. */
function clear(at: number, says: string, width: number): number {
  const half = textWidth(says, small) / 2;
  return Math.min(width - half, Math.max(half, at));
}
