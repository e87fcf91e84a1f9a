/**
 * Text messages through any gateway that speaks this contract, or a small one of the unit's own in front of another:
 *
 *   POST url   authorization: Bearer KEY   idempotency-key: ID   content-type: application/json
 *   { "id": ID, "to": "07700 900123", "text": "..." }
 *
 * 2xx: taken. 4xx: not taken, with an RFC 9457 problem whose `detail` or `title` says why. Anything else, and no answer within
 * twenty seconds: not known. Asked twice with one ID it must send once.
 *
 * What becomes of it later the gateway, or whatever receives its word, moves as a file ID.json into the folder of --returned:
 *
 *   { "id": ID, "outcome": "not delivered", "detail": "number not in use" }      or "delivered"
 * or calls with it where --returned-port is given: gateway-word.ts.
 */
import { z } from 'zod';
import { type Channel, answerMilliseconds, sayTrouble } from './channel.ts';

const problem = z.object({ title: z.string().optional(), detail: z.string().optional() });

export const textMessageChannel =
  (url: string, key: string): Channel =>
  async ({ id, to, text }) => {
    try {
      const answer = await fetch(url, {
        method: 'POST',
        headers: { authorization: `Bearer ${key}`, 'idempotency-key': id, 'content-type': 'application/json' },
        body: JSON.stringify({ id, to, text }),
        redirect: 'error',
        signal: AbortSignal.timeout(answerMilliseconds),
      });
      if (answer.ok) return { outcome: 'accepted' };
      const because = await reasonIn(answer);
      return { outcome: answer.status < 500 ? 'not accepted' : 'not known', because };
    } catch (error) {
      return { outcome: 'not known', because: sayTrouble(error) };
    }
  };

async function reasonIn(answer: Response): Promise<string> {
  const read = problem.safeParse(await answer.json().catch(() => undefined)).data;
  return read?.detail ?? read?.title ?? `the gateway answered ${answer.status}`;
}
