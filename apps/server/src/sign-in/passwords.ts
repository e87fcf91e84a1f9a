/**
 * Passwords are kept as Argon2id hashes, by Node's own crypto. Parameters: OWASP Password Storage Cheat Sheet, Argon2id,
 * m = 19 MiB, t = 2, p = 1. Written as a PHC string, so that a hash made with older parameters can still be checked.
 */
import { argon2 as argon2WithCallback, randomBytes, timingSafeEqual } from 'node:crypto';
import { promisify } from 'node:util';

const argon2 = promisify(argon2WithCallback);
const current = { memory: 19_456, passes: 2, parallelism: 1 };
const tagLength = 32;

const base64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64').replaceAll('=', '');

export async function hashOfPassword(password: string): Promise<string> {
  const nonce = randomBytes(16);
  const tag = await argon2('argon2id', { message: password.normalize('NFKC'), nonce, tagLength, ...current });
  return `$argon2id$v=19$m=${current.memory},t=${current.passes},p=${current.parallelism}$${base64(nonce)}$${base64(tag)}`;
}

export async function passwordMatches(password: string, hash: string): Promise<boolean> {
  const match = /^\$argon2id\$v=19\$m=(\d+),t=(\d+),p=(\d+)\$([^$]+)\$([^$]+)$/.exec(hash);
  if (match === null) return false;
  const wanted = Buffer.from(match[5] ?? '', 'base64');
  const tag = await argon2('argon2id', {
    message: password.normalize('NFKC'),
    nonce: Buffer.from(match[4] ?? '', 'base64'),
    tagLength: wanted.length,
    memory: Number(match[1]),
    passes: Number(match[2]),
    parallelism: Number(match[3]),
  });
  return timingSafeEqual(tag, wanted);
}
