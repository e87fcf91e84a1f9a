/**
 * The course strip: one life-line over the years. Drops for doses (hollow: due), broken strokes for fractures, bars for
 * tablets, a diamond for a review, a bracket with a broken life-line for a planned break, a wave for a reaction.
 */
import { type Day, addDays, addMonths, civilFromDay, shortDate } from '@twelvemonth/clinical';
import { type Drawing, element, palette, svg, text, textWidth } from './drawing.ts';
import { type TimeAxis, timeAxis, yearStarts } from './time-axis.ts';

export type CourseMark = {
  readonly kind: 'fracture' | 'tablets' | 'reaction' | 'review' | 'break' | 'denosumab';
  readonly from: Day;
  readonly until?: Day | undefined;
  readonly says: string;
  /** More than fits beside the mark; told in the table. */
  readonly more?: string | undefined;
};
export type CourseStripData = {
  readonly today: Day;
  readonly doses: readonly { readonly on: Day; readonly number: number; readonly part: boolean }[];
  readonly due?: { readonly on: Day; readonly number: number } | undefined;
  readonly marks: readonly CourseMark[];
};
export type CourseStripStyle = { readonly width?: number };

const LINE = 62;
/** Rows of words below the line that fit above the years, and above the line under the upper edge. */
const ROWS_BELOW = 2;
const ROWS_ABOVE = 2;
const ROW = 18;
const ROW_ABOVE = 15;
/** Words above the line stand higher than any drop. */
const FIRST_ABOVE = LINE - 34;
/** Half a drop and half a broken stroke: nearer than that one would hide the other. */
const DROP_NEAR = 16;
const STROKE_NEAR = 10;

function drop(x: number, label: string, filled: boolean): string {
  return (
    element('path', {
      d: `M${Math.round(x)} ${LINE - 26}C${Math.round(x + 14)} ${LINE - 6} ${Math.round(x + 11)} ${LINE + 8} ${Math.round(x)} ${LINE + 8}C${Math.round(x - 11)} ${LINE + 8} ${Math.round(x - 14)} ${LINE - 6} ${Math.round(x)} ${LINE - 26}Z`,
      fill: filled ? palette.ready : palette.sheet,
      stroke: palette.ready,
      'stroke-width': 2,
    }) + text(x, LINE + 3, label, { size: 13, weight: 700, anchor: 'middle', fill: filled ? '#ffffff' : palette.ready })
  );
}

type Placed = {
  readonly item: CourseMark;
  readonly x: number;
  readonly until: number;
  readonly row: number;
  /** Where its words begin, so that none run over the edge. */
  readonly labelX: number;
};

/** Crosses the life-line; where a drop stands it breaks above its number, with a rim of paper, so that neither hides the other. */
function brokenStroke(x: number, onDrop: boolean): string {
  const [top, bottom] = onDrop ? [LINE - 32, LINE - 8] : [LINE - 18, LINE + 12];
  const [a, b] = [top + (bottom - top) * 0.4, top + (bottom - top) * 0.6];
  const d = `M${Math.round(x - 4)} ${top}L${Math.round(x + 4)} ${Math.round(a)}L${Math.round(x - 4)} ${Math.round(b)}L${Math.round(x + 4)} ${bottom}`;
  return (
    element('path', { d, fill: 'none', stroke: palette.sheet, 'stroke-width': 7 }) +
    element('path', { d, fill: 'none', stroke: palette.notReady, 'stroke-width': 3 })
  );
}

/** Fractures are drawn last: what lies on the same days must not cover them. Two in a few days stand beside each other. */
function fractures(placed: readonly Placed[], drops: readonly number[]): string {
  let before = Number.NEGATIVE_INFINITY;
  return placed
    .filter(({ item }) => item.kind === 'fracture')
    .map(({ item, x, row, labelX }) => {
      const at = Math.max(x, before + STROKE_NEAR);
      before = at;
      return (
        brokenStroke(
          at,
          drops.some((drop) => Math.abs(drop - at) < DROP_NEAR),
        ) + text(labelX, FIRST_ABOVE - row * ROW_ABOVE, item.says, { size: 13, fill: palette.notReady })
      );
    })
    .join('');
}

function mark({ item, x, until, row, labelX }: Placed): string {
  const below = LINE + 26 + row * ROW;
  switch (item.kind) {
    case 'fracture':
      return '';
    case 'tablets':
    case 'denosumab':
      return (
        element('rect', {
          x,
          y: LINE - 8,
          width: Math.max(8, until - x),
          height: 16,
          fill: '#dfe1f0',
          stroke: palette.cannotSay,
        }) + text(labelX, below, item.says, { size: 13, fill: palette.cannotSay })
      );
    case 'reaction':
      return (
        element('path', {
          d: `M${Math.round(labelX)} ${FIRST_ABOVE - row * ROW_ABOVE - 4}q5 -8 10 0t10 0`,
          fill: 'none',
          stroke: palette.wait,
          'stroke-width': 2.5,
        }) + text(labelX + WAVE, FIRST_ABOVE - row * ROW_ABOVE, item.says, { size: 13, fill: palette.wait })
      );
    case 'review':
      return (
        element('path', {
          d: `M${Math.round(x)} ${LINE - 7}l6 7l-6 7l-6 -7Z`,
          fill: palette.sheet,
          stroke: palette.wait,
          'stroke-width': 2,
        }) + text(labelX, below + 6, item.says, { size: 13, fill: palette.wait })
      );
    case 'break':
      return (
        element('path', {
          d: `M${Math.round(x)} ${LINE}H${Math.round(Math.max(x + 10, until))}`,
          stroke: palette.sheet,
          'stroke-width': 3,
          'stroke-dasharray': '6 6',
        }) +
        element('path', {
          d: `M${Math.round(x)} ${LINE + 12}v7H${Math.round(Math.max(x + 10, until))}v-7`,
          fill: 'none',
          stroke: palette.wait,
          'stroke-width': 2,
        }) +
        text(labelX, below + 6, item.says, { size: 13, fill: palette.wait })
      );
  }
}

