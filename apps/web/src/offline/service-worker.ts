/**
 * Serves the screens, and the answers of the day that is kept, when the server cannot be reached. The network always goes first;
 * what comes from the vault says so in a header. Nothing of /api is written anywhere but into the vault.
 */
import { deviceMilliseconds } from '../clock.ts';
import { type KeptAnswer, dayName, isOfDay, keptAtHeader, keptDay, mayBeKept } from './kept-day.ts';
import { keepBeside, kept } from './vault.ts';

/** Put in by the build: the files of the screens, and a name that changes with them. */
declare const screenFiles: readonly string[];
declare const screensName: string;

type Extendable = Event & { readonly waitUntil: (work: Promise<unknown>) => void };
type Fetching = Extendable & {
  readonly request: Request;
  readonly respondWith: (answer: Promise<Response>) => void;
};
const worker = globalThis as unknown as {
  readonly location: Location;
  readonly skipWaiting: () => Promise<void>;
  readonly clients: { readonly claim: () => Promise<void> };
  readonly addEventListener: ((type: 'fetch', listener: (event: Fetching) => void) => void) &
    ((type: 'install' | 'activate', listener: (event: Extendable) => void) => void);
};

/** How long a dead network may keep a nurse waiting before the kept copy is shown. */
const screenMilliseconds = 700;
const answerMilliseconds = 4000;
/** Once it was waited for in vain, the kept copy is shown after so long, until something answers again. */
const silentMilliseconds = 150;
let isSilent = false;

worker.addEventListener('install', (event) =>
  event.waitUntil(
    caches
      .open(screensName)
      .then(async (cache) => cache.addAll([...screenFiles]))
      .then(worker.skipWaiting.bind(worker)),
  ),
);

worker.addEventListener('activate', (event) =>
  event.waitUntil(
    caches
      .keys()
      .then(async (names) =>
        Promise.all(names.filter((name) => name !== screensName).map(async (name) => caches.delete(name))),
      )
      .then(worker.clients.claim.bind(worker.clients)),
  ),
);

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const address = new URL(request.url);
  if (request.method !== 'GET' || address.origin !== worker.location.origin) return;
  if (address.pathname.startsWith('/api/')) {
    if (mayBeKept(address.pathname)) event.respondWith(answer(request, address));
  } else if (request.mode === 'navigate') event.respondWith(screen(request));
  else event.respondWith(file(request));
});

async function reached(request: Request, milliseconds: number): Promise<Response> {
  try {
    const response = await fetch(request, { signal: AbortSignal.timeout(milliseconds) });
    isSilent = false;
    return response;
  } catch (error) {
    if ((error as Error).name === 'TimeoutError') isSilent = true;
    throw error;
  }
}

async function screen(request: Request): Promise<Response> {
  try {
    return await reached(request, screenMilliseconds);
  } catch {
    return (await caches.match('/')) ?? Response.error();
  }
}

const file = async (request: Request): Promise<Response> => (await caches.match(request)) ?? fetch(request);

/** What is kept; on a network that is silent it is not waited for long, and what comes later is kept for the next time. */
async function answer(request: Request, address: URL): Promise<Response> {
  const name = `${address.pathname}${address.search}`;
  const asked = fromServer(request, address);
  const inTime = isSilent ? await Promise.race([asked, after(silentMilliseconds)]) : await asked;
  return inTime ?? (await keptAnswer(name)) ?? (await asked) ?? Response.error();
}

const after = async (milliseconds: number): Promise<undefined> =>
  new Promise((resolve) => {
    setTimeout(() => resolve(undefined), milliseconds);
  });

let asks = 0;
const keptTurns = new Map<string, number>();

/** Undefined: none came, or one of a proxy whose server is away and for which there is a copy. */
async function fromServer(request: Request, { pathname, search }: URL): Promise<Response | undefined> {
  asks += 1;
  const turn = asks;
  try {
    const response = await reached(request, answerMilliseconds);
    const name = `${pathname}${search}`;
    if (response.status >= 502) return (await keptAnswer(name)) ?? response;
    const day = response.ok ? await keptDay() : undefined;
    if (day !== undefined && isOfDay(pathname, day)) {
      const one = await answerToKeep(response.clone());
      // An answer that comes late never takes the place of one that was asked for after it.
      if (turn > (keptTurns.get(name) ?? 0)) {
        keptTurns.set(name, turn);
        await keepBeside(dayName, name, one);
      }
    }
    return response;
  } catch {
    return undefined;
  }
}

/** A document keeps its own policy, so that nothing in it runs offline either. */
const headersKept = ['content-type', 'content-security-policy'];

async function answerToKeep(response: Response): Promise<KeptAnswer> {
  const headers = headersKept.flatMap((name) => {
    const value = response.headers.get(name);
    return value === null ? [] : [[name, value]];
  });
  return {
    at: deviceMilliseconds(),
    body: await response.text(),
    headers: Object.fromEntries(headers) as KeptAnswer['headers'],
  };
}

async function keptAnswer(name: string): Promise<Response | undefined> {
  const found = await kept<KeptAnswer>('answers', name);
  return found === undefined
    ? undefined
    : new Response(found.body, { headers: { ...found.headers, [keptAtHeader]: String(found.at) } });
}
