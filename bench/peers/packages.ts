/**
 * Packages that are measured beside ours and never part of the product: looked for in the folder that PEER_PACKAGES names (it
 * holds node_modules), then where the product's own packages lie.
 */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const { PEER_PACKAGES } = process.env;

/** The folder whose node_modules holds the package; undefined when it is absent. */
export const peerPackages = (name: string): string | undefined =>
  [PEER_PACKAGES, fileURLToPath(new URL('../../', import.meta.url))].find(
    (folder) => folder !== undefined && existsSync(join(folder, 'node_modules', name)),
  );
