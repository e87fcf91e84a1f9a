/** The secret part of a page's address: 256 bits, said once; the notes keep its hash. */
import { createHash, randomBytes } from 'node:crypto';

const secretBytes = 32;
export const secretPattern = /^[A-Za-z0-9_-]{43}$/;

export const newSecret = (): string => randomBytes(secretBytes).toString('base64url');
export const hashOfSecret = (secret: string): string => createHash('sha256').update(secret).digest('hex');
