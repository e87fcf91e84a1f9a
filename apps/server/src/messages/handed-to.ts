/**
 * A message handed to its channel: written down before it leaves, then what the channel said. Where no answer came nothing more is
 * written: it stands among the work as one that may have gone out, and is never begun again.
 */
import { randomUUID } from 'node:crypto';
import { type Author, plainDate } from '@twelvemonth/clinical';
import type { ActAnswer } from '@twelvemonth/exchange';
import { doAct } from '../acts/do-act.ts';
import type { AtHand } from '../at-hand.ts';
import { Refused } from '../problem.ts';
import type { Person } from '../register/people.ts';
import type { Answered, Channel, Outgoing } from './channel.ts';

export async function handedTo(
  atHand: AtHand,
  person: Person,
  by: Author,
  begins: { readonly kind: 'message-begun' | 'page-sent'; readonly body: object },
  { send, ...message }: Omit<Outgoing, 'id'> & { readonly send: Channel },
): Promise<Answered | Refused> {
  const begun = await written(atHand, person, by, begins.kind, begins.body);
  if (begun instanceof Refused) return begun;
  const [entry] = begun.entries;
  if (entry === undefined) throw new Error('a message without an entry');
  const answer = await send({ ...message, id: entry.id });
  if (answer.outcome !== 'not known') {
    const ended = await written(atHand, person, by, 'message-ended', { ...answer, message: entry.id });
    if (ended instanceof Refused) return ended;
  }
  return answer;
}

const written = (
  atHand: AtHand,
  { patient, today }: Person,
  by: Author,
  kind: 'message-begun' | 'message-ended' | 'page-sent',
  body: object,
): Promise<ActAnswer | Refused> =>
  doAct(atHand, {
    id: randomUUID(),
    act: { name: 'record', patient, line: { kind, body, effectiveAt: plainDate(today) } },
    by,
  });
