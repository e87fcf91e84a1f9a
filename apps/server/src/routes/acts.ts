/** Every change to the notes is an act, and every act comes in here. */
import type { FastifyInstance } from 'fastify';
import { doAct } from '../acts/do-act.ts';
import { signerOf } from '../acts/signer.ts';
import type { AtHand } from '../at-hand.ts';
import { Refused } from '../problem.ts';
import { serveRoute } from '../serve-route.ts';

export function serveActs(app: FastifyInstance, atHand: AtHand): void {
  serveRoute(app, atHand, 'act', async ({ body, who, request }) => {
    const by = await signerOf(body, who.member, request.ip, atHand);
    if (by instanceof Refused) return by;
    return doAct(atHand, { id: body.id, act: body.act, by, ...(body.seen === undefined ? {} : { seen: body.seen }) });
  });
}
