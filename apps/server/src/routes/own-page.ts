/** A page handed over, by the person who pressed: its address is in the answer and nowhere else. */
import { randomUUID } from 'node:crypto';
import { type ActNamed, day, plainDate } from '@twelvemonth/clinical';
import { pageMessageOf } from '@twelvemonth/letters';
import type { FastifyInstance } from 'fastify';
import { doAct } from '../acts/do-act.ts';
import { signerOf } from '../acts/signer.ts';
import type { AtHand } from '../at-hand.ts';
import { sendAddress } from '../own-page/send-address.ts';
import { hashOfSecret, newSecret } from '../own-page/secret.ts';
import { Refused, notHere } from '../problem.ts';
import { serveRoute } from '../serve-route.ts';

export function serveOwnPage(app: FastifyInstance, atHand: AtHand): void {
  serveRoute(app, atHand, 'handOverPage', async ({ body, who, request }) => {
    const base = atHand.ownPageAddress();
    if (base === undefined)
      return new Refused(409, 'not-served', "People's own pages are not served here: the questions can be printed.");
    const person = await atHand.people.of(body.patient);
    if (person === undefined) return notHere('person');
    if (person.unit === undefined)
      return new Refused(409, 'no-unit', 'They belong to no unit yet: nobody would read it.');
    const secret = newSecret();
    const kept = { is: 'handed over', secretHash: hashOfSecret(secret), expiresOn: body.expiresOn };
    const act: ActNamed<'record'> = {
      name: 'record',
      patient: body.patient,
      line: { kind: 'own-page', body: kept, effectiveAt: plainDate(person.today) },
    };
    const { role } = body;
    const by = await signerOf({ act, ...(role === undefined ? {} : { role }) }, who, request, atHand);
    if (by instanceof Refused) return by;
    const written = await doAct(atHand, { id: randomUUID(), act, by });
    if (written instanceof Refused) return written;
    const address = `${base}/p/${secret}`;
    const { unit } = person;
    if (unit === undefined) throw new Error('a page of somebody without a unit');
    const language = unit.unit.letters?.language ?? 'en-GB';
    const words = pageMessageOf({ language, unit: unit.unit, address, until: day(body.expiresOn) });
    const handed = { address, until: body.expiresOn, ...words };
    const now = body.send === true ? await atHand.people.of(body.patient) : undefined;
    const page = written.entries[0]?.id;
    if (now === undefined || page === undefined) return handed;
    const sent = await sendAddress(atHand, now, by, { page, ...words });
    return sent instanceof Refused ? sent : { ...handed, ...(sent === undefined ? {} : { sent }) };
  });
}