/** Room a wave takes before its words. */
const WAVE = 24;

const sideOf = ({ kind }: CourseMark): 'above' | 'below' =>
  kind === 'fracture' || kind === 'reaction' ? 'above' : 'below';

/** Words that would touch those before them on the same side go to the next free row. */
function placedMarks(data: CourseStripData, axis: TimeAxis, width: number): readonly Placed[] {
  const ends: Record<'above' | 'below', number[]> = { above: [], below: [] };
  return data.marks
    .toSorted((a, b) => a.from - b.from)
    .map((item) => {
      const side = sideOf(item);
      const x = axis.x(item.from);
      const room = textWidth(item.says, 13) + (item.kind === 'reaction' ? WAVE : 0);
      const wanted = item.kind === 'fracture' ? x - room / 2 : x;
      const labelX = Math.max(4, Math.min(wanted, width - 8 - room));
      const free = ends[side].findIndex((end) => end <= labelX);
      const row = free === -1 ? ends[side].length : free;
      ends[side][row] = labelX + room + 8;
      return { item, x, until: axis.x(item.until ?? data.today), row, labelX };
    });
}

export function courseStrip(data: CourseStripData, style: CourseStripStyle = {}): Drawing {
  const width = style.width ?? 940;
  const days = [...data.doses.map((dose) => dose.on), ...data.marks.map((item) => item.from), data.today];
  const from = addMonths(Math.min(...days) as Day, -6);
  const until = addDays(
    Math.max(data.today, data.due?.on ?? data.today, ...data.marks.map((item) => item.until ?? item.from)) as Day,
    240,
  );
  const axis = timeAxis(from, until, 12, width - 16);
  const parts: string[] = [];
  const placed = placedMarks(data, axis, width);
  const above = placed.filter(({ item }) => sideOf(item) === 'above').map(({ row }) => row + 1);
  const higher = Math.max(0, ...above.map((rows) => rows - ROWS_ABOVE)) * ROW_ABOVE;
  const below = placed.filter(({ item }) => sideOf(item) === 'below').map(({ row }) => row + 1);
  const deeper = Math.max(0, ...below.map((rows) => rows - ROWS_BELOW)) * ROW;
  const years = yearStarts(axis);
  const everyOther = years.length * 46 > width;
  years.forEach((year, index) => {
    const x = axis.x(year);
    parts.push(element('path', { d: `M${Math.round(x)} 8V${116 + deeper}`, stroke: palette.faintRule }));
    if (!everyOther || index % 2 === 0)
      parts.push(text(x + 4, 134 + deeper, String(civilFromDay(year).year), { size: 13, fill: palette.secondInk }));
  });
  parts.push(element('path', { d: `M12 ${LINE}H${width - 16}`, stroke: palette.secondInk, 'stroke-width': 2 }));
  for (const one of placed) parts.push(mark(one));
  for (const dose of data.doses) parts.push(drop(axis.x(dose.on), dose.part ? '½' : String(dose.number), !dose.part));
  if (data.due !== undefined) parts.push(drop(axis.x(data.due.on), String(data.due.number), false));
  const drops = [...data.doses, ...(data.due === undefined ? [] : [data.due])].map(({ on }) => axis.x(on));
  parts.push(fractures(placed, drops));
  parts.push(
    element('path', {
      d: `M${Math.round(axis.x(data.today))} 4V${120 + deeper}`,
      stroke: palette.ink,
      'stroke-dasharray': '2 4',
    }),
  );
  const rows = [
    ...data.doses.map((dose) => ({
      on: dose.on,
      row: [shortDate(dose.on), dose.part ? `part dose ${dose.number}` : `dose ${dose.number} given`],
    })),
    ...data.marks.map((item) => ({
      on: item.from,
      row: [
        item.until === undefined ? shortDate(item.from) : `${shortDate(item.from)} to ${shortDate(item.until)}`,
        `${item.kind === item.says.split(':')[0] || item.says.endsWith(item.kind) ? '' : `${item.kind}: `}${item.says}${item.more === undefined ? '' : ` (${item.more})`}`,
      ],
    })),
    ...(data.due === undefined
      ? []
      : [{ on: data.due.on, row: [shortDate(data.due.on), `dose ${data.due.number} due`] }]),
  ].toSorted((a, b) => a.on - b.on);
  const doses =
    data.doses.length === 0
      ? 'No dose yet'
      : `${data.doses.length === 1 ? 'One dose' : `${data.doses.length} doses`}, the last on ${shortDate(data.doses[data.doses.length - 1]?.on ?? data.today)}`;
  return {
    svg: svg(
      width,
      142 + deeper + higher,
      higher === 0 ? parts.join('') : element('g', { transform: `translate(0 ${higher})` }, ...parts),
    ),
    sentence:
      `${doses}${data.due === undefined ? '' : `; dose ${data.due.number} due on ${shortDate(data.due.on)}`}. ${data.marks.length === 0 ? '' : `Also: ${data.marks.map((item) => `${item.kind} ${shortDate(item.from)} (${item.says})`).join('; ')}.`}`.trim(),
    table: { caption: 'Course', head: ['date', 'what'], rows: rows.map(({ row }) => row) },
  };
}
