/** The stream of live updates. */
import type { FastifyInstance } from 'fastify';
import type { AtHand } from '../at-hand.ts';
import { Refused } from '../problem.ts';
import { serveRoute } from '../serve-route.ts';
import { headersOf } from '../sign-in/cookie-headers.ts';

/** A session that has run out ends its stream within this long. */
const sessionCheckMilliseconds = 60_000;

export function serveEvents(app: FastifyInstance, atHand: AtHand): void {
  serveRoute(app, atHand, 'events', async ({ who, request, reply }) => {
    const { sse } = reply;
    let check: NodeJS.Timeout | undefined;
    const end = (): void => {
      clearInterval(check);
      if (sse.isConnected) sse.close();
    };
    const forget = atHand.events.add({
      session: who.session,
      staff: who.member.staff,
      // A browser that is gone takes no more: its stream is forgotten when the connection closes.
      send: (event, data) => void sse.send({ event, data }).catch(() => undefined),
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
      void atHand.accounts.session(headersOf(request)).then((still) => still === undefined && end(), end);
    }, sessionCheckMilliseconds);
    check.unref();
    await sse.send({ event: 'hello', data: { commit: (await atHand.store.tail()).commit } });
    return reply;
  });
}
