/** A version of the protocol drafted from a starter or from another version: compared with everyone, then written whole. */
import {
  type Protocol,
  type ProtocolSheet,
  beginningFrom,
  draftBy,
  protocolFrom,
  protocolVersions,
  readDraft,
  starterProtocols,
} from '@twelvemonth/clinical';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { randomUUID } from 'node:crypto';
import { doAct } from '../acts/do-act.ts';
import type { AtHand } from '../at-hand.ts';
import { Refused, notHere } from '../problem.ts';
import type { UnitNow } from '../register/units.ts';
import { serveRoute, usualQuery } from '../serve-route.ts';
import { flipsOf } from '../views/flips.ts';
import { replayOf, whatIfOf } from '../views/past-decisions.ts';
import { authorFor } from './imports.ts';

export function serveProtocolDrafts(app: FastifyInstance, atHand: AtHand): void {
  const unitAsked = async (request: FastifyRequest): Promise<UnitNow | Refused> => {
    const asked = usualQuery.parse(request.query).unit;
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
    const protocol = protocolAsked(unit, body);
    return protocol instanceof Refused ? protocol : flipsOf(atHand, unit, protocol, body.after ?? 0);
  });

  serveRoute(app, atHand, 'whatIf', async ({ body, request }) => {
    const unit = await unitAsked(request);
    if (unit instanceof Refused) return unit;
    const protocol = protocolAsked(unit, body);
    return protocol instanceof Refused ? protocol : whatIfOf(atHand, unit, protocol, body.months, body.after ?? 0);
  });

  serveRoute(app, atHand, 'replay', async ({ body }) => replayOf(atHand, body.after ?? 0));
}

const sheetNamed = (unit: UnitNow, version: string): ProtocolSheet | undefined =>
  protocolVersions(unit.protocolRecord).findLast((one) => one.version === version)?.sheet ??
  starterProtocols.find((one) => one.version === version);

/** A version in the notes, a starter, or a sheet that was sent: whole, or what is wrong with it. */
function protocolAsked(
  unit: UnitNow,
  { version, sheet }: { readonly version?: string | undefined; readonly sheet?: unknown },
): Protocol | Refused {
  const [anyStarter] = starterProtocols;
  if (anyStarter === undefined) return notHere('starter');
  const named = version === undefined ? undefined : sheetNamed(unit, version);
  if (version !== undefined && named === undefined) return notHere('version of the protocol');
  const read = named === undefined ? readDraft(anyStarter, sheet) : { sheet: named };
  if ('troubles' in read) return notWritten(read.troubles);
  const made = protocolFrom(read.sheet);
  if ('protocol' in made) return made.protocol;
  return new Refused(422, 'empty-numbers', 'This version has empty numbers: fill them in before comparing.', {
    reasons: made.empty.map(({ key }) => ({
      name: 'empty-numbers',
      says: `${key} is empty.`,
      field: `numbers.${key}`,
    })),
  });
}

const notWritten = (troubles: readonly { readonly path: string; readonly says: string }[]): Refused =>
  new Refused(422, 'field-wrong', 'Something in this version cannot be read, or does not say where it comes from.', {
    reasons: troubles.map(({ path, says }) => ({ name: 'field-wrong', says, field: path })),
  });
