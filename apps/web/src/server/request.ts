/** One call to the server. Answers are trusted as the contract types them: the server checks what it sends. */
import { noteReached } from './connection.ts';
import { type AnswerOf, type Asked, type BodyOf, type RouteName, addressOf } from './paths.ts';
import { NotReached, problemFrom } from './server-problem.ts';

async function call(address: string, init: RequestInit): Promise<Response> {
  let response: Response;
  try {
    response = await fetch(address, { credentials: 'same-origin', ...init });
  } catch (error) {
    // Left off by the screen itself: that says nothing about the server.
    if (init.signal?.aborted === true) throw error;
    noteReached(false);
    throw new NotReached('The server cannot be reached.');
  }
  noteReached(response.status !== 502 && response.status !== 503 && response.status !== 504);
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
  return (await response.json()) as AnswerOf<Name>;
}

/** A document the server writes as HTML (a letter, the notes). */
export async function readDocument(name: 'letter' | 'notes', patient: string, about?: string): Promise<string> {
  const response = await call(addressOf(name, { patient, about }), { headers: { accept: 'text/html' } });
  return response.text();
}

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
    ...(signal === undefined ? {} : { signal }),
  });
  const text = await response.text();
  return (text === '' ? undefined : JSON.parse(text)) as AnswerOf<Name>;
}
