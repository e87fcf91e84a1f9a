/**
 * The certificates this program writes are read and proved by others: OpenSSL as Node carries it (connections), Node's own
 * reader, and, where it is installed, the `openssl` program with its strict checks (RFC 5280).
 */
import { spawnSync } from 'node:child_process';
import { X509Certificate } from 'node:crypto';
import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { refusedBy } from '../src/certificate/proved.ts';
import { ownFolder, twelvemonth } from './run-command.ts';

const folder = ownFolder();
const names = ['tablets.thornbeck.example', '192.0.2.7', '2001:db8::7'];
const forNames = names.flatMap((name) => ['--for', name]);
const make = async (...more: string[]) => twelvemonth(['certificate', '--folder', folder, ...more]);
const text = (name: string): string => readFileSync(join(folder, name), 'utf8');
const read = (name: string): X509Certificate => new X509Certificate(text(name));
const server = () => ({ certificate: text('server.crt'), key: text('server.key') });

beforeAll(async () => {
  expect((await make(...forNames)).code).toBe(0);
});

describe('a unit’s own certificates', () => {
  it('hold for each name and address for whoever trusts the authority alone, and for no other name', async () => {
    expect(await refusedBy(text('authority.crt'), server(), names)).toBeUndefined();
    expect(await refusedBy(text('authority.crt'), server(), ['elsewhere.example'])).toContain('altnames');
    expect(await refusedBy(text('authority.crt'), server(), ['192.0.2.8'])).toContain('IP: 192.0.2.8');
  });

  it('are read as what they are: an authority that signs, a server’s certificate that does not', () => {
    const [authority, shown] = [read('authority.crt'), read('server.crt')];
    expect([authority.ca, shown.ca]).toEqual([true, false]);
    expect(shown.checkIssued(authority)).toBe(true);
    expect(shown.verify(authority.publicKey)).toBe(true);
    expect(authority.verify(authority.publicKey)).toBe(true);
    expect(shown.subjectAltName).toBe(
      'DNS:tablets.thornbeck.example, IP Address:192.0.2.7, IP Address:2001:DB8:0:0:0:0:0:7',
    );
    expect(shown.keyUsage).toEqual(['1.3.6.1.5.5.7.3.1']);
    expect((Date.parse(shown.validTo) - Date.parse(shown.validFrom)) / 86_400_000).toBe(396);
  });

  it.skipIf(spawnSync('openssl', ['version']).status !== 0)('pass the strict checks of the openssl program', () => {
    const strict = ['verify', '-x509_strict', '-purpose', 'sslserver', '-CAfile', join(folder, 'authority.crt')];
    for (const name of [
      ['-verify_hostname', 'tablets.thornbeck.example'],
      ['-verify_ip', '192.0.2.7'],
      ['-verify_ip', '2001:db8::7'],
    ]) {
      const { stdout, stderr } = spawnSync('openssl', [...strict, ...name, join(folder, 'server.crt')], {
        encoding: 'utf8',
      });
      expect(`${stdout}${stderr}`).toMatch(/server\.crt: OK\n$/);
    }
  });

  it('leave the keys to their owner', () => {
    for (const name of ['authority.key', 'server.key']) expect(statSync(join(folder, name)).mode & 0o077).toBe(0);
  });

  it('are renewed under the same authority, and not for a name the authority does not vouch for', async () => {
    const before = { authority: text('authority.crt'), server: text('server.crt') };
    const other = await make('--for', 'elsewhere.example');
    expect(other.code).toBe(1);
    expect(other.aside).toContain('permitted subtree violation');
    expect(text('server.crt')).toBe(before.server);
    expect((await make('--for', 'tablets.thornbeck.example', '--days', '30')).code).toBe(0);
    expect(text('authority.crt')).toBe(before.authority);
    expect(text('server.crt')).not.toBe(before.server);
    expect(await refusedBy(before.authority, server(), ['tablets.thornbeck.example'])).toBeUndefined();
  });
});

it.each([
  [['--for', 'https://a.example'], 'leave out https://'],
  [['--for', '300.1.1.1'], 'neither a host name nor an IP address'],
  [['--for', 'a.example', '--days', '826'], 'from 1 to 825'],
  [[], 'Say with --for'],
  [['--for', 'a.example', '--called', 'a/b'], 'letters, digits'],
])('%j is refused', async (args, says) => {
  const ran = await twelvemonth(['certificate', '--folder', join(folder, 'none'), ...args]);
  expect([ran.code, ran.aside.includes(says)]).toEqual([2, true]);
});

it('an authority without its key, or that is none, is not replaced', async () => {
  const half = ownFolder();
  writeFileSync(join(half, 'authority.crt'), 'not one');
  const made = async () => twelvemonth(['certificate', '--folder', half, '--for', 'a.example']);
  expect((await made()).aside).toContain('authority.key is missing');
  writeFileSync(join(half, 'authority.key'), 'nor that');
  expect((await made()).aside).toContain('is not a certificate');
});
