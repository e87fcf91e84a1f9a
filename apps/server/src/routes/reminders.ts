/** One reminder sent, by the person who pressed. */
import { plainDate } from '@twelvemonth/clinical';
import type { FastifyInstance } from 'fastify';
import { signerOf } from '../acts/signer.ts';
import type { AtHand } from '../at-hand.ts';
import { sendReminder } from '../messages/reminders.ts';
import { Refused, notHere } from '../problem.ts';
import { serveRoute } from '../serve-route.ts';

export function serveReminders(app: FastifyInstance, atHand: AtHand): void {
  serveRoute(app, atHand, 'sendReminder', async ({ body, who, request }) => {
    const person = await atHand.people.of(body.patient);
    if (person === undefined) return notHere('person');
    const line = { kind: 'message-begun', body: {}, effectiveAt: plainDate(person.today) } as const;
    const act = { name: 'record', patient: body.patient, line } as const;
    const { role } = body;
    const by = await signerOf({ act, ...(role === undefined ? {} : { role }) }, who, request, atHand);
    return by instanceof Refused ? by : sendReminder(atHand, person, body, by);
  });
}
