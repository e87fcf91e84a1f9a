/** Makes what the server needs to speak TLS to the tablets of the unit: an authority of its own, and a certificate from it. */
import { X509Certificate } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { isIP } from 'node:net';
import { join } from 'node:path';
import { type Certified, newAuthority, newServerCertificate } from '../certificate/certificates.ts';
import { refusedBy } from '../certificate/proved.ts';
import { now } from '../clock.ts';
import { type Command, readOptions, wholeOption } from '../command.ts';
import { answeredNo, cannotOpen, exitCodes, misused } from '../ending.ts';

/** Common practice, no source: a year and a month, so that it is renewed once a year with time to spare. */
const usualDays = 396;
/** Apple's devices take no longer one, whoever signed it: support.apple.com/en-us/103769, from memory. */
const mostDays = 825;
/** Common practice, no source: trusted anew on every tablet when it ends. */
const authorityYears = 10;

export const certificate: Command = {
  summary: 'a certificate authority of the unit’s own, and a certificate for its server',
  help: `twelvemonth certificate --folder DIR --for NAME [--for NAME ...]

Writes four files: authority.crt (the tablets are told to trust it), authority.key (keep it apart and offline),
server.crt and server.key (for --tls-cert and --tls-key). Needs nothing but this program.
An authority that is there is used again and only the server's certificate is made anew: the tablets notice nothing.
It vouches for these names only; for another name a new one has to be made, in another folder, and trusted anew.

  --folder DIR       where the files lie
  --for NAME         what stands in the address on the tablets: a host name or an IP address; several times
  --called NAME      what the tablets show when they are asked to trust it (Twelvemonth, then the first name)
  --days N           how long the server's certificate holds (${usualDays}, ${mostDays} at most)`,
  run: async (args, output) => {
    const { values, positionals } = readOptions(args, {
      folder: { type: 'string' },
      for: { type: 'string', multiple: true },
      called: { type: 'string' },
      days: { type: 'string', default: String(usualDays) },
    });
    if (positionals.length > 0) throw misused(`"${positionals.join(' ')}" is not meant here.`);
    const { folder } = values;
    if (folder === undefined) throw misused('Say with --folder where the files go.');
    const names = namesFrom(values.for ?? []);
    const days = wholeOption('days', values.days, 1, mostDays);
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    const place = placeIn(folder);
    const authority = authorityThere(place) ?? authorityMade(place, names, calledBy(values.called, names));
    const from = now();
    const until = later(from, days);
    const proof = readCertificate(place.authority, authority.certificate);
    if (Date.parse(proof.validTo) < Date.parse(until))
      throw answeredNo(
        `The authority in ${folder} ends on ${dayOf(proof.validTo)}, before the certificate would: make a new one in another folder, or give fewer --days.`,
      );
    const server = newServerCertificate({ ...authority, called: calledOf(proof) }, names, { from, until });
    const refused = await refusedBy(authority.certificate, server, names);
    if (refused !== undefined)
      throw answeredNo(
        `Nothing was changed: whoever trusts ${place.authority} would not accept this certificate (${refused}). For other names than those the authority was made for, make a new one in another folder.`,
      );
    replace(place.serverKey, server.key, 0o600);
    replace(place.server, server.certificate, 0o644);
    output.out(
      [
        `${place.server} and ${place.serverKey}: for ${names.join(', ')}, until ${dayOf(until)}`,
        `${place.authority}: until ${dayOf(proof.validTo)}; SHA-256 ${proof.fingerprint256}`,
        `Start the server with --tls-cert ${place.server} --tls-key ${place.serverKey}, and have every tablet trust ${place.authority}.`,
        `Keep ${place.authorityKey} where nobody but you reaches it: who has it can pass for this server.`,
      ].join('\n'),
    );
    return exitCodes.done;
  },
};

const placeIn = (folder: string) => ({
  folder,
  authority: join(folder, 'authority.crt'),
  authorityKey: join(folder, 'authority.key'),
  server: join(folder, 'server.crt'),
  serverKey: join(folder, 'server.key'),
});
type Place = ReturnType<typeof placeIn>;

/** A label of a host name: RFC 1123, 2.1. */
const hostName = /^(?!-)[a-z\d-]{1,63}(?<!-)(?:\.(?!-)[a-z\d-]{1,63}(?<!-))*$/;

function namesFrom(given: readonly string[]): readonly [string, ...string[]] {
  const names = [...new Set(given.map((name) => name.trim().toLowerCase()))];
  const [first, ...rest] = names;
  if (first === undefined) throw misused('Say with --for which names or addresses the server answers to.');
  for (const name of names) {
    const isAddress = isIP(name) !== 0 && !name.includes('%') && !/:.*\./.test(name);
    const isName = hostName.test(name) && name.length <= 253 && !/^[\d.]+$/.test(name);
    if (!isAddress && !isName)
      throw misused(`--for ${name} is neither a host name nor an IP address: leave out https:// and the port.`);
  }
  return [first, ...rest];
}

function authorityThere(place: Place): Certified | undefined {
  const [hasCertificate, hasKey] = [existsSync(place.authority), existsSync(place.authorityKey)];
  if (!hasCertificate && !hasKey) return undefined;
  if (!hasCertificate || !hasKey)
    throw cannotOpen(
      `${hasCertificate ? place.authorityKey : place.authority} is missing: put it back beside the other, or use another folder.`,
    );
  return { certificate: readFileSync(place.authority, 'utf8'), key: readFileSync(place.authorityKey, 'utf8') };
}

function authorityMade(place: Place, names: readonly string[], called: string): Certified {
  const from = now();
  const made = newAuthority(called, names, { from, until: later(from, 365 * authorityYears) });
  writeFileSync(place.authorityKey, made.key, { mode: 0o600, flag: 'wx' });
  writeFileSync(place.authority, made.certificate, { flag: 'wx' });
  return made;
}

function calledBy(called: string | undefined, names: readonly [string, ...string[]]): string {
  const usual = `Twelvemonth ${names[0]}`;
  const text = called?.trim() ?? (/^[\da-z .-]+$/.test(names[0]) ? usual.slice(0, 64) : 'Twelvemonth');
  if (!/^[\dA-Za-z][\dA-Za-z .-]{0,63}$/.test(text))
    throw misused('--called takes up to 64 letters, digits, spaces, dots and hyphens.');
  return text;
}

function readCertificate(path: string, text: string): X509Certificate {
  try {
    return new X509Certificate(text);
  } catch {
    throw cannotOpen(`${path} is not a certificate: put back what was there, or use another folder.`);
  }
}

const calledOf = (proof: X509Certificate): string => /CN=(.*)/.exec(proof.subject)?.[1] ?? '';

const later = (instant: string, days: number): string =>
  Temporal.Instant.from(instant)
    .add({ hours: 24 * days })
    .toString({ smallestUnit: 'second' });

const dayOf = (moment: string): string => new Date(moment).toISOString().slice(0, 10);

/** Whole or not at all: a server that starts meanwhile reads the old one or the new one. */
function replace(path: string, text: string, mode: number): void {
  writeFileSync(`${path}.new`, text, { mode });
  renameSync(`${path}.new`, path);
}
