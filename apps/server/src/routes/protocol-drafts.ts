/** A version of the protocol begun from a starter or from another version, with numbers filled in. It is written whole. */
import {
  type NumberKey,
  type ProtocolSheet,
  beginningFrom,
  numberKeys,
  protocolSchema,
  protocolVersions,
  starterProtocols,
} from '@twelvemonth/clinical';
import type { FastifyInstance } from 'fastify';
import { randomUUID } from 'node:crypto';
import { z } from 'zod';
import { doAct } from '../acts/do-act.ts';
import type { AtHand } from '../at-hand.ts';
import { Refused, notHere } from '../problem.ts';
import { serveRoute } from '../serve-route.ts';
import { authorFor } from './imports.ts';

const query = z.object({ unit: z.string().optional() });

export function serveProtocolDrafts(app: FastifyInstance, atHand: AtHand): void {
  serveRoute(app, atHand, 'protocolDraft', async ({ body, who, request }) => {
    const asked = query.parse(request.query).unit;
    const unit = asked === undefined ? (await atHand.units.all())[0] : await atHand.units.named(asked);
    if (unit === undefined) return notHere('unit');
    const from =
      starterProtocols.find(({ version }) => version === body.from) ??
      protocolVersions(unit.protocolRecord).findLast(({ version }) => version === body.from)?.sheet;
    if (from === undefined) return notHere('version to begin from');
    const sheet = sheetWith(beginningFrom(from), body, who.member.name);
    if (sheet instanceof Refused) return sheet;
    const by = authorFor(who.member, 'write protocol');
    if (by instanceof Refused) return by;
    return doAct(atHand, {
      id: randomUUID(),
      act: { name: 'write protocol', unit: unit.unit.id, sheet, contentHash: 'made by the server' },
      by,
    });
  });
}

/** A number that someone fills in is their own decision, with their name as its source. */
function sheetWith(
  from: ProtocolSheet,
  {
    version,
    title,
    reviewBy,
    numbers,
  }: { version: string; title: string; reviewBy: string; numbers: Readonly<Record<string, string>> },
  name: string,
): ProtocolSheet | Refused {
  const unknown = Object.keys(numbers).filter((key) => !Object.hasOwn(numberKeys, key));
  const filled: Partial<Record<NumberKey, unknown>> = {};
  for (const [key, value] of Object.entries(numbers) as [NumberKey, string][]) {
    if (unknown.includes(key) || from.numbers[key].value === value) continue;
    filled[key] = { ...from.numbers[key], value, source: `decided by ${name}`, status: 'local decision' };
  }
  const read = protocolSchema.safeParse({
    ...from,
    version,
    title,
    reviewBy,
    teachingOnly: from.teachingOnly,
    numbers: { ...from.numbers, ...filled },
  });
  const reasons = [
    ...unknown.map((key) => ({
      name: 'field-wrong',
      says: 'there is no such number in a protocol',
      field: `numbers.${key}`,
    })),
    ...(read.success
      ? []
      : read.error.issues.map(({ message, path }) => ({
          name: 'field-wrong',
          says: message,
          field: path.filter((part) => part !== 'value').join('.'),
        }))),
  ];
  return read.success && reasons.length === 0
    ? read.data
    : new Refused(422, 'field-wrong', 'Some numbers cannot be read.', { reasons });
}
