/** Which product made a demo, or the lists beside real notes: a digest of the code that decides what is written in them. */
import { createHash } from 'node:crypto';
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const packages = fileURLToPath(new URL('../../../packages', import.meta.url));
const deciding = ['clinical', 'demo', 'store'];

let taken: string | undefined;

/** Taken once: what runs is the code as it was when this process started. */
export const codeFingerprint = (): string => (taken ??= digestOfCode());

function digestOfCode(): string {
  const hash = createHash('sha256');
  for (const name of deciding) {
    const folder = join(packages, name, 'src');
    const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'));
    for (const file of files.toSorted()) hash.update(`${name}/${file}\n`).update(readFileSync(join(folder, file)));
  }
  return hash.digest('hex');
}
