/** Who flips: people whose verdict would differ if a version of the protocol were in force. */
import { setImmediate as nextTurn } from 'node:timers/promises';
import {
  type DecisionContext,
  plainDate,
  protocolFrom,
  protocolVersions,
  readiness,
  verdictOn,
} from '@twelvemonth/clinical';
import type { flipsAnswer } from '@twelvemonth/exchange';
import type { z } from 'zod';
import type { AtHand } from '../at-hand.ts';
import { Refused, notHere } from '../problem.ts';
import type { UnitNow } from '../register/units.ts';
import { fullName } from './person-words.ts';

const ended = new Set(['died', 'closed', 'transferred out', 'returned to referrer']);

export async function flipsOf(
  atHand: AtHand,
  unit: UnitNow,
  version: string,
): Promise<z.infer<typeof flipsAnswer> | Refused> {
  const found = protocolVersions(unit.protocolRecord).findLast((one) => one.version === version);
  if (found?.sheet === undefined) return notHere('version of the protocol');
  const made = protocolFrom(found.sheet);
  if ('empty' in made) {
    const reasons = made.empty.map(({ key }) => ({
      name: 'empty-numbers',
      says: `${key} is empty.`,
      field: `numbers.${key}`,
    }));
    return new Refused(422, 'empty-numbers', 'This version has empty numbers: fill them in before comparing.', {
      reasons,
    });
  }
  const context: DecisionContext = { protocols: [{ from: 0, protocol: made.protocol }], calendar: unit.unit.calendar };
  const answer: z.infer<typeof flipsAnswer> = { compared: 0, flips: [] };
  for (const person of await atHand.people.all()) {
    if (person.unitId !== unit.unit.id || ended.has(person.standing.standing)) continue;
    const on = person.place?.on ?? person.today;
    const now = person.readiness();
    const before = now === undefined ? undefined : verdictOn(now, on);
    const after = verdictOn(
      readiness(person.record, context, person.today, person.place === undefined ? {} : { place: on }),
      on,
    );
    answer.compared += 1;
    if (before?.verdict !== after.verdict) {
      answer.flips.push({
        patient: person.patient,
        name: fullName(person),
        on: plainDate(on),
        from: before?.headline ?? 'cannot say: no protocol in force',
        to: after.headline,
      });
    }
    await nextTurn();
  }
  return answer;
}
