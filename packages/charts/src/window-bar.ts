/**
 * The window bar: when the dose can be given, seen from today. Hatched while waiting (says for what), a band for the
 * possible dates (solid when certain, dashed and light when only "if good"), dots after it runs out (says why), a pin for
 * the booked place, thin bars below for the next steps. The same geometry everywhere; in lists a strip of 24 units.
 */
import { type Day, addDays, civilFromDay, dateWithWeekday, shortDate } from '@twelvemonth/clinical';
import { type Drawing, element, palette, svg, text, textWidth } from './drawing.ts';
import { type TimeAxis, monthName, monthStarts, timeAxis } from './time-axis.ts';

export type WindowBarData = {
  readonly today: Day;
  readonly window?: { readonly first: Day; readonly last?: Day; readonly certainUntil?: Day } | undefined;
  /** What is waited for, or why there is no window. */
  readonly waiting: string;
  readonly runsOut?: string | undefined;
  readonly place?: { readonly on: Day; readonly says: string } | undefined;
  readonly steps: readonly { readonly what: string; readonly from: Day; readonly until: Day }[];
};

export type WindowBarStyle = {
  /** Makes pattern names unique on a page. */
  readonly id: string;
  readonly width?: number;
  readonly form?: 'full' | 'strip';
};

const LEAST_DAYS_SHOWN = 150;
const MOST_DAYS_SHOWN = 420;

function lastDayShown(data: WindowBarData): Day {
  const wanted = Math.max(
    data.today + LEAST_DAYS_SHOWN,
    (data.window?.last ?? data.window?.first ?? data.today) + 45,
    (data.place?.on ?? data.today) + 30,
  );
  return Math.min(wanted, data.today + MOST_DAYS_SHOWN) as Day;
}

