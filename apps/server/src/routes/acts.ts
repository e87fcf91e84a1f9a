/** Every change to the notes is an act, and every act comes in here. */
import type { ActBody } from '@twelvemonth/exchange';
import type { FastifyInstance } from 'fastify';
import { doAct } from '../acts/do-act.ts';
import { signerOf } from '../acts/signer.ts';
import type { AtHand } from '../at-hand.ts';
import { Refused } from '../problem.ts';
import { serveRoute } from '../serve-route.ts';

export function serveActs(app: FastifyInstance, atHand: AtHand): void {
  serveRoute(app, atHand, 'act', async ({ body, who, request }) => {
    const unseen = notSaidWhatWasSeen(body);
    if (unseen !== undefined) return unseen;
    const by = await signerOf(body, who, request, atHand);
    if (by instanceof Refused) return by;
    const { id, act, seen, deviceAt, device } = body;
    return doAct(atHand, {
      id,
      act,
      by,
      ...(seen === undefined ? {} : { seen }),
      ...(deviceAt === undefined ? {} : { deviceAt }),
      ...(device === undefined ? {} : { device }),
    });
  });
}

/** A decision at the chair rests on the notes as they were on the screen: it says up to which entry. */
function notSaidWhatWasSeen({ act, seen }: ActBody): Refused | undefined {
  if (act.name !== 'decide' || seen?.[`patient/${act.patient}`] !== undefined) return undefined;
  const says = 'Say up to which entry of these notes you have seen: the decision rests on them.';
  return new Refused(428, 'seen-not-said', says, { reasons: [{ name: 'seen-not-said', says, field: 'seen' }] });
}
