/**
 * A unit's own certificate authority, and certificates for its server (RFC 5280): P-256 keys, signed with ECDSA and SHA-256.
 * The authority says of itself for which names it vouches and for no other: whoever trusts it trusts it for this server only.
 */
import { X509Certificate, createHash, generateKeyPairSync, randomBytes, sign, type KeyObject } from 'node:crypto';
import { isIP } from 'node:net';
import {
  as,
  bitsOf,
  boolean,
  identifier,
  moment,
  namedBits,
  octets,
  sequence,
  set,
  whole,
  within,
  words,
} from './der.ts';

/** A certificate and its key, PEM. */
export type Certified = { readonly certificate: string; readonly key: string };

/** From the first moment to the last, instants. */
export type Valid = { readonly from: string; readonly until: string };

const oid = {
  commonName: '2.5.4.3',
  subjectKey: '2.5.29.14',
  keyUsage: '2.5.29.15',
  names: '2.5.29.17',
  basic: '2.5.29.19',
  nameConstraints: '2.5.29.30',
  authorityKey: '2.5.29.35',
  extendedUsage: '2.5.29.37',
  serverAuthentication: '1.3.6.1.5.5.7.3.1',
  ecdsaWithSha256: '1.2.840.10045.4.3.2',
} as const;

/** Bits of KeyUsage: RFC 5280, 4.2.1.3. */
const usage = { digitalSignature: 0, keyCertSign: 5, cRLSign: 6 } as const;

/** Numbers of GeneralName: RFC 5280, 4.2.1.6. */
const dnsName = 2;
const ipAddress = 7;

const algorithm = sequence(identifier(oid.ecdsaWithSha256));
const commonName = (text: string): Buffer => sequence(set(sequence(identifier(oid.commonName), words(text))));

const extension = (name: string, value: Uint8Array, { critical = false } = {}): Buffer =>
  sequence(identifier(name), ...(critical ? [boolean(true)] : []), octets(value));

const bytesOfAddress = (address: string): Buffer => {
  if (isIP(address) === 4) return Buffer.from(address.split('.').map(Number));
  const [head = '', tail] = address.split('::');
  const groups = (text: string): number[] =>
    text === '' ? [] : text.split(':').map((one) => Number.parseInt(one, 16));
  const [before, after] = [groups(head), groups(tail ?? '')];
  const all = [...before, ...Array.from({ length: 8 - before.length - after.length }, () => 0), ...after];
  return Buffer.from(all.flatMap((group) => [group >>> 8, group & 0xff]));
};

const generalName = (name: string): Buffer =>
  isIP(name) === 0 ? as(dnsName, Buffer.from(name, 'ascii')) : as(ipAddress, bytesOfAddress(name));

/** One address only: every bit of it counts. */
const subtree = (name: string): Buffer => {
  if (isIP(name) === 0) return sequence(generalName(name));
  const bytes = bytesOfAddress(name);
  return sequence(as(ipAddress, Buffer.concat([bytes, Buffer.alloc(bytes.length, 0xff)])));
};

/** A sort of name of which none is allowed has to be shut out in words of its own: RFC 5280, 4.2.1.10. */
function constraints(names: readonly string[]): Buffer {
  const shut = [
    ...(names.some((name) => isIP(name) === 0) ? [] : [as(dnsName, Buffer.alloc(0))]),
    ...(names.some((name) => isIP(name) === 4) ? [] : [as(ipAddress, Buffer.alloc(8))]),
    ...(names.some((name) => isIP(name) === 6) ? [] : [as(ipAddress, Buffer.alloc(32))]),
  ];
  return sequence(
    within(0, ...names.map(subtree)),
    ...(shut.length === 0 ? [] : [within(1, ...shut.map((one) => sequence(one)))]),
  );
}

type Signer = { readonly subject: Uint8Array; readonly key: KeyObject | string; readonly keyId: Uint8Array };

const newKey = () => generateKeyPairSync('ec', { namedCurve: 'P-256' });
const keyIdOf = (publicKey: KeyObject): Buffer =>
  createHash('sha256')
    .update(publicKey.export({ type: 'spki', format: 'der' }))
    .digest()
    .subarray(0, 20);

function signed(
  of: { readonly subject: Uint8Array; readonly publicKey: KeyObject; readonly extensions: readonly Uint8Array[] },
  valid: Valid,
  by: Signer,
): string {
  const serial = randomBytes(16);
  serial[0] = ((serial[0] ?? 0) & 0x7f) | 0x40;
  const body = sequence(
    within(0, whole(Buffer.from([2]))),
    whole(serial),
    algorithm,
    by.subject,
    sequence(moment(valid.from), moment(valid.until)),
    of.subject,
    of.publicKey.export({ type: 'spki', format: 'der' }),
    within(3, sequence(...of.extensions)),
  );
  const der = sequence(body, algorithm, bitsOf(sign('sha256', body, by.key)));
  const lines = der.toString('base64').match(/.{1,64}/g) ?? [];
  return `-----BEGIN CERTIFICATE-----\n${lines.join('\n')}\n-----END CERTIFICATE-----\n`;
}

const pem = (key: KeyObject): string => key.export({ type: 'pkcs8', format: 'pem' });

/** `called`: how it is shown to whoever is asked to trust it. */
export function newAuthority(called: string, names: readonly string[], valid: Valid): Certified {
  const { publicKey, privateKey } = newKey();
  const subject = commonName(called);
  const keyId = keyIdOf(publicKey);
  const extensions = [
    extension(oid.basic, sequence(boolean(true), whole(Buffer.from([0]))), { critical: true }),
    extension(oid.keyUsage, namedBits(usage.keyCertSign, usage.cRLSign), { critical: true }),
    extension(oid.nameConstraints, constraints(names), { critical: true }),
    extension(oid.subjectKey, octets(keyId)),
  ];
  const certificate = signed({ subject, publicKey, extensions }, valid, { subject, key: privateKey, keyId });
  return { certificate, key: pem(privateKey) };
}

/** No host name, so that it is not taken for one of those it answers to. */
const serverCalled = commonName('Twelvemonth server');

/** For a server that answers to these names and addresses. */
export function newServerCertificate(
  authority: Certified & { readonly called: string },
  names: readonly string[],
  valid: Valid,
): Certified {
  const { publicKey, privateKey } = newKey();
  const keyId = keyIdOf(new X509Certificate(authority.certificate).publicKey);
  const extensions = [
    extension(oid.basic, sequence(), { critical: true }),
    extension(oid.keyUsage, namedBits(usage.digitalSignature), { critical: true }),
    extension(oid.extendedUsage, sequence(identifier(oid.serverAuthentication))),
    extension(oid.names, sequence(...names.map(generalName))),
    extension(oid.subjectKey, octets(keyIdOf(publicKey))),
    extension(oid.authorityKey, sequence(as(0, keyId))),
  ];
  const certificate = signed({ subject: serverCalled, publicKey, extensions }, valid, {
    subject: commonName(authority.called),
    key: authority.key,
    keyId,
  });
  return { certificate, key: pem(privateKey) };
}
