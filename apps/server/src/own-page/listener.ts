/**
 * The pages people open from home: a server of its own with these routes and no others, off unless it is asked for. Every
 * address that opens nothing answers alike; the birth date is asked before anything is shown, and too many wrong ones close the
 * page for good. Nothing needs scripts.
 */
import helmet from '@fastify/helmet';
import { randomUUID } from 'node:crypto';
import fastify, { type FastifyInstance, type FastifyReply, type FastifyRequest, LogController } from 'fastify';
import { type Day, isPlainDate, plainDate } from '@twelvemonth/clinical';
import {
  afterPage,
  afterThanksPage,
  birthDatePage,
  closedPage,
  ownPageHtml,
  ownPageStyle,
  thanksPage,
} from '@twelvemonth/letters';
import { z } from 'zod';
import { doAct } from '../acts/do-act.ts';
import type { Address } from '../app.ts';
import type { AtHand } from '../at-hand.ts';
import { steadyMilliseconds } from '../clock.ts';
import { patientPackDocumentOf } from '../documents/patient-pack.ts';
import { calendarFileOf } from '../letters/calendar.ts';
import { Refused } from '../problem.ts';
import { refuseOtherSites } from '../same-origin.ts';
import { countedAttempts } from '../sign-in/attempts.ts';
import { type After, afterIn, doseAskedAbout, takeInAfter } from './after.ts';
import { type OpenedPage, ownPageFactsOf, pageBehind } from './page-of.ts';
import { passes } from './pass.ts';
import { takeInTold, themselves, toldIn } from './told.ts';

const formBytes = 20_000;
/** Nobody mistakes their own birth date so often. */
const wrongDatesThatClose = 10;

const bornForm = z.object({
  day: z
    .string()
    .trim()
    .regex(/^\d{1,2}$/),
  month: z
    .string()
    .trim()
    .regex(/^\d{1,2}$/),
  year: z
    .string()
    .trim()
    .regex(/^\d{4}$/),
});

type Asked = FastifyRequest<{ Params: { secret: string } }>;

export async function ownPageListener(
  atHand: AtHand,
  address: Pick<Address, 'tls' | 'behindProxy' | 'onlyThisMachine' | 'log'>,
): Promise<FastifyInstance> {
  const isHttps = address.tls !== undefined || address.behindProxy;
  const app = fastify({
    ...(address.tls === undefined ? {} : { https: address.tls }),
    trustProxy: address.behindProxy ? (_caller: string, hop: number) => hop === 0 : false,
    bodyLimit: formBytes,
    // An address holds the secret: no line of a log may.
    logController: new LogController({ disableRequestLogging: true }),
    logger: { ...address.log, serializers: { req: () => ({}) } },
    forceCloseConnections: true,
  }) as unknown as FastifyInstance;
  app.removeAllContentTypeParsers();
  app.addContentTypeParser('application/x-www-form-urlencoded', { parseAs: 'string' }, (_, body, done) =>
    done(null, Object.fromEntries(new URLSearchParams(String(body)))),
  );
  refuseOtherSites(app, address);
  await app.register(helmet, {
    global: true,
    hsts: isHttps ? { maxAge: 31_536_000, includeSubDomains: false } : false,
    // With "no-referrer" a browser would send forms without saying that they come from here.
    referrerPolicy: { policy: 'same-origin' },
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'none'"],
        styleSrc: ["'self'"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
        baseUri: ["'none'"],
      },
    },
  });
  app.addHook('onSend', async (_, reply) => void reply.header('cache-control', 'no-store'));
  const closed = (reply: FastifyReply): FastifyReply => reply.code(404).type(html).send(closedPage('en-GB'));
  app.setNotFoundHandler((_, reply) => closed(reply));
  app.setErrorHandler((error, request, reply) => {
    request.log.error({ err: error, route: request.routeOptions.url }, 'defect');
    return closed(reply);
  });
  app.get('/own-page.css', (_, reply) => reply.type('text/css; charset=utf-8').send(ownPageStyle));
  app.get('/robots.txt', (_, reply) => reply.type('text/plain').send('User-agent: *\nDisallow: /\n'));
  serve(app, atHand, closed, isHttps);
  return app;
}

const html = 'text/html; charset=utf-8';

