/**
 * The newest day sheet of today's and of the next session of every unit, kept as files beside the notes, so that there is paper
 * to print when this server or the network no longer answers. Nobody has to ask for them; a closed session leaves no file.
 */
import { mkdirSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { plainDate, sessionDayOf } from '@twelvemonth/clinical';
import type { AtHand } from '../at-hand.ts';
import { everyMinute } from '../every-minute.ts';
import { everySession } from '../views/sessions.ts';
import { daySheetDocumentOf } from './day-sheet.ts';

/** Makes the files anew and removes those that are over. */
export async function keepNewestDaySheets(atHand: AtHand, folder: string): Promise<void> {
  const sheets = new Map<string, string>();
  for (const { unit, today } of await atHand.units.all()) {
    const planned = (await everySession(atHand)).filter(
      (session) => session.unit === unit.id && session.on >= today && session.cancelled === undefined,
    );
    const next = planned.find((session) => session.on > today);
    for (const session of planned.filter((one) => one.on === today || one === next)) {
      const { closed } = sessionDayOf(await atHand.notes.of('session', session.id));
      const html = closed === undefined ? await daySheetDocumentOf(atHand, session.id) : undefined;
      if (html !== undefined) sheets.set(`${plainDate(session.on)} ${unit.id} ${session.id}.html`, html);
    }
  }
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  for (const [name, html] of sheets) {
    const draft = join(folder, `${name}.draft`);
    writeFileSync(draft, html, { mode: 0o600 });
    renameSync(draft, join(folder, name));
  }
  for (const name of readdirSync(folder)) if (!sheets.has(name)) rmSync(join(folder, name));
}

/** Keeps them from now on; returns how to stop. */
export function keepDaySheets(atHand: AtHand, folder: string, say: (line: string) => void): () => Promise<void> {
  let madeAt = '';
  async function make(): Promise<void> {
    const days = (await atHand.units.all()).map(({ today }) => today).join();
    const now = `${(await atHand.store.tail()).commit} ${days}`;
    if (now !== madeAt) await keepNewestDaySheets(atHand, folder);
    madeAt = now;
  }
  // A sheet is never older than a minute while something is written.
  return everyMinute(make, (error) => say(`The day sheets cannot be kept in ${folder}: ${String(error)}`));
}
