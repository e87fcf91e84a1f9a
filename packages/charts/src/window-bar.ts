/**
 * The window bar: when the dose can be given, seen from today. Hatched while waiting (says for what), a band for the
 * possible dates (solid when certain, dashed and light when only "if good"), dots after it runs out (says why), a pin for
 * the booked place, thin bars below for the next steps. The same geometry everywhere; in lists a strip of 24 units.
 */
import { type Day, addDays, civilFromDay, dateWithWeekday, shortDate } from '@twelvemonth/clinical';
import { type Drawing, element, palette, svg, text, textWidth } from './drawing.ts';
import { type TimeAxis, monthName, monthStarts, timeAxis } from './time-axis.ts';
import { wrapped } from './wrapped.ts';

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

/** Room a label leaves at its end. */
const LABEL_MARGIN = 6;
const fitsIn = (content: string, room: number): boolean => textWidth(content) + LABEL_MARGIN <= room;

/** A label on paper, so that hatching never runs through letters. It must fit: what does not is told in a line below. */
const label = (x: number, y: number, content: string, fill: string): string =>
  element('rect', {
    x: x - 3,
    y: y - 14,
    width: textWidth(content) + LABEL_MARGIN,
    height: 19,
    fill: '#fffdf8',
    'fill-opacity': '0.86',
  }) + text(x, y, content, { weight: 650, fill });

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
  /** What has no room in the band. */
  const below: string[] = [];
  const firstX = data.window === undefined ? axis.x(axis.until) : axis.x(data.window.first);
  if (data.window === undefined || data.window.first > data.today) {
    if (fitsIn(data.waiting, firstX - 36)) parts.push(label(30, middle, data.waiting, palette.ink));
    else if (data.waiting !== '') below.push(data.waiting);
  }
  if (data.window !== undefined) {
    const endX = data.window.last === undefined ? axis.x(axis.until) : axis.x(addDays(data.window.last, 1));
    const says = possible(data);
    const fits = textWidth(says) < endX - firstX - 18;
    if (fits) parts.push(label(firstX + 10, middle, says, palette.ready));
    // A band too narrow for its dates tells them to its right, before what ends it.
    const after = [fits ? undefined : says, data.runsOut].filter((part) => part !== undefined).join('; ');
    if (after !== '') {
      if (fitsIn(after, axis.x(axis.until) - endX - 14))
        parts.push(label(endX + 10, middle, after, fits ? palette.secondInk : palette.ink));
      else below.push(after);
    }
  }
  parts.push(
    element('path', { d: `M20 22V${top + height + 10}`, stroke: palette.ink, 'stroke-width': 2 }),
    text(16, 16, 'today', { weight: 700, size: 13 }),
  );
  if (data.place !== undefined) {
    const x = axis.x(data.place.on);
    // Beside its pin, or pushed as far to the left as it needs.
    const labelX = Math.max(20, Math.min(x + 8, width - 12 - textWidth(data.place.says)));
    parts.push(
      element('path', {
        d: `M${Math.round(x)} ${top - 4}V${top + height + 14}`,
        stroke: palette.act,
        'stroke-width': 2,
      }),
      element('path', { d: `M${x - 8} ${top - 14}H${x + 8}L${x} ${top - 2}Z`, fill: palette.act }),
      text(labelX, top + height + 18, data.place.says, { weight: 650, fill: palette.act }),
    );
  }
  let y = top + height + (data.place === undefined ? 10 : 32);
  const room = width - 32;
  const tell = (words: string, fill: string): void => {
    for (const line of wrapped(words, room, 13.5)) {
      parts.push(text(20, y + 12, line, { size: 13.5, fill }));
      y += 18;
    }
  };
  for (const words of below) tell(words, palette.ink);
  if (below.length > 0) y += 6;
  data.steps.slice(0, 4).forEach((step, index) => {
    const x = axis.x(step.from);
    const barWidth = Math.max(8, axis.x(addDays(step.until, 1)) - x);
    const wide = textWidth(step.what, 13.5);
    const right = width - (x + barWidth + 8) >= wide;
    const left = !right && x - 8 - wide >= 20;
    parts.push(
      element('rect', { x, y, width: barWidth, height: 9, fill: index % 2 === 0 ? palette.cannotSay : palette.straw }),
    );
    if (right || left)
      parts.push(
        text(right ? x + barWidth + 8 : x - 8, y + 9, step.what, {
          size: 13.5,
          fill: palette.cannotSay,
          anchor: right ? 'start' : 'end',
        }),
      );
    else {
      y += 10;
      tell(step.what, palette.cannotSay);
      y -= 18;
    }
    y += 24;
  });
  return svg(width, y + 4, ...parts);
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
