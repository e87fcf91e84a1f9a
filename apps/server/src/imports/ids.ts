/** Ids and fingerprints made from what they stand for. */
import { createHash } from 'node:crypto';

export const fingerprintOf = (text: string): string => `sha256:${createHash('sha256').update(text).digest('hex')}`;

/** The same text always gives the same id (a UUID of version 8: made by its user's own rule, RFC 9562). */
export function idFrom(text: string): string {
  const hex = createHash('sha256').update(text).digest('hex');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-a${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
}
