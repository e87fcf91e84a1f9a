/** The HTTP server: what holds for every request, then the routes, then the screens. */
import compress from '@fastify/compress';
import helmet from '@fastify/helmet';
import { default as serverSentEvents } from '@fastify/sse';
import swagger from '@fastify/swagger';
import { randomUUID } from 'node:crypto';
import fastify, { type FastifyError, type FastifyInstance, LogController } from 'fastify';
import {
  hasZodFastifySchemaValidationErrors,
  jsonSchemaTransform,
  serializerCompiler,
  validatorCompiler,
} from 'fastify-type-provider-zod';
import type { AtHand } from './at-hand.ts';
import type { Tls } from './certificate.ts';
import { Refused, sendProblem } from './problem.ts';
import { serveActs } from './routes/acts.ts';
import { serveEvents } from './routes/events.ts';
import { serveImports } from './routes/imports.ts';
import { serveOwnPage } from './routes/own-page.ts';
import { serveProtocolDrafts } from './routes/protocol-drafts.ts';
import { serveReading } from './routes/reading.ts';
import { serveReminders } from './routes/reminders.ts';
import { serveSignIn } from './routes/sign-in.ts';
import { serveSigning } from './routes/signing.ts';
import { serveStaffForToday } from './routes/staff-for-today.ts';
import { serveStaff } from './routes/staff.ts';
import { refuseOtherSites } from './same-origin.ts';
import { serveAnyone } from './serve-route.ts';
import { serveScreens } from './screens.ts';

export type Address = {
  readonly tls: Tls | undefined;
  readonly behindProxy: boolean;
  readonly onlyThisMachine: boolean;
  /** Folder of the built screens. */
  readonly screens: string;
  readonly log: Log;
};

/** `info` writes a line a request. No line holds an address with an id in it, a name or anything a form was filled with. */
export type Log = { readonly level: 'info' | 'warn'; readonly stream?: { readonly write: (line: string) => void } };

const keepAliveMilliseconds = 25_000;

export async function buildApp(atHand: AtHand, address: Address): Promise<FastifyInstance> {
  const https = address.tls !== undefined || address.behindProxy;
  const app = fastify({
    ...(address.tls === undefined ? {} : { https: address.tls }),
    // One proxy, ours: what it says about the caller is believed, what stands before it is not.
    trustProxy: address.behindProxy ? (_caller: string, hop: number) => hop === 0 : false,
    // Addresses hold ids; lines of our own name the route instead.
    logController: new LogController({ disableRequestLogging: true }),
    logger: { ...address.log, serializers: { req: () => ({}) } },
    forceCloseConnections: true,
    genReqId: () => randomUUID(),
  }) as unknown as FastifyInstance;
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  // Forms are JSON. A page of another site can send plain text without asking first.
  app.removeContentTypeParser('text/plain');
  refuseOtherSites(app, address);
  answerTroubleAsProblems(app);
  await app.register(helmet, {
    global: true,
    hsts: https ? { maxAge: 31_536_000, includeSubDomains: false } : false,
    referrerPolicy: { policy: 'no-referrer' },
    // Documents stand in a frame of their own and cannot ask for it, so nobody does.
    originAgentCluster: false,
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'none'"],
        scriptSrc: ["'self'"],
        // Drawings carry style attributes; a style sheet of anyone else's is still refused.
        styleSrc: ["'self'"],
        styleSrcAttr: ["'unsafe-inline'"],
        imgSrc: ["'self'", 'data:'],
        fontSrc: ["'self'"],
        connectSrc: ["'self'"],
        workerSrc: ["'self'"],
        manifestSrc: ["'self'"],
        frameSrc: ["'self'"],
        frameAncestors: ["'self'"],
        formAction: ["'self'"],
        baseUri: ["'none'"],
        ...(https ? { upgradeInsecureRequests: [] } : {}),
      },
    },
  });
  await app.register(compress, { global: true, threshold: 1024 });
  await app.register(serverSentEvents.default, { heartbeatInterval: keepAliveMilliseconds });
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: { title: 'Twelvemonth', version: atHand.version, description: 'Refusals are RFC 9457 problems.' },
    },
    transform: jsonSchemaTransform,
  });
  app.addHook('onRequest', async (request, reply) => {
    if (request.url.startsWith('/api')) reply.header('cache-control', 'no-store');
  });
  app.addHook('onResponse', async (request, reply) => {
    const line = {
      method: request.method,
      route: request.routeOptions.url ?? 'none',
      status: reply.statusCode,
      milliseconds: Math.round(reply.elapsedTime),
    };
    request.log.info(line, 'answered');
  });
  await app.register(async (api) => {
    serveAnyone(api, 'openApi', async ({ reply }) =>
      reply.type('application/json').serializer(String).send(JSON.stringify(app.swagger())),
    );
    serveSignIn(api, atHand);
    serveStaff(api, atHand);
    serveStaffForToday(api, atHand);
    serveSigning(api, atHand);
    serveActs(api, atHand);
    serveReading(api, atHand);
    serveReminders(api, atHand);
    serveOwnPage(api, atHand);
    serveImports(api, atHand);
    serveProtocolDrafts(api, atHand);
    serveEvents(api, atHand);
  });
  await serveScreens(app, address.screens);
  return app;
}

function answerTroubleAsProblems(app: FastifyInstance): void {
  app.setErrorHandler((error: FastifyError, request, reply) => {
    if (hasZodFastifySchemaValidationErrors(error)) {
      const reasons = error.validation.map(({ instancePath, message }) => ({
        name: 'field-wrong',
        says: message ?? 'is not what is expected',
        // An act's fields are named from the act, as its own refusals name them.
        field: instancePath
          .replace(/^\//, '')
          .replaceAll('/', '.')
          .replace(/^act\./, ''),
      }));
      return sendProblem(
        reply,
        new Refused(422, 'field-wrong', 'Some of what was sent is not what is expected.', { reasons }),
      );
    }
    switch (error.statusCode) {
      case 400:
        return sendProblem(reply, new Refused(400, 'unreadable', 'What was sent could not be read.'));
      case 406:
      case 415:
        return sendProblem(
          reply,
          new Refused(
            error.statusCode,
            'other-form',
            'This route speaks another form: see the description of the interface.',
          ),
        );
      case 413:
        return sendProblem(reply, new Refused(413, 'too-large', 'What was sent is larger than this route takes.'));
      case undefined:
      default: {
        request.log.error({ err: error, route: request.routeOptions.url }, 'defect');
        return sendProblem(
          reply,
          new Refused(
            500,
            'defect',
            'The service met something it did not expect. Quote the number below when you ask for help.',
          ),
          request.id,
        );
      }
    }
  });
}
