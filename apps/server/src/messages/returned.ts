/**
 * What came back about messages: reports of mail servers (RFC 3464) and word from a text gateway, one to a file, in a folder the
 * unit's own mail server or gateway moves them into. What speaks of a message of ours is written in the notes and waits for a
 * person; the file goes to "taken". What cannot be read or written down, or speaks of nothing that went out from here, goes to
 * "not-taken" and is counted on the screen: nothing is dropped.
 */
import { mkdirSync, readdirSync, readFileSync, renameSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { type Author, type Fact, factsOf, messageEndOf, plainDate } from '@twelvemonth/clinical';
import { readDeliveryStatus } from '@twelvemonth/exchange';
import { z } from 'zod';
import { randomUUID } from 'node:crypto';
import { doAct } from '../acts/do-act.ts';
import type { AtHand } from '../at-hand.ts';
import { Refused } from '../problem.ts';
import type { Person } from '../register/people.ts';
import { messageDomain } from './e-mail.ts';

/** A report carries at most headers, or the few words of a reminder. */
const mostBytes = 1_000_000;
const notTaken = 'not-taken';

/** Nobody of the unit wrote it. */
const whatCameBack: Author = { staff: 'a returned message', role: 'clerk' };

type Returned = {
  /** Entries it names. */
  readonly messages: readonly string[];
  /** Addresses that were not reached: the newest message to each, where no entry is named. */
  readonly addresses: readonly string[];
  readonly because: string;
};

/** Takes in every file that lies there; returns how many entries were written. */
export async function takeInReturned(atHand: AtHand, folder: string): Promise<number> {
  let written = 0;
  for (const sub of ['taken', notTaken]) mkdirSync(join(folder, sub), { recursive: true, mode: 0o700 });
  for (const name of readdirSync(folder).toSorted()) {
    const path = join(folder, name);
    const about = statSync(path);
    if (!about.isFile() || name.startsWith('.')) continue;
    const returned = about.size > mostBytes ? undefined : returnedIn(name, readFileSync(path, 'utf8'));
    const found = returned === undefined ? undefined : await takeIn(atHand, returned);
    written += found?.written ?? 0;
    if (found?.goesTo !== 'the next turn')
      renameSync(path, join(folder, found?.goesTo === 'taken' ? 'taken' : notTaken, name));
  }
  return written;
}

/** How many lie there that nobody has looked at. */
export function returnedNotTaken(folder: string | undefined): number {
  if (folder === undefined) return 0;
  try {
    return readdirSync(join(folder, notTaken)).length;
  } catch {
    return 0;
  }
}

/** What a text gateway says later. */
export const textStatus = z.object({
  id: z.string().min(1),
  outcome: z.enum(['delivered', 'not delivered']),
  detail: z.string().optional(),
});

/** Every one that was not reached; none: it arrived, or it is tried again. Undefined: it cannot be read. */
function returnedIn(name: string, text: string): readonly Returned[] | undefined {
  if (name.endsWith('.json')) {
    const read = textStatus.safeParse(jsonIn(text)).data;
    if (read === undefined) return undefined;
    const because = read.detail ?? 'the gateway gave no reason';
    return read.outcome === 'delivered' ? [] : [{ messages: [read.id], addresses: [], because }];
  }
  const read = readDeliveryStatus(text);
  return read?.deliveries
    .filter(({ action }) => action === 'failed')
    .map(({ recipients, because }) => ({
      messages: read.messages.map((id) => id.replace(new RegExp(`@${messageDomain}$`), '')),
      addresses: recipients,
      because,
    }));
}

function jsonIn(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

async function takeIn(
  atHand: AtHand,
  returned: readonly Returned[],
): Promise<{ readonly written: number; readonly goesTo: 'taken' | typeof notTaken | 'the next turn' }> {
  let written = 0;
  let ours = 0;
  let refused = 0;
  for (const one of returned) {
    for (const { person, message } of await messagesMeant(atHand, one)) {
      ours += 1;
      // Refused at once it is known already; taken in twice, as after a stop between writing and moving the file, it is written once.
      const outcome = messageEndOf(person.record, message)?.body.outcome;
      if (outcome === 'came back' || outcome === 'not accepted') continue;
      const body = { outcome: 'came back', message: message.first, because: one.because.slice(0, 500) };
      const line = { kind: 'message-ended', body, effectiveAt: plainDate(person.today) } as const;
      const done = await doAct(atHand, {
        id: randomUUID(),
        act: { name: 'record', patient: person.patient, line },
        by: whatCameBack,
      });
      if (!(done instanceof Refused)) written += 1;
      else if (done.status === 503) return { written, goesTo: 'the next turn' };
      else refused += 1;
    }
  }
  return { written, goesTo: refused === 0 && (ours > 0 || returned.length === 0) ? 'taken' : notTaken };
}

type Meant = { readonly person: Person; readonly message: Fact<'message-begun' | 'page-sent'> };

async function messagesMeant(atHand: AtHand, { messages, addresses }: Returned): Promise<readonly Meant[]> {
  const everyone = await atHand.people.all();
  const all = everyone.map((person) => ({
    person,
    sent: [...factsOf(person.record, 'message-begun'), ...factsOf(person.record, 'page-sent')].toSorted(
      (a, b) => a.seq - b.seq,
    ),
  }));
  const named = all.flatMap(({ person, sent }) =>
    sent.filter(({ first }) => messages.includes(first)).map((message) => ({ person, message })),
  );
  if (named.length > 0) return named;
  return all.flatMap(({ person, sent }) => {
    const message = sent.findLast(({ body }) => body.channel === 'e-mail' && addresses.includes(body.to.toLowerCase()));
    return message === undefined ? [] : [{ person, message }];
  });
}
