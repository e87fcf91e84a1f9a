/** SHA-256 as lower-case hex (FIPS 180-4), of the UTF-8 bytes of a text. */
import { hash } from 'node:crypto';

export const sha256 = (text: string): string => hash('sha256', text, 'hex');

/** What stands before the first entry of a ledger and before the first commit. */
export const beforeTheFirst = '0'.repeat(64);
