/**
 * How many of a hundred have come to each end by a day: one step line an end, told apart by its dashes and by a name at its end.
 * The same as a sentence, and as a table of a few days.
 */
import { type Drawing, element, palette, svg, text, textWidth } from './drawing.ts';

export type IncidenceLine = {
  readonly says: string;
  /** Ascending by day; the share holds from that day on, within its limits where they are known. Before the first it is `from`. */
  readonly points: readonly {
    readonly days: number;
    readonly share: number;
    readonly limits?: { readonly lower: number; readonly upper: number } | undefined;
  }[];
  readonly from: 0 | 1;
};
export type IncidenceData = {
  readonly caption: string;
  /** How many people are drawn. */
  readonly people: number;
  /** The last day drawn. */
  readonly until: number;
  /** Days of the table, with what each is called. */
  readonly rows: readonly { readonly days: number; readonly says: string; readonly atRisk: number }[];
  readonly lines: readonly IncidenceLine[];
};

const looks = [
  { stroke: palette.ready, width: 3, dash: undefined },
  { stroke: palette.notReady, width: 2.5, dash: '8 4' },
  { stroke: palette.wait, width: 2.5, dash: '2 4' },
  { stroke: palette.ink, width: 1.5, dash: '12 3 2 3' },
] as const;
const SIZE = 13;
const HEIGHT = 230;
const TOP = 12;
const LEFT = 40;
/** Room a name takes, from line to line. */
const NAME = 17;
/** On a narrower picture they stand below it, each with a piece of its line. */
const NAMES_BESIDE_FROM = 480;

const pointOn = ({ points, from }: IncidenceLine, days: number): IncidenceLine['points'][number] =>
  points.findLast((point) => point.days <= days) ?? { days: 0, share: from };
const shareOn = (line: IncidenceLine, days: number): number => pointOn(line, days).share;
const ofHundred = (share: number): string => String(Math.round(share * 100));

export function incidenceCurve(data: IncidenceData, style: { readonly width?: number } = {}): Drawing {
  const width = Math.max(240, style.width ?? 620);
  const beside = width >= NAMES_BESIDE_FROM;
  const names = Math.max(...data.lines.map(({ says }) => textWidth(`100 ${says}`, SIZE))) + 12;
  const right = width - (beside ? names : 12);
  const x = (days: number): number => LEFT + (Math.min(days, data.until) / data.until) * (right - LEFT);
  const y = (share: number): number => TOP + (1 - share) * HEIGHT;
  const parts = [...grid(data, x, y, right)];
  for (const [index, line] of data.lines.entries()) {
    const look = looks[index % looks.length];
    if (look === undefined) continue;
    const path = [`M${cut(x(0))} ${cut(y(line.from))}`];
    for (const { days, share } of line.points) if (days <= data.until) path.push(`H${cut(x(days))}V${cut(y(share))}`);
    path.push(`H${cut(right)}`);
    parts.push(
      element('path', {
        d: path.join(''),
        fill: 'none',
        stroke: look.stroke,
        'stroke-width': look.width,
        'stroke-dasharray': look.dash,
      }),
    );
  }
  parts.push(...(beside ? namesBeside(data, right, y) : namesBelow(data)));
  const below = beside ? 0 : data.lines.length * NAME + 6;
  return { svg: svg(width, TOP + HEIGHT + 46 + below, ...parts), sentence: sentenceOf(data), table: tableOf(data) };
}

const cut = (value: number): number => Math.round(value * 10) / 10;

function grid(
  { until }: IncidenceData,
  x: (days: number) => number,
  y: (share: number) => number,
  right: number,
): string[] {
  const parts: string[] = [];
  for (const share of [0, 0.25, 0.5, 0.75, 1]) {
    const at = cut(y(share));
    parts.push(
      element('path', { d: `M${LEFT} ${at}H${cut(right)}`, stroke: share === 0 ? palette.rule : palette.faintRule }),
      text(LEFT - 6, at + 4, ofHundred(share), { size: SIZE, anchor: 'end', fill: palette.secondInk }),
    );
  }
  const step = until > 900 ? 12 : 6;
  for (let months = 0; (months * 365) / 12 <= until; months += step) {
    const at = cut(x((months * 365) / 12));
    parts.push(
      element('path', { d: `M${at} ${cut(y(0))}v5`, stroke: palette.secondInk }),
      text(at, y(0) + 19, String(months), { size: SIZE, anchor: 'middle', fill: palette.secondInk }),
    );
  }
  parts.push(text(LEFT, y(0) + 38, 'months; of 100 people', { size: SIZE, fill: palette.secondInk }));
  return parts;
}

/** Names beside the ends of the lines, moved apart so that none covers another. */
function namesBeside({ lines, until }: IncidenceData, right: number, y: (share: number) => number): string[] {
  const names = lines
    .map((line, index) => ({ line, index, at: y(shareOn(line, until)) }))
    .toSorted((a, b) => a.at - b.at);
  let lowest = -Infinity;
  const spread = names.map((one) => {
    lowest = Math.max(one.at + 4, lowest + NAME);
    return { ...one, at: lowest };
  });
  // None stands below the foot of the picture, where the months are.
  const placed = spread.map((one, place) => ({
    ...one,
    at: Math.min(one.at, TOP + HEIGHT + 4 - (spread.length - 1 - place) * NAME),
  }));
  return placed.map(({ line, index, at }) => nameOf(line, index, until, right + 8, at));
}

function namesBelow({ lines, until }: IncidenceData): string[] {
  return lines.flatMap((line, index) => {
    const look = looks[index % looks.length];
    const at = TOP + HEIGHT + 58 + index * NAME;
    return [
      element('path', {
        d: `M${LEFT} ${at - 4}h28`,
        stroke: look?.stroke,
        'stroke-width': look?.width,
        'stroke-dasharray': look?.dash,
      }),
      nameOf(line, index, until, LEFT + 36, at),
    ];
  });
}

const nameOf = (line: IncidenceLine, index: number, until: number, x: number, y: number): string =>
  text(x, y, `${ofHundred(shareOn(line, until))} ${line.says}`, {
    size: SIZE,
    fill: looks[index % looks.length]?.stroke ?? palette.ink,
    weight: 650,
  });

function sentenceOf({ caption, people, lines, rows }: IncidenceData): string {
  const last = rows[rows.length - 1];
  if (people === 0 || last === undefined) return `${caption}: nobody yet.`;
  const said = lines.map((line) => `${ofHundred(shareOn(line, last.days))} ${line.says}`).join(', ');
  return `${caption}, ${people} people: of 100, by ${last.says}, ${said}.`;
}

const tableOf = ({ caption, rows, lines }: IncidenceData): Drawing['table'] => ({
  caption: `${caption}, of 100 people (in brackets: limits of 95 in 100)`,
  head: ['by', ...lines.map(({ says }) => says), 'people still under way'],
  rows: rows.map(({ days, says, atRisk }) => [
    says,
    ...lines.map((line) => withLimits(pointOn(line, days))),
    String(atRisk),
  ]),
});

const toTenth = (share: number): string => (share * 100).toFixed(1);

const withLimits = ({ share, limits }: IncidenceLine['points'][number]): string =>
  limits === undefined ? toTenth(share) : `${toTenth(share)} (${toTenth(limits.lower)} to ${toTenth(limits.upper)})`;
