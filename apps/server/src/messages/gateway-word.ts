/**
 * The later word of a text gateway as a call: a listener of its own with one route, off unless it is asked for, on this machine
 * only. A proxy of the unit's own speaks TLS in front of it. The word is kept as a file in the folder of --returned, from where
 * it is taken in like one that was moved there: nothing is read or written of anybody here.
 *
 *   POST /text-message   authorization: Bearer KEY   content-type: application/json
 *   { "id": ID, "outcome": "not delivered", "detail": "number not in use" }      or "delivered"
 *
 * 204: kept on disk. 401: another key. 422: not this contract. 503: too many lie there, or the disk is full; come again.
 */
import { createHash, randomUUID, timingSafeEqual } from 'node:crypto';
import { mkdirSync, readdirSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fastify, { type FastifyInstance, type FastifyReply, LogController } from 'fastify';
import { textStatus } from './returned.ts';

/** A few words, as the contract has them. */
const wordBytes = 4096;
/** A unit sends some dozens of messages a day: more than this lying there is a gateway gone wrong. */
const mostLying = 2000;

export function gatewayWordListener({
  folder,
  key,
}: {
  readonly folder: string;
  readonly key: string;
}): FastifyInstance {
  const app = fastify({
    bodyLimit: wordBytes,
    logController: new LogController({ disableRequestLogging: true }),
    logger: { level: 'warn', serializers: { req: () => ({}) } },
    forceCloseConnections: true,
  }) as unknown as FastifyInstance;
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  // Whoever has not the key is not read further.
  app.addHook('onRequest', async ({ headers }, reply) => {
    if (!isSame(headers.authorization ?? '', `Bearer ${key}`)) await problem(reply, 401, 'The key is not ours.');
  });
  app.post('/text-message', (request, reply) => {
    const read = textStatus.safeParse(request.body);
    if (!read.success)
      return problem(reply, 422, 'This is not the contract: id, outcome, and detail where there is one.');
    if (readdirSync(folder).length > mostLying) return problem(reply, 503, 'Too many lie there: come again.');
    keep(folder, JSON.stringify(read.data));
    return reply.code(204).send();
  });
  app.setNotFoundHandler((_, reply) => problem(reply, 404, 'There is nothing here.'));
  app.setErrorHandler((error: { statusCode?: number }, _, reply) =>
    error.statusCode !== undefined && error.statusCode < 500
      ? problem(reply, error.statusCode, 'This is not the contract: a small piece of JSON.')
      : problem(reply, 503, 'It could not be kept: come again.'),
  );
  return app;
}

const problem = (reply: FastifyReply, status: number, title: string): FastifyReply =>
  reply.code(status).type('application/problem+json').send(JSON.stringify({ status, title }));

/** Of one length whatever was sent, so that the time tells nothing. */
function isSame(given: string, wanted: string): boolean {
  const digest = (text: string): Buffer => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(given), digest(wanted));
}

/** Whole or not at all: a file that begins with a dot is not taken in. */
function keep(folder: string, text: string): void {
  const name = `${randomUUID()}.json`;
  writeFileSync(join(folder, `.${name}`), text, { mode: 0o600, flush: true });
  renameSync(join(folder, `.${name}`), join(folder, name));
}
