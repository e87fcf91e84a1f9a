/**
 * The people field: one mark for each person of a hundred or a thousand, in groups. Filled: has it. Ring: spared. Filled
 * diamond: has it because of the treatment. Small dot: does not have it. Form, not colour, tells them apart.
 */
import { type Drawing, element, palette, svg, text } from './drawing.ts';
import { wrapped } from './wrapped.ts';

export type PeopleLook = 'has it' | 'spared' | 'because of it' | 'does not';
export type PeopleFieldData = {
  readonly caption: string;
  readonly of: number;
  readonly groups: readonly { readonly look: PeopleLook; readonly count: number; readonly says: string }[];
};
export type PeopleFieldStyle = { readonly width?: number };

/** More than this, and the marks are squares: smaller to draw, as easy to count in rows. */
const MOST_DISCS = 100;
const LEGEND_SIZE = 14;
const LINE = 19;

type Cell = { readonly x: number; readonly y: number; readonly size: number };

/** A mark as part of a path. `open` marks are drawn as an outline. */
function mark(look: PeopleLook, { x, y, size }: Cell, squares: boolean): string {
  const n = (value: number): string => String(Math.round(value * 10) / 10);
  const middleX = x + size / 2;
  const middleY = y + size / 2;
  const square = (half: number): string =>
    `M${n(middleX - half)} ${n(middleY - half)}h${n(half * 2)}v${n(half * 2)}h${n(-half * 2)}z`;
  const disc = (half: number): string =>
    `M${n(middleX - half)} ${n(middleY)}a${n(half)} ${n(half)} 0 1 0 ${n(half * 2)} 0a${n(half)} ${n(half)} 0 1 0 ${n(-half * 2)} 0z`;
  const round = squares ? square : disc;
  switch (look) {
    case 'has it':
      return round(size * 0.4);
    case 'spared':
      return round(size * 0.33);
    case 'because of it':
      return `M${n(middleX)} ${n(middleY - size * 0.46)}l${n(size * 0.46)} ${n(size * 0.46)}l${n(-size * 0.46)} ${n(size * 0.46)}l${n(-size * 0.46)} ${n(-size * 0.46)}z`;
    case 'does not':
      return round(size * 0.12);
  }
}

const drawn = (look: PeopleLook, path: string, size: number): string =>
  path === ''
    ? ''
    : element(
        'path',
        look === 'spared'
          ? { d: path, fill: palette.sheet, stroke: palette.ink, 'stroke-width': Math.max(1, size * 0.13) }
          : { d: path, fill: look === 'does not' ? palette.secondInk : palette.ink },
      );

export function peopleField(data: PeopleFieldData, style: PeopleFieldStyle = {}): Drawing {
  const counted = data.groups.reduce((sum, { count }) => sum + count, 0);
  if (counted !== data.of || data.groups.some(({ count }) => !Number.isInteger(count) || count < 0))
    throw new RangeError(`${counted} people in the groups, ${data.of} in the picture`);
  const width = Math.max(240, style.width ?? 400);
  const squares = data.of > MOST_DISCS;
  const columns = squares ? (width < 400 ? 40 : 50) : width < 360 ? 10 : 20;
  const size = Math.min(squares ? 10 : 22, Math.floor((width / columns) * 10) / 10);
  const paths = new Map<PeopleLook, string>();
  let index = 0;
  for (const { look, count } of data.groups)
    for (const end = index + count; index < end; index += 1) {
      const cell = { x: (index % columns) * size, y: Math.floor(index / columns) * size, size };
      paths.set(look, (paths.get(look) ?? '') + mark(look, cell, squares));
    }
  const field = Math.ceil(data.of / columns) * size;
  const parts = [...paths].map(([look, path]) => drawn(look, path, size));
  let y = field + 12;
  for (const { look, says } of data.groups) {
    parts.push(drawn(look, mark(look, { x: 0, y, size: 16 }, squares), 16));
    for (const line of wrapped(says, width - 26, LEGEND_SIZE)) {
      parts.push(text(24, y + 13, line, { size: LEGEND_SIZE }));
      y += LINE;
    }
    y += 3;
  }
  return {
    svg: svg(width, y + 2, ...parts),
    sentence: `${data.caption}: ${data.groups.map(({ says }) => says).join('; ')}.`,
    table: {
      caption: data.caption,
      head: ['people', 'what'],
      rows: data.groups.map(({ count, says }) => [String(count), says]),
    },
  };
}
