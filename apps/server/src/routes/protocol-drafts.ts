/** A version of the protocol drafted from a starter or from another version: compared with everyone, then written whole. */
import {
  type ProtocolSheet,
  beginningFrom,
  draftBy,
  protocolVersions,
  readDraft,
  starterProtocols,
} from '@twelvemonth/clinical';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { randomUUID } from 'node:crypto';
import { z } from 'zod';
import { doAct } from '../acts/do-act.ts';
import type { AtHand } from '../at-hand.ts';
import { Refused, notHere } from '../problem.ts';
import type { UnitNow } from '../register/units.ts';
import { serveRoute } from '../serve-route.ts';
import { flipsOf } from '../views/flips.ts';
import { authorFor } from './imports.ts';

const query = z.object({ unit: z.string().optional() });

export function serveProtocolDrafts(app: FastifyInstance, atHand: AtHand): void {
  const unitAsked = async (request: FastifyRequest): Promise<UnitNow | Refused> => {
    const asked = query.parse(request.query).unit;
    const unit = asked === undefined ? (await atHand.units.all())[0] : await atHand.units.named(asked);
    return unit ?? notHere('unit');
  };

  serveRoute(app, atHand, 'protocolDraft', async ({ body, who, request }) => {
    const unit = await unitAsked(request);
    if (unit instanceof Refused) return unit;
    const found = sheetNamed(unit, body.from);
    if (found === undefined) return notHere('version to begin from');
    const from = beginningFrom(found);
    const read = readDraft(from, body.sheet);
    const made = 'troubles' in read ? read : draftBy(who.member.name, from, read.sheet);
    if ('troubles' in made) return notWritten(made.troubles);
    const by = authorFor(who.member, 'write protocol');
    if (by instanceof Refused) return by;
    return doAct(atHand, {
      id: randomUUID(),
      act: { name: 'write protocol', unit: unit.unit.id, sheet: made.sheet, contentHash: 'made by the server' },
      by,
    });
  });

  serveRoute(app, atHand, 'flips', async ({ body, request }) => {
    const unit = await unitAsked(request);
    if (unit instanceof Refused) return unit;
    if (body.version !== undefined) {
      const sheet = sheetNamed(unit, body.version);
      return sheet === undefined ? notHere('version of the protocol') : flipsOf(atHand, unit, sheet, body.after ?? 0);
    }
    const [anyStarter] = starterProtocols;
    const read = anyStarter === undefined ? notHere('starter') : readDraft(anyStarter, body.sheet);
    if (read instanceof Refused) return read;
    return 'troubles' in read ? notWritten(read.troubles) : flipsOf(atHand, unit, read.sheet, body.after ?? 0);
  });
}

const sheetNamed = (unit: UnitNow, version: string): ProtocolSheet | undefined =>
  protocolVersions(unit.protocolRecord).findLast((one) => one.version === version)?.sheet ??
  starterProtocols.find((one) => one.version === version);

const notWritten = (troubles: readonly { readonly path: string; readonly says: string }[]): Refused =>
  new Refused(422, 'field-wrong', 'Something in this version cannot be read, or does not say where it comes from.', {
    reasons: troubles.map(({ path, says }) => ({ name: 'field-wrong', says, field: path })),
  });
