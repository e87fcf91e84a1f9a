/**
 * The course strip: one life-line over the years. Drops for doses (hollow: due), broken strokes for fractures, bars for
 * tablets, a bracket for a review or a planned break, a wave for a reaction.
 */
import { type Day, addDays, addMonths, civilFromDay, shortDate } from '@twelvemonth/clinical';
import { type Drawing, element, palette, svg, text, textWidth } from './drawing.ts';
import { timeAxis, yearStarts } from './time-axis.ts';

export type CourseMark = {
  readonly kind: 'fracture' | 'tablets' | 'reaction' | 'review' | 'break' | 'denosumab';
  readonly from: Day;
  readonly until?: Day | undefined;
  readonly says: string;
};
export type CourseStripData = {
  readonly today: Day;
  readonly doses: readonly { readonly on: Day; readonly number: number; readonly part: boolean }[];
  readonly due?: { readonly on: Day; readonly number: number } | undefined;
  readonly marks: readonly CourseMark[];
};
export type CourseStripStyle = { readonly width?: number };

const LINE = 62;

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

function mark(item: CourseMark, x: number, until: number, row: number): string {
  const below = LINE + 26 + row * 18;
  switch (item.kind) {
    case 'fracture':
      return (
        element('path', {
          d: `M${Math.round(x - 4)} ${LINE - 18}L${Math.round(x + 4)} ${LINE - 6}L${Math.round(x - 4)} ${LINE}L${Math.round(x + 4)} ${LINE + 12}`,
          fill: 'none',
          stroke: palette.notReady,
          'stroke-width': 3,
        }) + text(x, LINE - 24 - row * 15, item.says, { size: 13, fill: palette.notReady, anchor: 'middle' })
      );
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
        }) + text(x, below, item.says, { size: 13, fill: palette.cannotSay })
      );
    case 'reaction':
      return (
        element('path', {
          d: `M${Math.round(x)} 14q5 -8 10 0t10 0`,
          fill: 'none',
          stroke: palette.wait,
          'stroke-width': 2.5,
        }) + text(x + 24, 18, item.says, { size: 13, fill: palette.wait })
      );
    case 'review':
    case 'break':
      return (
        element('path', {
          d: `M${Math.round(x)} ${LINE + 12}v7H${Math.round(Math.max(x + 10, until))}v-7`,
          fill: 'none',
          stroke: palette.wait,
          'stroke-width': 2,
        }) + text(x, below + 6, item.says, { size: 13, fill: palette.wait })
      );
  }
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
  const years = yearStarts(axis);
  const everyOther = years.length * 46 > width;
  years.forEach((year, index) => {
    const x = axis.x(year);
    parts.push(element('path', { d: `M${Math.round(x)} 8V116`, stroke: palette.faintRule }));
    if (!everyOther || index % 2 === 0)
      parts.push(text(x + 4, 134, String(civilFromDay(year).year), { size: 13, fill: palette.secondInk }));
  });
  parts.push(element('path', { d: `M12 ${LINE}H${width - 16}`, stroke: palette.secondInk, 'stroke-width': 2 }));
  // Labels that would touch the one before them on the same side move down a row.
  const ends: Record<'above' | 'below' | 'top', number> = { above: -99, below: -99, top: -99 };
  for (const item of data.marks.toSorted((a, b) => a.from - b.from)) {
    const side = item.kind === 'fracture' ? 'above' : item.kind === 'reaction' ? 'top' : 'below';
    const x = axis.x(item.from);
    const room = textWidth(item.says, 13);
    const start = side === 'above' ? x - room / 2 : x;
    const row = start < ends[side] ? 1 : 0;
    ends[side] = Math.max(ends[side], start + room + 8);
    parts.push(mark(item, x, axis.x(item.until ?? data.today), row));
  }
  for (const dose of data.doses) parts.push(drop(axis.x(dose.on), dose.part ? '½' : String(dose.number), !dose.part));
  if (data.due !== undefined) parts.push(drop(axis.x(data.due.on), String(data.due.number), false));
  parts.push(
    element('path', { d: `M${Math.round(axis.x(data.today))} 4V120`, stroke: palette.ink, 'stroke-dasharray': '2 4' }),
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
        `${item.kind}: ${item.says}`,
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
    svg: svg(width, 142, ...parts),
    sentence:
      `${doses}${data.due === undefined ? '' : `; dose ${data.due.number} due on ${shortDate(data.due.on)}`}. ${data.marks.length === 0 ? '' : `Also: ${data.marks.map((item) => `${item.kind} ${shortDate(item.from)} (${item.says})`).join('; ')}.`}`.trim(),
    table: { caption: 'Course', head: ['date', 'what'], rows: rows.map(({ row }) => row) },
  };
}
