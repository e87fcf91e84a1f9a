/**
 * Sends what waits, one after the other and each under the id it was written with: sent again it is recorded once. What the
 * server does not take stays, with its reasons, and holds what was written after it for the same person.
 */
import type { MeView } from '@twelvemonth/exchange';
import { reckonedServerTime, serverAheadMilliseconds } from '../server/connection.ts';
import { noteOwnEntries, withOwnEntries } from '../server/own-entries.ts';
import { fetchAgain, me, queries, signedOut } from '../server/queries.ts';
import { post, read } from '../server/request.ts';
import { NotReached, ServerProblem, isOtherContent, isReadOnly, isSignedOut } from '../server/server-problem.ts';
import type { Signature } from '../server/use-act.ts';
import { thisDevice } from './this-device.ts';
import { actInWords } from './act-in-words.ts';
import { type WaitingAct, letWait, readWaiting, waitNoMore, waitingNow } from './waiting.ts';

/** A clock that was moved by more than this while the network was away makes the times written by it doubtful. */
const clockMovedMilliseconds = 60_000;

const sends = 'twelvemonth-sends';
/** One tab at a time; another that wants to send meanwhile has its turn afterwards and finds nothing. */
let asked = 0;
const alone = async (work: () => Promise<void>): Promise<void> => {
  asked += 1;
  try {
    await navigator.locks.request(sends, work);
  } catch (error) {
    if (isSignedOut(error)) signedOut();
    else if (!(error instanceof NotReached) && !isReadOnly(error)) throw error;
  } finally {
    asked -= 1;
  }
};
/** Once more, unless it is being sent: the last time may have failed for a reason that is over. */
export const sendAgain = (): void => {
  if (asked === 0) void sendWaiting();
};

export const sendWaiting = async (): Promise<void> => alone(sendAll);

async function sendAll(): Promise<void> {
  const all = await readWaiting();
  const staff = queries.getQueryData<MeView | null>(me.queryKey)?.staff;
  if (all.length === 0 || staff === undefined) return;
  await inTheirOrder(all, async (act) => act.needs === undefined && act.staff === staff && isSent(act));
}

/** One after the other; what was written after one that was not sent stays, for the same person. */
async function inTheirOrder(all: readonly WaitingAct[], send: (act: WaitingAct) => Promise<boolean>): Promise<void> {
  // What time it is there is asked anew: the clock of this device may have been put right meanwhile.
  await read('status');
  const held = new Set<string | undefined>();
  for (const { id } of all) {
    const act = waitingNow().find((one) => one.id === id);
    if (act === undefined || (act.patient !== undefined && held.has(act.patient))) continue;
    if (!(await send(act))) held.add(act.patient);
  }
  await fetchAgain();
}

class SignatureRefused extends Error {}

/**
 * What one person says that they wrote, each sent with their signature, which is kept nowhere. Where it proves nothing the first
 * of them ends it, and nothing else is tried: five wrong ones and a PIN is of no use. Why it proves nothing, or undefined.
 */
export async function sendSigned(theirs: ReadonlySet<string>, signedBy: Signature): Promise<string | undefined> {
  const staff = queries.getQueryData<MeView | null>(me.queryKey)?.staff;
  let refused: string | undefined;
  await alone(async () => {
    try {
      await inTheirOrder(await readWaiting(), async ({ needs, ...act }) => {
        if (theirs.has(act.id)) return isSent(act, signedBy);
        return needs === undefined && act.staff === staff && isSent(act);
      });
    } catch (error) {
      if (!(error instanceof SignatureRefused)) throw error;
      refused = error.message;
    }
  });
  return refused;
}

const isAboutSignature = ({ type, refusals = [] }: ServerProblem['problem']): boolean =>
  type.endsWith('/too-many-tries') || (refusals.length > 0 && refusals.every(({ field }) => field === 'signedBy'));

/** False: it needs a person. Throws where nothing can be sent at all. */
async function isSent(act: WaitingAct, signedBy?: Signature): Promise<boolean> {
  const moved = Math.abs(Date.parse(act.wroteAt) - Date.parse(act.deviceAt) - serverAheadMilliseconds());
  if (moved > clockMovedMilliseconds && act.confirmedTime !== true) {
    await letWait({ ...act, needs: { says: clockMoved, refusals: [], missed: [] } });
    return false;
  }
  try {
    const { id, act: what, role, seen, deviceAt } = act;
    const answer = await post('act', {
      id,
      act: what,
      deviceAt,
      device: { ...thisDevice(), ...(act.takesOver === undefined ? {} : { takesOver: act.takesOver }) },
      ...(role === undefined || signedBy !== undefined ? {} : { role }),
      ...(seen === undefined ? {} : { seen }),
      ...(signedBy === undefined ? {} : { signedBy }),
    });
    const why = whyAllTheSame(act);
    // Kept before the act is let go of: its reason is never lost between the two.
    if (why !== undefined) await letWait(why);
    await waitNoMore(id);
    noteOwnEntries(answer.entries);
    await seenByThoseAfter(act);
    return why === undefined ? true : await isSent(why);
  } catch (error) {
    if (!(error instanceof ServerProblem) || isSignedOut(error) || isReadOnly(error)) throw error;
    const { problem, missed, wrote } = error;
    // The first try got through without its answer, before the time was written beside it: it is in the notes.
    if (isOtherContent(error)) {
      await waitNoMore(act.id);
      noteOwnEntries(wrote);
      await seenByThoseAfter(act);
      return true;
    }
    if (signedBy !== undefined && isAboutSignature(problem))
      throw new SignatureRefused(problem.refusals?.[0]?.says ?? problem.detail ?? problem.title);
    const says = problem.detail ?? problem.title;
    await letWait({ ...act, needs: { says, refusals: problem.refusals ?? [], missed } });
    return false;
  }
}

/** The reason as an act of its own, sent right after the one it is about. */
function whyAllTheSame({ allTheSame, act, wroteAt, ...rest }: WaitingAct): WaitingAct | undefined {
  if (allTheSame === undefined) return undefined;
  const { patient, name, staff, staffName, role } = rest;
  if (patient === undefined) return undefined;
  const now = new Date(reckonedServerTime()).toISOString();
  return {
    id: crypto.randomUUID(),
    patient,
    name,
    staff,
    staffName,
    ...(role === undefined ? {} : { role }),
    act: {
      name: 'record',
      patient,
      line: {
        kind: 'sent-all-the-same',
        body: { what: actInWords(act), wroteAt, ...allTheSame },
        effectiveAt: now,
      },
    },
    wroteAt: now,
    deviceAt: now,
    confirmedTime: true,
  };
}

const clockMoved =
  'The clock of this device was moved while the network was away: the time below may be wrong. Look at it before it is sent.';

/** What came after was written knowing this. Written down, for when the tab is closed in between. */
async function seenByThoseAfter(sent: WaitingAct): Promise<void> {
  for (const act of waitingNow())
    if (act.patient === sent.patient && act.seen !== undefined)
      await letWait({ ...act, seen: withOwnEntries(act.seen) });
}
