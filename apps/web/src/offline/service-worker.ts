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
const screenMilliseconds = 1500;
const answerMilliseconds = 4000;

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

const reached = async (request: Request, milliseconds: number): Promise<Response> =>
  fetch(request, { signal: AbortSignal.timeout(milliseconds) });

async function screen(request: Request): Promise<Response> {
  try {
    return await reached(request, screenMilliseconds);
  } catch {
    return (await caches.match('/')) ?? Response.error();
  }
}

const file = async (request: Request): Promise<Response> => (await caches.match(request)) ?? fetch(request);

async function answer(request: Request, { pathname, search }: URL): Promise<Response> {
  const name = `${pathname}${search}`;
  try {
    const response = await reached(request, answerMilliseconds);
    if (response.status >= 502) return (await keptAnswer(name)) ?? response;
    const day = response.ok ? await keptDay() : undefined;
    if (day !== undefined && isOfDay(pathname, day))
      await keepBeside(dayName, name, await answerToKeep(response.clone()));
    return response;
  } catch {
    return (await keptAnswer(name)) ?? Response.error();
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
