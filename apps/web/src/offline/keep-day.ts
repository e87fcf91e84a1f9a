/**
 * Keeps today's session on this device while it is not closed: the list, the visit of everybody on it, the protocol and the day
 * sheet. Wiped when the session is closed, when another person signs in, and when somebody leaves.
 */
import { useQuery } from '@tanstack/react-query';
import { useEffect } from 'react';
import { useMay } from '../frame/may.ts';
import { useUnit } from '../frame/unit.ts';
import { addressOf } from '../server/paths.ts';
import { me, today } from '../server/queries.ts';
import { type KeptDay, dayName, keptDay } from './kept-day.ts';
import { keep, wipeAnswers } from './vault.ts';

/** List, session and sheet are copied anew this often; a visit whenever something was written in it. */
const everyMilliseconds = 120_000;

export function registerServiceWorker(): void {
  // Only where the browser trusts the connection: this machine itself, or TLS.
  if ('serviceWorker' in navigator && import.meta.env.PROD)
    void navigator.serviceWorker.register('/sw.js').catch(() => undefined);
}

const controlled = async (): Promise<void> => {
  await navigator.serviceWorker.ready;
  if (navigator.serviceWorker.controller !== null) return;
  await new Promise((resolve) => {
    navigator.serviceWorker.addEventListener('controllerchange', resolve, { once: true });
  });
};

/** Asked for through the service worker, which keeps it. What cannot be fetched now is fetched the next time. */
const copy = async (address: string): Promise<void> => {
  try {
    // Read to its end: an answer that nobody reads keeps its connection.
    await (await fetch(address, { headers: { accept: 'application/json, text/html' } })).arrayBuffer();
  } catch {
    return;
  }
};

let keptPatients: ReadonlySet<string> = new Set();
/** How often somebody has left: what was begun to be kept before that is not kept. */
let left = 0;

/** Something was written about somebody: who is on the list that is kept is copied anew. */
export function copyVisitOf(patient: string): void {
  if (keptPatients.has(patient)) void copy(addressOf('visit', { patient }));
}

/** Begins to keep a day, or wipes it where there is none to keep; returns how often copies are to be taken, and of what. */
async function begin(day: KeptDay | undefined, unit: string): Promise<() => void> {
  const leftBefore = left;
  const before = await keptDay();
  if (day === undefined || (before !== undefined && (before.staff !== day.staff || before.session !== day.session)))
    await wipeAnswers();
  keptPatients = new Set();
  if (day === undefined) return () => undefined;
  await controlled();
  if (left !== leftBefore) return () => undefined;
  await keep('answers', dayName, day);
  if (left !== leftBefore) {
    await wipeAnswers();
    return () => undefined;
  }
  keptPatients = new Set(day.patients);
  const { session, patients } = day;
  const lists = [
    addressOf('status'),
    addressOf('me'),
    addressOf('today', { unit }),
    addressOf('session', { session }),
    addressOf('sessionDay', { session }),
    addressOf('daySheet', { session }),
    addressOf('protocols', { unit }),
  ];
  for (const address of [...lists, ...patients.map((patient) => addressOf('visit', { patient }))]) await copy(address);
  return () => lists.forEach((address) => void copy(address));
}

export function useKeepDay(): void {
  const may = useMay();
  const staff = useQuery(me).data?.staff;
  const { unit } = useUnit();
  const shown = useQuery({ ...today(unit?.unit), enabled: unit !== undefined && may('today') }).data;
  const isOpen = shown?.sessionState === 'open' || shown?.sessionState === 'not opened';
  const wanted =
    shown === undefined || staff === undefined
      ? undefined
      : JSON.stringify({
          unit: shown.unit,
          day:
            isOpen && shown.session !== undefined
              ? { staff, session: shown.session, on: shown.date, patients: shown.visits.map(({ patient }) => patient) }
              : undefined,
        });
  useEffect(() => {
    if (wanted === undefined || !('serviceWorker' in navigator) || !import.meta.env.PROD) return;
    const { day, unit: ofUnit } = JSON.parse(wanted) as { readonly day?: KeptDay; readonly unit: string };
    let timer: ReturnType<typeof setInterval> | undefined;
    let ended = false;
    const keepOn = async (): Promise<void> => {
      const again = await begin(day, ofUnit);
      if (!ended) timer = setInterval(again, everyMilliseconds);
    };
    // A browser that keeps nothing (a private window) works as before: with the network only.
    keepOn().catch(() => undefined);
    return () => {
      ended = true;
      clearInterval(timer);
    };
  }, [wanted]);
}

/** Somebody leaves: nothing of the day stays here but what waits to be sent. */
export async function leaveNothing(): Promise<void> {
  left += 1;
  keptPatients = new Set();
  if ('indexedDB' in globalThis) await wipeAnswers().catch(() => undefined);
}
