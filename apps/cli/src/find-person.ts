/** The person a command is about, by their number or by the id of their notes. */
import { type Subject, parseSubject, subject } from '@twelvemonth/clinical';
import type { StoreReader } from '@twelvemonth/store';
import { answeredNo, misused } from './ending.ts';
import { keptNotes } from './read-person.ts';

export async function findPerson(reader: StoreReader, words: readonly string[]): Promise<Subject> {
  const said = words.join(' ').trim();
  if (said === '') throw misused('Say who: their number, or the id of their notes.');
  const byId = parseSubject(said) === undefined ? parseSubject(`patient/${said}`) : parseSubject(said);
  if (byId !== undefined) {
    const of = subject(byId.kind, byId.id);
    if ((await reader.ledger(of)).length > 0) return keptNotes(reader, of);
  }
  const digits = said.replaceAll(/\D/g, '');
  const found = digits === '' ? [] : await reader.rows({ table: 'person', where: { number_digits: digits } });
  const kept = await Promise.all(found.map((row) => keptNotes(reader, row.subject)));
  const [only, ...others] = [...new Set(kept)];
  if (only === undefined) throw answeredNo(`Nobody here has the number or the id "${said}".`);
  if (others.length > 0)
    throw answeredNo(`Several people have the number "${said}": ask by id (${[only, ...others].join(', ')}).`);
  return only;
}