const patterns = (id: string): string =>
  element(
    'defs',
    {},
    element(
      'pattern',
      { id: `${id}-wait`, width: 7, height: 7, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(45)' },
      element('rect', { width: 7, height: 7, fill: '#fbf5e4' }),
      element('path', { d: 'M0 0V7', stroke: palette.straw, 'stroke-width': 2 }),
    ),
    element(
      'pattern',
      { id: `${id}-gone`, width: 6, height: 6, patternUnits: 'userSpaceOnUse' },
      element('circle', { cx: 1.5, cy: 1.5, r: 1, fill: '#b7b0a0' }),
    ),
  );

function band(data: WindowBarData, axis: TimeAxis, id: string, top: number, height: number): string {
  const parts: string[] = [];
  const box = (from: Day, until: Day, attributes: Record<string, string | number>): void => {
    const x = axis.x(from);
    const width = axis.x(until) - x;
    if (width > 0) parts.push(element('rect', { x, y: top, width, height, ...attributes }));
  };
  const { window } = data;
  if (window === undefined) {
    box(axis.from, axis.until, { fill: `url(#${id}-wait)` });
    return parts.join('');
  }
  const end = window.last === undefined ? axis.until : addDays(window.last, 1);
  box(axis.from, window.first, { fill: `url(#${id}-wait)` });
  const certainEnd = window.certainUntil === undefined ? window.first : addDays(window.certainUntil, 1);
  box(window.first, certainEnd, { fill: palette.readyWash, stroke: palette.ready, 'stroke-width': 2 });
  box(certainEnd, end, {
    fill: palette.readyFaint,
    stroke: palette.ready,
    'stroke-width': 2,
    'stroke-dasharray': '7 4',
  });
  if (window.last !== undefined) box(end, axis.until, { fill: `url(#${id}-gone)` });
  return parts.join('');
}

/** A label on paper where the band is narrow, so that hatching never runs through letters. */
function label(x: number, y: number, content: string, room: number, fill: string): string {
  if (room < 40) return '';
  const most = Math.max(3, Math.floor(room / (14 * 0.53)) - 1);
  const shown = content.length <= most ? content : `${content.slice(0, most - 1)}…`;
  return (
    element('rect', {
      x: x - 3,
      y: y - 14,
      width: Math.min(room, textWidth(shown) + 6),
      height: 19,
      fill: '#fffdf8',
      'fill-opacity': '0.86',
    }) + text(x, y, shown, { weight: 650, fill })
  );
}

const possible = (data: WindowBarData): string => {
  if (data.window === undefined) return '';
  const certain = data.window.certainUntil !== undefined && data.window.certainUntil === data.window.last;
  const { first, last } = data.window;
  const span =
    last === undefined ? `from ${shortDate(first)}` : `${shortWithoutYear(first, last)} to ${shortDate(last)}`;
  return certain ? `ready ${span}` : `possible ${span}`;
};
const shortWithoutYear = (first: Day, last: Day): string => {
  const { dayOfMonth } = civilFromDay(first);
  return civilFromDay(first).year === civilFromDay(last).year ? `${dayOfMonth} ${monthName(first)}` : shortDate(first);
};

function full(data: WindowBarData, style: WindowBarStyle): string {
  const width = style.width ?? 940;
  const axis = timeAxis(data.today, lastDayShown(data), 20, width - 12);
  const top = 34;
  const height = 34;
  const rows = data.steps.slice(0, 4);
  const stepsTop = top + height + (data.place === undefined ? 10 : 32);
  const total = stepsTop + rows.length * 24 + 4;
  const parts: string[] = [patterns(style.id)];
  // "today" stands first; a month whose name would run into the one before goes without.
  let free = 70;
  for (const month of monthStarts(axis)) {
    const x = axis.x(month);
    parts.push(element('path', { d: `M${Math.round(x)} 22V${top + height + 8}`, stroke: palette.faintRule }));
    const { year, month: number } = civilFromDay(month);
    const says = number === 1 ? `Jan ${year}` : monthName(month);
    if (x > free) {
      parts.push(text(x + 4, 16, says, { fill: palette.secondInk, size: 13 }));
      free = x + textWidth(says);
    }
  }
  parts.push(band(data, axis, style.id, top, height));
  const middle = top + 22;
  const firstX = data.window === undefined ? axis.x(axis.until) : axis.x(data.window.first);
  if (data.window === undefined || data.window.first > data.today)
    parts.push(label(30, middle, data.waiting, firstX - 36, palette.ink));
  if (data.window !== undefined) {
    const endX = data.window.last === undefined ? axis.x(axis.until) : axis.x(addDays(data.window.last, 1));
    const says = possible(data);
    const fits = textWidth(says) < endX - firstX - 18;
    if (fits) parts.push(label(firstX + 10, middle, says, endX - firstX - 14, palette.ready));
    // A band too narrow for its dates tells them to its right, before what ends it.
    const after = [fits ? undefined : says, data.runsOut].filter((part) => part !== undefined).join('; ');
    if (after !== '')
      parts.push(
        label(endX + 10, middle, after, axis.x(axis.until) - endX - 14, fits ? palette.secondInk : palette.ink),
      );
  }
  parts.push(
    element('path', { d: `M20 22V${top + height + 10}`, stroke: palette.ink, 'stroke-width': 2 }),
    text(16, 16, 'today', { weight: 700, size: 13 }),
  );
  if (data.place !== undefined) {
    const x = axis.x(data.place.on);
    const room = textWidth(data.place.says);
    const left = x + 8 + room > width;
    parts.push(
      element('path', {
        d: `M${Math.round(x)} ${top - 4}V${top + height + 14}`,
        stroke: palette.act,
        'stroke-width': 2,
      }),
      element('path', { d: `M${x - 8} ${top - 14}H${x + 8}L${x} ${top - 2}Z`, fill: palette.act }),
      text(left ? x - 8 : x + 8, top + height + 18, data.place.says, {
        weight: 650,
        fill: palette.act,
        anchor: left ? 'end' : 'start',
      }),
    );
  }
  rows.forEach((step, index) => {
    const y = stepsTop + index * 24;
    const x = axis.x(step.from);
    const barWidth = Math.max(8, axis.x(addDays(step.until, 1)) - x);
    const roomRight = width - (x + barWidth + 8);
    const right = roomRight >= textWidth(step.what, 13.5);
    parts.push(
      element('rect', { x, y, width: barWidth, height: 9, fill: index % 2 === 0 ? palette.cannotSay : palette.straw }),
      text(right ? x + barWidth + 8 : Math.max(20, x - 8), y + 9, step.what, {
        size: 13.5,
        fill: palette.cannotSay,
        anchor: right ? 'start' : 'end',
      }),
    );
  });
  return svg(width, total, ...parts);
}

function strip(data: WindowBarData, style: WindowBarStyle): string {
  const width = style.width ?? 200;
  const axis = timeAxis(data.today, lastDayShown(data), 2, width - 2);
  const parts = [
    patterns(style.id),
    band(data, axis, style.id, 5, 14),
    element('path', { d: 'M2 1V23', stroke: palette.ink, 'stroke-width': 2 }),
  ];
  if (data.place !== undefined) {
    const x = axis.x(data.place.on);
    parts.push(
      element('path', { d: `M${Math.round(x)} 3V23`, stroke: palette.act, 'stroke-width': 2 }),
      element('path', { d: `M${x - 5} 0H${x + 5}L${x} 7Z`, fill: palette.act }),
    );
  }
  return svg(width, 24, ...parts);
}

/** As a sentence of its own: a capital at the start, one stop at the end. */
const asSentence = (words: string): string =>
  words === '' ? '' : `${words.charAt(0).toUpperCase()}${words.slice(1)}${/[.?!]$/.test(words) ? '' : '.'}`;

function sentence(data: WindowBarData): string {
  const parts: string[] = [];
  if (data.window === undefined) parts.push(asSentence(`no dates can be given yet: ${data.waiting}`));
  else {
    const certain = data.window.certainUntil !== undefined && data.window.certainUntil === data.window.last;
    const until = data.window.last === undefined ? 'with no end in sight' : `to ${dateWithWeekday(data.window.last)}`;
    if (data.window.first > data.today) parts.push(asSentence(data.waiting));
    parts.push(`${certain ? 'Ready' : 'Possible, if good,'} from ${dateWithWeekday(data.window.first)} ${until}.`);
    if (data.runsOut !== undefined) parts.push(asSentence(`then ${data.runsOut}`));
  }
  if (data.place !== undefined) parts.push(asSentence(data.place.says));
  for (const step of data.steps) parts.push(asSentence(step.what));
  return parts.filter((part) => part !== '').join(' ');
}

export function windowBar(data: WindowBarData, style: WindowBarStyle): Drawing {
  const rows: string[][] = [];
  if (data.window === undefined) rows.push(['no dates yet', shortDate(data.today), '', data.waiting]);
  else {
    if (data.window.first > data.today)
      rows.push(['waiting', shortDate(data.today), shortDate(addDays(data.window.first, -1)), data.waiting]);
    rows.push([
      'dates for a dose',
      shortDate(data.window.first),
      data.window.last === undefined ? 'open' : shortDate(data.window.last),
      possible(data),
    ]);
    if (data.window.last !== undefined)
      rows.push(['after that', shortDate(addDays(data.window.last, 1)), '', data.runsOut ?? '']);
  }
  if (data.place !== undefined)
    rows.push(['booked', shortDate(data.place.on), shortDate(data.place.on), data.place.says]);
  for (const step of data.steps) rows.push(['next step', shortDate(step.from), shortDate(step.until), step.what]);
  return {
    svg: style.form === 'strip' ? strip(data, style) : full(data, style),
    sentence: sentence(data),
    table: { caption: 'Dates for the next dose', head: ['what', 'from', 'until', 'says'], rows },
  };
}
