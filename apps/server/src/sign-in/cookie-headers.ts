/** The part of a request the sign-in library looks at: its cookie, nothing else. */
import type { FastifyRequest } from 'fastify';

export function headersOf(request: FastifyRequest): Headers {
  const { cookie } = request.headers;
  return new Headers(cookie === undefined ? {} : { cookie });
}
