/** The stream of live updates. */
import type { FastifyInstance } from 'fastify';
import type { AtHand } from '../at-hand.ts';
import { Refused } from '../problem.ts';
import { serveRoute } from '../serve-route.ts';
import { headersOf } from '../sign-in/cookie-headers.ts';

/** So often a stream says that it is there: a screen hears when it does not. A session that has run out ends its stream then. */
const aliveMilliseconds = 25_000;

export function serveEvents(app: FastifyInstance, atHand: AtHand): void {
  serveRoute(app, atHand, 'events', async ({ who, request, reply }) => {
    const { sse } = reply;
    let check: NodeJS.Timeout | undefined;
    const end = (): void => {
      clearInterval(check);
      if (sse.isConnected) sse.close();
    };
    let sent: Promise<unknown> = Promise.resolve();
    // One after the other: a slow browser is waited for once. One that is gone takes no more, and is forgotten when its connection closes.
    const send = (event: string, data: unknown): void => {
      sent = sent.then(async () => sse.send({ event, data })).catch(() => undefined);
    };
    const forget = atHand.events.add({
      session: who.session,
      staff: who.member.staff,
      send,
      end,
    });
    if (forget === undefined)
      return new Refused(429, 'too-many-streams', 'Too many pages of this session are open.', {
        headers: { 'retry-after': '60' },
      });
    sse.keepAlive();
    sse.onClose(() => {
      clearInterval(check);
      forget();
    });
    check = setInterval(() => {
      void atHand.accounts
        .session(headersOf(request))
        .then((still) => (still === undefined ? end() : send('alive', {})), end);
    }, aliveMilliseconds);
    check.unref();
    await sse.send({ event: 'hello', data: { commit: (await atHand.store.tail()).commit } });
    return reply;
  });
}
