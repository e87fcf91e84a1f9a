/** The certificate this server shows, and its last day: after it no tablet reaches the server, and none keeps the day. */
import { X509Certificate, createPrivateKey } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { type Instant, day, shortDate } from '@twelvemonth/clinical';
import type { CertificateView } from '@twelvemonth/exchange';
import type { ServeOptions } from './command-line.ts';
import { CannotStart } from './service-folder.ts';

export type Tls = { readonly cert: string; readonly key: string };

/** Common practice, no source: time enough for a new one to be asked for, made and put in place. */
const daysToWarn = 30;

/** Refused are files that cannot be read and a key that belongs to another certificate. */
export function readTls(tls: ServeOptions['tls']): Tls | undefined {
  if (tls === undefined) return undefined;
  const cert = textOf(tls.cert, 'certificate');
  const key = textOf(tls.key, 'key');
  let belongs: boolean;
  try {
    belongs = new X509Certificate(cert).checkPrivateKey(createPrivateKey(key));
  } catch {
    throw new CannotStart(
      `${tls.cert} and ${tls.key} have to be a certificate and its key, in PEM, without a password.`,
    );
  }
  if (!belongs) throw new CannotStart(`The key in ${tls.key} is not the one of the certificate in ${tls.cert}.`);
  return { cert, key };
}

function textOf(path: string, what: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    throw new CannotStart(`The ${what} ${path} cannot be read.`);
  }
}

/** As of a moment of the machine's own clock: browsers go by theirs, also while a demo lives in another time. */
export function certificateViewOf(cert: string, now: Instant): CertificateView {
  const { validTo, subjectAltName = '' } = new X509Certificate(cert);
  const until = new Date(validTo).toISOString();
  const last = day(until.slice(0, 10));
  const left = last - day(now.slice(0, 10));
  const remedy = 'Whoever runs it makes a new one and starts the server again with it.';
  const says =
    Date.parse(until) < Date.parse(now)
      ? `This server’s certificate ended on ${shortDate(last)}: no tablet can reach it. ${remedy}`
      : left <= daysToWarn
        ? `This server’s certificate ends on ${shortDate(last)} (days left: ${left}): after that no tablet can reach it. ${remedy}`
        : `This server’s certificate holds until ${shortDate(last)}.`;
  return { names: subjectAltName.replaceAll(/DNS:|IP Address:/g, ''), until, warns: left <= daysToWarn, says };
}
