/** A pack as a value: parts made of blocks, apart from how they look. */
import type { PackLanguage } from './facts.ts';

export type PackBlock =
  | { readonly kind: 'paragraph'; readonly text: string }
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'list'; readonly items: readonly string[] }
  | { readonly kind: 'clock'; readonly rows: readonly (readonly [time: string, says: string])[] }
  | { readonly kind: 'facts'; readonly rows: readonly (readonly [label: string, text: string])[] }
  /** Framed: what must not be missed. */
  | { readonly kind: 'warning'; readonly heading: string; readonly items: readonly string[] };

export type PackPart = { readonly title: string; readonly blocks: readonly PackBlock[] };

export type PatientPack = {
  readonly language: PackLanguage;
  readonly version: string;
  readonly about: string;
  readonly parts: readonly PackPart[];
  readonly foot: string;
  readonly demo: string | undefined;
};

/** What has to be read, one sentence a line: headings are left out, they would make a hard text look easy. */
export const proseOf = (blocks: readonly PackBlock[]): string =>
  blocks
    .flatMap((block): readonly string[] => {
      switch (block.kind) {
        case 'heading':
          return [];
        case 'paragraph':
          return [block.text];
        case 'list':
          return block.items;
        case 'warning':
          return block.items.length === 0 ? [block.heading] : block.items;
        case 'clock':
          return block.rows.map(([, says]) => says);
        case 'facts':
          return block.rows.map(([label, text]) => `${label} ${text}`);
      }
    })
    .join('\n');
