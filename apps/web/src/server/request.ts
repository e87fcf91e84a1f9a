/** One call to the server. Answers are trusted as the contract types them: the server checks what it sends. */
import { deviceMilliseconds } from '../clock.ts';
import { keptAtHeader } from '../offline/kept-day.ts';
import { noteReached, noteServerTime, reckonedServerTime } from './connection.ts';
import { type AnswerOf, type Asked, type BodyOf, type RouteName, addressOf } from './paths.ts';
import { NotReached, problemFrom } from './server-problem.ts';

async function call(address: string, init: RequestInit): Promise<Response> {
  let response: Response;
  try {
    response = await fetch(address, { credentials: 'same-origin', ...init });
  } catch (error) {
    // Left off by the screen itself: that says nothing about the server.
    if (init.signal?.aborted === true && (error as Error).name !== 'TimeoutError') throw error;
    noteReached(false);
    throw new NotReached('The server cannot be reached.');
  }
  const keptAt = keptAtOf(response);
  noteReached(
    keptAt === undefined && response.status !== 502 && response.status !== 503 && response.status !== 504,
    keptAt,
  );
  if (!response.ok) throw await problemFrom(response);
  return response;
}

export async function read<Name extends RouteName>(
  name: Name,
  asked: Asked = {},
  signal?: AbortSignal,
): Promise<AnswerOf<Name>> {
  const response = await call(addressOf(name, asked), {
    headers: { accept: 'application/json' },
    ...(signal === undefined ? {} : { signal }),
  });
  return carriedOn((await response.json()) as AnswerOf<Name>, keptAtOf(response));
}

const keptAtOf = (response: Response): number | undefined => {
  const at = response.headers.get(keptAtHeader);
  return at === null ? undefined : Number(at);
};

/** An answer that was kept tells the server's time as it was then: told as it is now. */
function carriedOn<Answer>(answer: Answer, keptAt: number | undefined): Answer {
  if (typeof answer !== 'object' || answer === null || !('serverTime' in answer)) return answer;
  noteServerTime(String(answer.serverTime), keptAt ?? deviceMilliseconds());
  return keptAt === undefined ? answer : { ...answer, serverTime: new Date(reckonedServerTime()).toISOString() };
}

/** A document the server writes as HTML (a letter, the notes). */
export async function readDocument(name: 'letter' | 'notes', patient: string, about?: string): Promise<string> {
  const response = await call(addressOf(name, { patient, about }), { headers: { accept: 'text/html' } });
  return response.text();
}

/** An answer that takes longer than this is not waited for: what was sent waits, and is sent again under its own id. */
const actMilliseconds = 10_000;

export async function post<Name extends RouteName>(
  name: Name,
  body?: BodyOf<Name>,
  asked: Asked = {},
  signal?: AbortSignal,
): Promise<AnswerOf<Name>> {
  const response = await call(addressOf(name, asked), {
    method: 'POST',
    headers: { accept: 'application/json', ...(body === undefined ? {} : { 'content-type': 'application/json' }) },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    ...(signal === undefined ? (name === 'act' ? { signal: AbortSignal.timeout(actMilliseconds) } : {}) : { signal }),
  });
  const text = await response.text();
  return (text === '' ? undefined : JSON.parse(text)) as AnswerOf<Name>;
}
