/**
 * Material that is not part of the product and may be absent: instances and checkers of general-purpose peers. A bench says
 * so when it is.
 */
import { existsSync } from 'node:fs';
import { pathToFileURL } from 'node:url';

const beside = new URL('../../shared/peers/', import.meta.url);
const { PEERS } = process.env;

/** The folder of the peers: the one PEERS names, or the one beside the product; undefined when there is none. */
export const peersFolder: URL | undefined = [PEERS === undefined ? beside : pathToFileURL(`${PEERS}/`)].find((folder) =>
  existsSync(folder),
);
