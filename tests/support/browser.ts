/**
 * The browser of the browser tests: a headless Chromium that comes with the dependencies, so a fresh clone needs nothing else.
 * On Linux x64 it is unpacked once beside the dependencies; elsewhere CHROMIUM_PATH or an installed Chrome is used.
 */
import { spawnSync } from 'node:child_process';
import { X509Certificate, createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type Browser } from 'playwright-core';

const packageFolder = fileURLToPath(new URL('../../node_modules/@sparticuz/chromium/', import.meta.url));
const cacheFolder = fileURLToPath(new URL('../../node_modules/.cache/', import.meta.url));

// The package's own flags contain --single-process, which crashed at the second browser context.
const flags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-dev-shm-usage',
  '--font-render-hinting=none',
];

const installed = [
  '/usr/bin/chromium',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:/Program Files/Google/Chrome/Application/chrome.exe',
];

type Program = { readonly executablePath: string; readonly env: Record<string, string> };

/**
 * Unpacks the packed Chromium into a folder named after its version. The package would return a half-unpacked or an older
 * copy from the shared temporary folder, so it unpacks into a folder of this process, which is then moved into place whole.
 */
async function unpacked(): Promise<string> {
  const { version } = JSON.parse(readFileSync(join(packageFolder, 'package.json'), 'utf8')) as { version: string };
  const folder = join(cacheFolder, `chromium-${version}`);
  if (existsSync(join(folder, 'chromium'))) return folder;
  const draft = `${folder}.${process.pid}`;
  mkdirSync(draft, { recursive: true });
  const before = process.env['TMPDIR'];
  process.env['TMPDIR'] = draft; // the only way to tell the package where to unpack
  try {
    const { default: packed, inflate } = await import('@sparticuz/chromium');
    await packed.executablePath();
    await inflate(join(packageFolder, 'bin', 'al2023.tar.br')); // shared libraries for a machine without its own
  } finally {
    if (before === undefined) delete process.env['TMPDIR'];
    else process.env['TMPDIR'] = before;
  }
  try {
    renameSync(draft, folder);
  } catch (error) {
    if (!existsSync(join(folder, 'chromium'))) throw error; // otherwise another test process was first
    rmSync(draft, { recursive: true, force: true });
  }
  return folder;
}

async function program(): Promise<Program> {
  const env = Object.fromEntries(Object.entries(process.env).flatMap(([k, v]) => (v === undefined ? [] : [[k, v]])));
  const named = process.env['CHROMIUM_PATH'];
  if (named !== undefined) return { executablePath: named, env };
  if (process.platform === 'linux' && process.arch === 'x64') {
    const folder = await unpacked();
    const executablePath = join(folder, 'chromium');
    if (spawnSync(executablePath, ['--version'], { stdio: 'ignore' }).status === 0) return { executablePath, env };
    const libraries = join(folder, 'al2023', 'lib');
    return { executablePath, env: { ...env, LD_LIBRARY_PATH: libraries, FONTCONFIG_PATH: join(folder, 'fonts') } };
  }
  const found = installed.find((path) => existsSync(path));
  if (found === undefined) {
    throw new Error(`No Chromium for ${process.platform} ${process.arch}: name one with CHROMIUM_PATH.`);
  }
  return { executablePath: found, env };
}

/**
 * Starts a browser. The caller closes it. `trusts`: a certificate (PEM) under which it accepts what was signed, as if somebody had
 * installed it on the device. Unlike ignoring every error, this leaves the connection a trusted one for the browser.
 */
export async function launch({ trusts }: { trusts?: string | undefined } = {}): Promise<Browser> {
  const { executablePath, env } = await program();
  const trusted = trusts === undefined ? [] : [`--ignore-certificate-errors-spki-list=${keyDigest(trusts)}`];
  return chromium.launch({ executablePath, args: [...flags, ...trusted], env });
}

const keyDigest = (certificate: string): string =>
  createHash('sha256')
    .update(new X509Certificate(certificate).publicKey.export({ type: 'spki', format: 'der' }))
    .digest('base64');

/** Saves a screenshot for a person to look at; the folder is never committed. */
export function screenshotPath(name: string): string {
  const path = fileURLToPath(new URL(`../../reports/screenshots/${name}.png`, import.meta.url));
  mkdirSync(dirname(path), { recursive: true });
  return path;
}
