/** One call to the server. Answers are trusted as the contract types them: the server checks what it sends. */
import type { VisitView } from '@twelvemonth/exchange';
import { keptAtHeader } from '../offline/kept-day.ts';
import { visitCarriedOn } from '../offline/kept-visit.ts';
import { noteReached, noteServerTime, reckonedServerTime, secondsSince } from './connection.ts';
import { type AnswerOf, type Asked, type BodyOf, type RouteName, addressOf } from './paths.ts';
import { NotReached, problemFrom } from './server-problem.ts';

type Answered = {
  readonly text: string;
  /** Set where it was kept on this device: since when, by its clock. */
  readonly keptAt: number | undefined;
};

/** Of a server of ours, or of whatever stands in front of one that is away: a proxy, the sign-in page of a guest network. */
const isOurs = (response: Response): boolean =>
  response.status < 502 || response.headers.get('content-type')?.startsWith('application/problem+json') === true;

function notReached(keptAt?: number, waited = false): NotReached {
  noteReached(false, keptAt);
  return new NotReached('The server cannot be reached.', waited);
}

/** Read to its end: an answer that is cut off in the middle is none. */
async function call(address: string, init: RequestInit): Promise<Answered> {
  let response: Response;
  let text: string;
  try {
    response = await fetch(address, { credentials: 'same-origin', ...init });
    text = await response.text();
  } catch (error) {
    const timedOut = (error as Error).name === 'TimeoutError';
    // Left off by the screen itself: that says nothing about the server.
    if (init.signal?.aborted === true && !timedOut) throw error;
    throw notReached(undefined, timedOut);
  }
  if (!isOurs(response)) throw notReached();
  const keptAt = keptAtOf(response);
  noteReached(keptAt === undefined, keptAt);
  if (!response.ok) throw problemFrom(response.status, text);
  return { text, keptAt };
}

/** What cannot be read was not written by a server of ours. */
function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw notReached();
  }
}

/** Silence is not waited out: the screen says that the server is away, and asks again. Long reckonings have their time. */
const readMilliseconds = 15_000;
const reckoningMilliseconds = 180_000;
const reckoned = new Set<RouteName>(['fill', 'lookAhead', 'flips', 'whatIf', 'replay', 'sessionPlanning', 'cohort']);
const limit = (name: RouteName): AbortSignal =>
  AbortSignal.timeout(reckoned.has(name) ? reckoningMilliseconds : readMilliseconds);

export async function read<Name extends RouteName>(
  name: Name,
  asked: Asked = {},
  signal?: AbortSignal,
): Promise<AnswerOf<Name>> {
  const { text, keptAt } = await call(addressOf(name, asked), {
    headers: { accept: 'application/json' },
    signal: signal === undefined ? limit(name) : AbortSignal.any([signal, limit(name)]),
  });
  return carriedOn(name, parsed(text) as AnswerOf<Name>, keptAt);
}

const keptAtOf = (response: Response): number | undefined => {
  const at = response.headers.get(keptAtHeader);
  return at === null ? undefined : Number(at);
};

/** An answer that was kept tells the server's time as it was then: told as it is now, and what ran meanwhile has run on. */
function carriedOn<Answer>(name: RouteName, answer: Answer, keptAt: number | undefined): Answer {
  if (typeof answer !== 'object' || answer === null || !('serverTime' in answer)) return answer;
  const serverTime = String(answer.serverTime);
  noteServerTime(serverTime, keptAt);
  if (keptAt === undefined) return answer;
  const passed = name === 'visit' ? visitCarriedOn(answer as unknown as VisitView, secondsSince(serverTime)) : answer;
  return { ...(passed as Answer), serverTime: new Date(reckonedServerTime()).toISOString() };
}

/** A document the server writes as HTML (a letter, the notes). */
export async function readDocument(name: 'letter' | 'notes', patient: string, about?: string): Promise<string> {
  const { text } = await call(addressOf(name, { patient, about }), { headers: { accept: 'text/html' } });
  return text;
}

/** An answer that takes longer than this is not waited for: what was sent waits, and is sent again under its own id. */
const actMilliseconds = 10_000;

export async function post<Name extends RouteName>(
  name: Name,
  body?: BodyOf<Name>,
  asked: Asked = {},
  signal?: AbortSignal,
): Promise<AnswerOf<Name>> {
  const { text } = await call(addressOf(name, asked), {
    method: 'POST',
    headers: { accept: 'application/json', ...(body === undefined ? {} : { 'content-type': 'application/json' }) },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    ...(signal === undefined ? (name === 'act' ? { signal: AbortSignal.timeout(actMilliseconds) } : {}) : { signal }),
  });
  return (text === '' ? undefined : parsed(text)) as AnswerOf<Name>;
}
