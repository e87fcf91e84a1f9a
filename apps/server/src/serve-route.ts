/**
 * One line of the contract's table becomes a route: who may ask, what is asked for, what is answered. A handler gets what has
 * been parsed and the person who asks; it returns the answer or a `Refused`.
 */
import { routes } from '@twelvemonth/exchange';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import type { AtHand } from './at-hand.ts';
import { Refused, sendProblem } from './problem.ts';
import type { SignedIn } from './sign-in/accounts.ts';
import { headersOf } from './sign-in/cookie-headers.ts';
import { type RouteName, mayAsk, whoMay } from './who-may-read.ts';

type Routes = typeof routes;
type Inferred<Name extends RouteName, Part extends string> = Routes[Name] extends {
  readonly [Key in Part]: infer Schema extends z.ZodType;
}
  ? z.infer<Schema>
  : undefined;
/** An answer before the schema has looked at it; it drops what it does not name. */
type AnswerOf<Name extends RouteName> = Routes[Name] extends { readonly answer: infer Schema extends z.ZodType }
  ? z.input<Schema>
  : unknown;
type Places<Path extends string> = Path extends `${string}:${infer Place}/${infer Rest}`
  ? Place | Places<`/${Rest}`>
  : Path extends `${string}:${infer Place}`
    ? Place
    : never;

export type Asked<Name extends RouteName> = {
  readonly params: Readonly<Record<Places<Routes[Name]['path']>, string>>;
  readonly query: Inferred<Name, 'query'>;
  readonly body: Inferred<Name, 'body'>;
  readonly request: FastifyRequest;
  readonly reply: FastifyReply;
};
export type Handler<Name extends RouteName, Who> = (
  asked: Asked<Name> & { readonly who: Who },
) => Promise<AnswerOf<Name> | Refused | FastifyReply>;

/** What may stand behind the question mark where the contract's table names no query of its own. */
export const usualQuery = z.object({
  on: z.string().optional(),
  unit: z.string().optional(),
  session: z.string().optional(),
  version: z.string().optional(),
  about: z.literal('review').optional(),
});

/** The largest register file, with room for its mapping. Everything else is a form somebody filled in. */
const fileBytes = 25_000_000;
const formBytes = 1_000_000;

type Line = {
  readonly method: 'GET' | 'POST';
  readonly path: string;
  readonly query?: z.ZodType;
  readonly body?: z.ZodType;
  readonly answer?: z.ZodType;
};

function register(
  app: FastifyInstance,
  name: RouteName,
  handle: (request: FastifyRequest, reply: FastifyReply) => Promise<unknown>,
): void {
  const line: Line = routes[name];
  const places = [...line.path.matchAll(/:(\w+)/g)].map(
    ([, place]) => [place ?? '', z.string().regex(/^[A-Za-z0-9._-]{1,80}$/, 'an id')] as const,
  );
  app.route({
    method: line.method,
    url: line.path,
    bodyLimit: line.path.startsWith('/api/import/') ? fileBytes : formBytes,
    ...(name === 'events' ? { sse: 'only' } : {}),
    schema: {
      operationId: name,
      ...(places.length === 0 ? {} : { params: z.object(Object.fromEntries(places)) }),
      querystring: line.query ?? usualQuery,
      ...(line.body === undefined ? {} : { body: line.body }),
      ...(line.answer === undefined ? {} : { response: { 200: line.answer } }),
    },
    handler: async (request, reply) => {
      const answer = await handle(request, reply);
      if (answer instanceof Refused) return sendProblem(reply, answer);
      return answer;
    },
  });
}

const askedOf = (request: FastifyRequest, reply: FastifyReply) => ({
  params: request.params,
  query: request.query,
  body: request.body,
  request,
  reply,
});

/** A route that anyone may ask, signed in or not. */
export function serveAnyone<Name extends RouteName>(
  app: FastifyInstance,
  name: Name,
  handler: Handler<Name, undefined>,
): void {
  if (whoMay[name] !== 'anyone' && whoMay[name] !== 'the first visitor')
    throw new Error(`route ${name} is not for anyone`);
  register(app, name, async (request, reply) =>
    handler({ ...askedOf(request, reply), who: undefined } as Asked<Name> & { who: undefined }),
  );
}

/** A route for people who are signed in and hold a role that may ask it. Rights are looked at before what was sent is read. */
export function serveRoute<Name extends RouteName>(
  app: FastifyInstance,
  atHand: AtHand,
  name: Name,
  handler: Handler<Name, SignedIn>,
): void {
  if (!Array.isArray(whoMay[name])) throw new Error(`route ${name} has no roles`);
  const inside = app;
  inside.register(async (scope) => {
    scope.addHook('onRequest', async (request, reply) => {
      const who = await atHand.accounts.session(headersOf(request));
      if (who === undefined) return sendProblem(reply, new Refused(401, 'not-signed-in', 'Sign in to see this.'));
      if (!mayAsk(name, who.member.roles)) {
        return sendProblem(reply, new Refused(403, 'not-yours-to-do', 'Your role does not see this.'));
      }
      request.who = who;
      return undefined;
    });
    register(scope, name, async (request, reply) => {
      const { who } = request;
      if (who === undefined) throw new Error('a signed-in route ran without anyone signed in');
      return handler({ ...askedOf(request, reply), who } as Asked<Name> & { who: SignedIn });
    });
  });
}

declare module 'fastify' {
  interface FastifyRequest {
    who?: SignedIn;
  }
}
