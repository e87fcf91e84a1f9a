/**
 * What a step of a visit, or a call, does when the server cannot be reached: it waits on this device, or says why it may not. Nothing that
 * rests on a second person or on the server's clocks is taken: no start, no check, no pause.
 */
import type { ActBody, MeView } from '@twelvemonth/exchange';
import { deviceMilliseconds } from '../clock.ts';
import { reckonedServerTime } from '../server/connection.ts';
import { me, queries } from '../server/queries.ts';
import { localMoment } from '../words/local-moment.ts';
import { keptDay } from './kept-day.ts';
import { type WaitingAct, letWait, waitingNow } from './waiting.ts';

type Act = ActBody['act'];
/** `patient` undefined: a call about somebody who was not found. */
export type Person = { readonly patient: string | undefined; readonly name: string; readonly zone: string };

/** Whom a call is about need not be on today's list: it is written down whoever rings. */
const isCall = ({ name }: Act): boolean => name === 'write advice call' || name === 'write unknown call';

const onPaper: Readonly<Partial<Record<Act['name'], string>>> = {
  'start infusion':
    'Without the network the second person cannot be verified: the infusion is not started here. Use the paper day sheet; both sign it, and it is typed in later.',
  'second check':
    'Without the network the second person cannot be verified: the check is not signed here. Use the paper day sheet; both sign it, and it is typed in later.',
  'pause infusion':
    'Pause it at the line and write from when on the day sheet: without the network the pause is not timed here.',
  'resume infusion': 'Write on the day sheet when it runs again: without the network it is not timed here.',
};

export const mayWait = ({ name }: Act): boolean => onPaper[name] === undefined;

/** What is sent first is held up by somebody, not by the network: it is settled here, or sent by whoever wrote it. */
export function waitsForSomebody({ patient }: Person): boolean {
  const staff = queries.getQueryData<MeView | null>(me.queryKey)?.staff;
  return waitingNow().some(
    (one) => patient !== undefined && one.patient === patient && (one.needs !== undefined || one.staff !== staff),
  );
}

const notKept =
  'The server cannot be reached, and this device does not keep the day of this person. Nothing is lost: press again when it is back, or use the paper day sheet.';

/** Undefined: it waits now. Otherwise why it does not. */
export async function letStepWait(
  sending: Pick<ActBody, 'id' | 'role' | 'seen'> & { readonly act: Act },
  { patient, name, zone }: Person,
): Promise<string | undefined> {
  const refused = onPaper[sending.act.name];
  if (refused !== undefined) return refused;
  const person = queries.getQueryData<MeView | null>(me.queryKey);
  const day = await keptDay().catch(() => undefined);
  const isOfDay =
    day !== undefined && (isCall(sending.act) || (patient !== undefined && day.patients.includes(patient)));
  if (person === undefined || person === null || !isOfDay) return notKept;
  const now = reckonedServerTime();
  const waiting: WaitingAct = {
    ...sending,
    act: asItHappens(sending.act, localMoment(now, zone), person.name),
    patient,
    name,
    staff: person.staff,
    staffName: person.name,
    wroteAt: new Date(now).toISOString(),
    deviceAt: new Date(deviceMilliseconds()).toISOString(),
  };
  try {
    await letWait(waiting);
  } catch {
    return 'The server cannot be reached, and this device takes nothing more to keep: its memory may be full. Nothing is recorded. Use the paper day sheet, or press again when the server is back.';
  }
  return undefined;
}

/** What would be timed when it arrives says when it happened instead, and whose clock that was. */
function asItHappens(act: Act, happenedAt: string, who: string): Act {
  switch (act.name) {
    case 'decide':
    case 'write advice call':
    case 'write unknown call':
      return { happenedAt, ...act };
    case 'finish infusion':
      return { happenedAt, timedBy: `${who}, by the clock of a device without network`, ...act };
    default:
      return act;
  }
}
