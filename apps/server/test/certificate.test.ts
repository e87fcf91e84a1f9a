/** The certificate a server shows: what is refused at the start, and what it says about its end. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { newAuthority, newServerCertificate } from '../../cli/src/certificate/certificates.ts';
import { ownFolder } from '../../cli/test/run-command.ts';
import { certificateViewOf, readTls } from '../src/certificate.ts';

const names = ['tablets.thornbeck.example', '192.0.2.7'];
const valid = { from: '2026-11-01T00:00:00Z', until: '2027-01-31T12:00:00Z' };
const authority = { ...newAuthority('An authority', names, valid), called: 'An authority' };
const shown = newServerCertificate(authority, names, valid);
const folder = ownFolder();
const file = (name: string, text: string): string => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};

it.each([
  ['2026-12-31T23:59:59.000Z', false, 'holds until 31 Jan 2027'],
  ['2027-01-01T00:00:00.000Z', true, 'ends on 31 Jan 2027 (days left: 30)'],
  ['2027-01-31T11:59:59.000Z', true, 'ends on 31 Jan 2027 (days left: 0)'],
  ['2027-01-31T12:00:01.000Z', true, 'ended on 31 Jan 2027: no tablet can reach it'],
])('at %s it warns: %s', (now, warns, says) => {
  const view = certificateViewOf(shown.certificate, now);
  expect(view.warns).toBe(warns);
  expect(view.says).toContain(says);
  expect(view.names).toBe('tablets.thornbeck.example, 192.0.2.7');
});

it('a certificate and its key are taken; another’s key, no certificate and no file are refused in a sentence', () => {
  const [cert, key] = [file('server.crt', shown.certificate), file('server.key', shown.key)];
  expect(readTls({ cert, key })).toEqual({ cert: shown.certificate, key: shown.key });
  expect(() => readTls({ cert, key: file('other.key', authority.key) })).toThrow('not the one of the certificate');
  expect(() => readTls({ cert: key, key })).toThrow('have to be a certificate and its key');
  expect(() => readTls({ cert: join(folder, 'none'), key })).toThrow('cannot be read');
});
