/**
 * People who look alike and of whom nobody has said anything are noted as possible duplicates when the server starts: a
 * register that was brought in, or written by an older version, may hold one person twice (docs/readiness.md R8).
 */
import { randomUUID } from 'node:crypto';
import { type Author, newestAnswers } from '@twelvemonth/clinical';
import { doAct } from '../acts/do-act.ts';
import type { AtHand } from '../at-hand.ts';
import { type LookAlike, pairsOf } from '../views/look-alikes.ts';
import type { Person } from './people.ts';

/** Nobody has looked yet, so nobody's name stands under it. */
const program: Author = { staff: 'the program', role: 'clerk' };

/** How many pairs were noted. */
export async function noteLookAlikes(atHand: AtHand): Promise<number> {
  let noted = 0;
  for (const [person, other] of pairsOf(await atHand.people.all())) {
    if (isSaid(person, other)) continue;
    const act = { name: 'may be one', patient: person.patient, other: other.patient, reason: other.why } as const;
    const answer = await doAct(atHand, { id: randomUUID(), act, by: program });
    if ('outcome' in answer) noted += 1;
  }
  return noted;
}

const isSaid = ({ record }: Person, { patient }: LookAlike): boolean =>
  newestAnswers(record).some(({ body }) => body.other === patient);
