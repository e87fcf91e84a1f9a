/**
 * A picture is three things at once: an SVG without a document, the same as a sentence, and the same as a table.
 * Drawings use presentation attributes only (no style, no script), so that a strict content policy shows them, and class
 * names, so that print can turn them grey.
 */
export type Table = {
  readonly caption: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
};
export type Drawing = { readonly svg: string; readonly sentence: string; readonly table: Table };

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => entities[sign] ?? sign);

type Attributes = Readonly<Record<string, string | number | undefined>>;

/** One SVG element. Numbers are cut to a tenth of a unit: the same data, the same bytes. */
export function element(name: string, attributes: Attributes, ...content: readonly string[]): string {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === 'number' ? round(value) : escaped(value ?? '')}"`)
    .join('');
  return content.length === 0 ? `<${name}${written}/>` : `<${name}${written}>${content.join('')}</${name}>`;
}

const round = (value: number): string => String(Math.round(value * 10) / 10);

export type TextStyle = {
  readonly size?: number;
  readonly fill?: string;
  readonly weight?: number;
  readonly anchor?: 'start' | 'middle' | 'end';
};

export const text = (x: number, y: number, content: string, style: TextStyle = {}): string =>
  element(
    'text',
    {
      x,
      y,
      'font-size': style.size ?? 14,
      fill: style.fill ?? palette.ink,
      'font-weight': style.weight,
      'text-anchor': style.anchor,
    },
    escaped(content),
  );

/** Room a text takes, near enough to keep labels apart: the face is about 0.53 em wide a letter. */
export const textWidth = (content: string, size = 14): number => content.length * size * 0.53;

/** The whole picture. Hidden from assistive technology: the sentence and the table speak for it. */
export const svg = (width: number, height: number, ...content: readonly string[]): string =>
  element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${round(width)} ${round(height)}`,
      width,
      height,
      'aria-hidden': 'true',
      focusable: 'false',
    },
    ...content,
  );

/** Paper and ink. Colour never carries a meaning alone: hatching, dashes and words say the same. */
export const palette = {
  ink: '#1d2420',
  secondInk: '#525b55',
  rule: '#d8d1c2',
  faintRule: '#e4dccb',
  paper: '#faf7f0',
  sheet: '#fffdf8',
  act: '#6b2d5c',
  ready: '#1f6247',
  readyWash: '#dcebe2',
  readyFaint: '#f1f8f4',
  notReady: '#96351f',
  cannotSay: '#454b70',
  wait: '#7a5a00',
  waitWash: '#f4e9c8',
  done: '#525b55',
  straw: '#b9a97e',
} as const;
