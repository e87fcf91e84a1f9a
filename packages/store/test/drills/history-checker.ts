/**
 * Judges a history of acts against what is stored. It knows the promise, not the code that keeps it: nothing acknowledged
 * is lost or changed, nothing is half written, nothing is there twice, nothing is there that nobody sent, and no place is
 * taken twice.
 */
export type HistoryLine = {
  readonly act: string;
  readonly what?: readonly (string | number)[];
  readonly answer?: string;
  readonly entries?: readonly {
    readonly id: string;
    readonly subject: string;
    readonly seq: number;
    readonly hash: string;
  }[];
};
export type StoredEntry = {
  readonly subject: string;
  readonly seq: number;
  readonly id: string;
  readonly act: string;
  readonly kind: string;
  readonly body: string;
  readonly hash: string;
};

/** How many entries an act of each sort writes, in how many ledgers. */
const size: Readonly<Record<string, number>> = { weigh: 1, book: 2, both: 3 };

export function judgeHistory(history: readonly HistoryLine[], stored: readonly StoredEntry[]): string[] {
  const wrong: string[] = [];
  const sent = new Map(history.flatMap((line) => (line.what === undefined ? [] : [[line.act, line.what] as const])));
  const byAct = Map.groupBy(stored, (entry) => entry.act);
  const byPlace = new Map(stored.map((entry) => [`${entry.subject} ${entry.seq}`, entry]));

  const firstAnswers = new Map<string, string>();
  for (const line of history) {
    if (line.answer === undefined) continue;
    if (line.answer === 'recorded' && firstAnswers.has(line.act)) wrong.push(`${line.act} was called new twice`);
    if (line.answer !== 'recorded' && line.answer !== 'already-recorded') continue;
    const told = JSON.stringify(line.entries);
    if ((firstAnswers.get(line.act) ?? told) !== told) wrong.push(`${line.act} was answered in two ways`);
    firstAnswers.set(line.act, told);
    for (const entry of line.entries ?? []) {
      const kept = byPlace.get(`${entry.subject} ${entry.seq}`);
      if (kept === undefined) wrong.push(`lost: ${line.act} was acknowledged as ${entry.subject} ${entry.seq}`);
      else if (kept.id !== entry.id || kept.hash !== entry.hash || kept.act !== line.act)
        wrong.push(`changed: ${entry.subject} ${entry.seq} is not what ${line.act} was told`);
    }
  }

  for (const [act, entries] of byAct) {
    const what = sent.get(act);
    if (what === undefined) wrong.push(`nobody sent ${act}`);
    else if (entries.length < (size[String(what[0])] ?? 0))
      wrong.push(`half written: ${act} has ${entries.length} entries`);
    else if (entries.length > (size[String(what[0])] ?? 0)) wrong.push(`twice: ${act} has ${entries.length} entries`);
  }

  const ids = stored.map((entry) => entry.id);
  if (new Set(ids).size !== ids.length) wrong.push('two entries have the same id');
  const places = stored
    .filter((entry) => entry.kind === 'session-place-taken')
    .map((entry) => `${entry.subject} ${(JSON.parse(entry.body) as { place: number }).place}`);
  if (new Set(places).size !== places.length) wrong.push('a place was given to two people');
  for (const [subject, entries] of Map.groupBy(stored, (entry) => entry.subject)) {
    const seqs = entries.map((entry) => entry.seq).toSorted((left, right) => left - right);
    if (seqs.some((seq, index) => seq !== index + 1)) wrong.push(`there is a gap in ${subject}`);
  }
  return wrong;
}