function serve(
  app: FastifyInstance,
  atHand: AtHand,
  closed: (reply: FastifyReply) => FastifyReply,
  isHttps: boolean,
): void {
  const pass = passes(steadyMilliseconds);
  const attempts = countedAttempts();
  const wrong = new Map<string, number>();
  const at = ({ params }: Asked): string => `/p/${params.secret}`;

  const page = (request: Asked, { person }: OpenedPage, nothingSaid = false): string =>
    ownPageHtml(ownPageFactsOf(person), { at: at(request), sheet: randomUUID(), nothingSaid });

  /** Runs what needs the birth date, or asks for it. */
  const opened =
    (answer: (open: OpenedPage, request: Asked, reply: FastifyReply) => unknown) =>
    async (request: Asked, reply: FastifyReply): Promise<unknown> => {
      const open = await pageBehind(request.params.secret, atHand);
      if (open === undefined) return closed(reply);
      if (!pass.holds(open.page.entry, request.headers.cookie)) {
        const { language, demo } = ownPageFactsOf(open.person);
        return reply.type(html).send(birthDatePage(language, demo));
      }
      return answer(open, request, reply);
    };

  app.get(
    '/p/:secret',
    opened((open, request, reply) => reply.type(html).send(page(request, open))),
  );

  app.post('/p/:secret', async (request: Asked, reply) => {
    const open = await pageBehind(request.params.secret, atHand);
    if (open === undefined) return closed(reply);
    const { entry } = open.page;
    const { language, demo } = ownPageFactsOf(open.person);
    const tried = attempts.begin(entry, request.ip);
    if ('waitSeconds' in tried)
      return reply
        .code(429)
        .type(html)
        .send(birthDatePage(language, demo, { is: 'wait', seconds: tried.waitSeconds }));
    if (isBorn(request.body, open.person.identity?.born)) {
      tried.succeeded();
      wrong.delete(entry);
      return reply.header('set-cookie', pass.give(entry, isHttps)).redirect(at(request), 303);
    }
    const count = (wrong.get(entry) ?? 0) + 1;
    wrong.set(entry, count);
    if (count < wrongDatesThatClose)
      return reply
        .code(403)
        .type(html)
        .send(birthDatePage(language, demo, { is: 'wrong' }));
    await closeForGood(atHand, open);
    return closed(reply);
  });

  app.post(
    '/p/:secret/told',
    opened(async (open, request, reply) => {
      const read = toldIn(request.body, open.page.entry);
      if (read === undefined || (Object.keys(read.told.answers).length === 0 && read.told.otherDay === undefined))
        return reply
          .code(422)
          .type(html)
          .send(page(request, open, true));
      const refused = await takeInTold(atHand, open, read);
      if (refused !== undefined) return closed(reply);
      return reply.type(html).send(thanksPage(ownPageFactsOf(open.person), read.told, at(request)));
    }),
  );

  const afterForm = (request: Asked, { person }: OpenedPage, dosedOn: Day, told?: After): string =>
    afterPage(ownPageFactsOf(person), {
      ...told,
      at: at(request),
      sheet: randomUUID(),
      dosedOn,
      today: person.today,
    });

  app.get(
    '/p/:secret/after',
    opened((open, request, reply) => {
      const dose = doseAskedAbout(open.person);
      return dose === undefined ? closed(reply) : reply.type(html).send(afterForm(request, open, dose.on));
    }),
  );

  app.post(
    '/p/:secret/after',
    opened(async (open, request, reply) => {
      const dose = doseAskedAbout(open.person);
      const told = dose === undefined ? undefined : afterIn(request.body, open.person, dose);
      if (dose === undefined || told === undefined) return closed(reply);
      const refused =
        told.asked === undefined ||
        (await takeInAfter(atHand, open.person, told.asked, told.said['sheet'] ?? '')) !== undefined;
      // What may not wait is said all the same: a form that is not whole is no reason to wait.
      return refused
        ? reply
            .code(422)
            .type(html)
            .send(afterForm(request, open, dose.on, told))
        : reply.type(html).send(afterThanksPage(ownPageFactsOf(open.person), told.flags, at(request)));
    }),
  );

  app.get(
    '/p/:secret/pack',
    opened(({ person }, _, reply) => {
      const language = person.unit?.unit.letters?.language ?? 'en-GB';
      const pack = patientPackDocumentOf(person, { size: 'normal', language });
      return pack instanceof Refused
        ? closed(reply)
        : reply
            .header('content-security-policy', "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'")
            .type(html)
            .send(pack);
    }),
  );

  app.get(
    '/p/:secret/visit.ics',
    opened(({ person }, _, reply) => {
      const file = calendarFileOf(person, atHand.clock.now());
      return file instanceof Refused
        ? closed(reply)
        : reply
            .header('content-disposition', 'attachment; filename="visit.ics"')
            .type('text/calendar; charset=utf-8')
            .send(file);
    }),
  );
}

function isBorn(form: unknown, born: string | undefined): boolean {
  const read = bornForm.safeParse(form);
  if (!read.success || born === undefined) return false;
  const { day, month, year } = read.data;
  const typed = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  return isPlainDate(typed) && typed === born;
}

/** In the notes, so that no restart opens it again and the unit sees it. */
async function closeForGood(atHand: AtHand, { person: { patient, today } }: OpenedPage): Promise<void> {
  const reason = `closed by itself: ${wrongDatesThatClose} wrong birth dates were typed`;
  const line = { kind: 'own-page', body: { is: 'closed', reason }, effectiveAt: plainDate(today) } as const;
  await doAct(atHand, { id: randomUUID(), act: { name: 'record', patient, line }, by: themselves });
}
