/** What Poppler's own tools (pdfinfo, pdffonts, pdftotext) say of a PDF, where they are there. Debian: poppler-utils. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** What cannot be run here, in words, or undefined. */
export const missingPoppler = (): string | undefined =>
  ['pdfinfo', 'pdffonts', 'pdftotext'].every((tool) => spawnSync(tool, ['-v']).error === undefined)
    ? undefined
    : 'Poppler is not here';

export type ReadByPoppler = {
  readonly tagged: boolean;
  readonly title: string;
  readonly pages: number;
  /** Levels of the headings in the order of the structure tree. */
  readonly headings: readonly number[];
  /** How often each sort of element stands in the structure tree. */
  readonly elements: ReadonlyMap<string, number>;
  readonly fontsNotEmbedded: readonly string[];
  /** In reading order, one space between words. */
  readonly text: string;
};

export function readByPoppler(pdf: Buffer): ReadByPoppler {
  const folder = mkdtempSync(join(tmpdir(), 'twelvemonth-pdf-'));
  const path = join(folder, 'document.pdf');
  writeFileSync(path, pdf);
  const said = (tool: string, ...args: string[]): string => {
    const { stdout, status } = spawnSync(tool, args, { encoding: 'utf8', maxBuffer: 16 * 1024 * 1024 });
    if (status !== 0) throw new Error(`${tool} ended with ${status}`);
    return stdout;
  };
  try {
    const info = said('pdfinfo', path);
    const field = (name: string): string => new RegExp(`^${name}:\\s*(.*)$`, 'm').exec(info)?.[1]?.trim() ?? '';
    const tree = [...said('pdfinfo', '-struct', path).matchAll(/^ *([A-Z][A-Za-z0-9]*)\b/gm)].map(
      ([, name]) => name ?? '',
    );
    const elements = new Map<string, number>();
    for (const name of tree) elements.set(name, (elements.get(name) ?? 0) + 1);
    const [, , ...fonts] = said('pdffonts', path).trimEnd().split('\n');
    return {
      tagged: field('Tagged') === 'yes',
      title: field('Title'),
      pages: Number(field('Pages')),
      headings: tree.filter((name) => /^H[1-6]$/.test(name)).map((name) => Number(name.slice(1))),
      elements,
      fontsNotEmbedded: fonts.filter((line) => !/ yes (?:yes|no ) (?:yes|no ) +\d+ +\d+$/.test(line)),
      text: said('pdftotext', path, '-').replaceAll(/\s+/g, ' '),
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
