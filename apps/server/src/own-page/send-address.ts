/** The address of a page just made, sent by the way its person agreed to. It is in the message and nowhere in the notes. */
import { type Author, wayToRemind } from '@twelvemonth/clinical';
import type { HandedOverPage } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import { handedTo } from '../messages/handed-to.ts';
import { whyNotNow } from '../messages/reminders.ts';
import { Refused } from '../problem.ts';
import type { Person } from '../register/people.ts';

/** Why the address could not be sent now; undefined: it can. */
export function addressNotSent(atHand: AtHand, { record, unit }: Person): string | undefined {
  return unit === undefined ? 'they belong to no unit yet' : whyNotNow(atHand, unit, wayToRemind(record));
}

export async function sendAddress(
  atHand: AtHand,
  person: Person,
  by: Author,
  { page, title, text }: { readonly page: string; readonly title: string; readonly text: string },
): Promise<HandedOverPage['sent'] | Refused> {
  const way = wayToRemind(person.record);
  if ('because' in way) return undefined;
  const { channel, to } = way;
  const because = addressNotSent(atHand, person);
  const send = atHand.channels[channel];
  if (because !== undefined || send === undefined)
    return { channel, to, outcome: 'not accepted', because: because ?? 'no channel' };
  const sent = await handedTo(
    atHand,
    person,
    by,
    { kind: 'page-sent', body: { page, channel, to } },
    { send, to, title, text },
  );
  return sent instanceof Refused ? sent : { channel, to, ...sent };
}
