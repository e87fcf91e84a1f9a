/**
 * Sends what waits, one after the other and each under the id it was written with: sent again it is recorded once. What the
 * server does not take stays, with its reasons, and holds what was written after it for the same person.
 */
import type { MeView } from '@twelvemonth/exchange';
import { reckonedServerTime, serverAheadMilliseconds } from '../server/connection.ts';
import { noteOwnEntries, withOwnEntries } from '../server/own-entries.ts';
import { fetchAgain, me, queries, signedOut } from '../server/queries.ts';
import { post, read } from '../server/request.ts';
import { NotReached, ServerProblem, isSignedOut } from '../server/server-problem.ts';
import type { Signature } from '../server/use-act.ts';
import { thisDevice } from './this-device.ts';
import { actInWords } from './act-in-words.ts';
import { type WaitingAct, letWait, readWaiting, waitNoMore, waitingNow } from './waiting.ts';

/** A clock that was moved by more than this while the network was away makes the times written by it doubtful. */
const clockMovedMilliseconds = 60_000;

const sends = 'twelvemonth-sends';
/** One tab at a time; another that wants to send meanwhile has its turn afterwards and finds nothing. */
export const sendWaiting = async (): Promise<void> => navigator.locks.request(sends, sendAll);

async function sendAll(): Promise<void> {
  const all = await readWaiting();
  const staff = queries.getQueryData<MeView | null>(me.queryKey)?.staff;
  if (all.length === 0 || staff === undefined) return;
  try {
    // What time it is there is asked anew: the clock of this device may have been put right meanwhile.
    await read('status');
    const held = new Set<string | undefined>();
    for (const { id } of all) {
      const act = waitingNow().find((one) => one.id === id);
      if (act === undefined || (act.patient !== undefined && held.has(act.patient))) continue;
      if (act.needs !== undefined || act.staff !== staff || !(await isSent(act))) held.add(act.patient);
    }
    await fetchAgain();
  } catch (error) {
    if (isSignedOut(error)) signedOut();
    else if (!(error instanceof NotReached)) throw error;
  }
}

/** One that a shared screen asks to have signed: sent with the signature, which is kept nowhere. The others follow. */
export async function sendSigned(act: WaitingAct, signedBy: Signature): Promise<void> {
  const { needs: _, ...settled } = act;
  try {
    if (await navigator.locks.request(sends, () => isSent(settled, signedBy))) await sendWaiting();
  } catch (error) {
    if (isSignedOut(error)) signedOut();
    else if (!(error instanceof NotReached)) throw error;
  }
}

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
    if (!(error instanceof ServerProblem) || isSignedOut(error)) throw error;
    const { problem, missed } = error;
    // The first try got through without its answer, before the time was written beside it: it is in the notes.
    if (problem.refusals === undefined && problem.type.endsWith('same-id-other-content')) {
      await waitNoMore(act.id);
      return true;
    }
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
