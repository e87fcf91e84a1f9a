/** A register file from disk: its letters, its fingerprint, its mapping. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { type RegisterMapping, type Table, readRegister, registerMapping } from '@twelvemonth/exchange';
import { Ending, answeredNo, cannotOpen, misused } from './ending.ts';

function bytesOf(path: string): Buffer {
  try {
    return readFileSync(path);
  } catch {
    throw cannotOpen(`The file ${path} cannot be read.`);
  }
}

/** UTF-8 or UTF-16 where the file is that; otherwise the letters of western office programs, and said so. */
export function registerText(path: string, aside: (text: string) => void): string {
  const bytes = bytesOf(path);
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    aside(`${path} is not UTF-8: its letters are read as Windows-1252; check the names`);
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

export const fingerprintOf = (text: string): string => `sha256:${createHash('sha256').update(text).digest('hex')}`;

/** The same text always gives the same id. Only for trying out: what is written gets its ids from the server. */
export const idFrom = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 32);

export function mappingIn(path: string): RegisterMapping {
  let content: unknown;
  try {
    content = JSON.parse(bytesOf(path).toString('utf8'));
  } catch (error) {
    if (error instanceof Ending) throw error;
    throw misused(`${path} is not JSON.`);
  }
  const parsed = registerMapping.safeParse(content);
  if (!parsed.success)
    throw misused(
      `${path} is not a mapping: ${parsed.error.issues.map(({ path: where, message }) => `${where.join('.')}: ${message}`).join('; ')}.`,
    );
  return parsed.data;
}

export function tableIn(text: string, mapping: RegisterMapping | undefined): Table {
  const read = readRegister(text, mapping?.separator);
  if ('refused' in read) throw answeredNo(`${read.refused.says}; ${read.refused.remedy}.`);
  return read.table;
}
