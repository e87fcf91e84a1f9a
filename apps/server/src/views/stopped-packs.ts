/** Packs in somebody's hand, or running, whose batch was stopped after they were prepared: told at the chair and on Today. */
import {
  type PackInUse,
  batchSubject,
  batchWritten,
  isAlikeBatch,
  packInUse,
  plainDate,
  shortDate,
  stopOf,
  subjectId,
} from '@twelvemonth/clinical';
import type { VisitView } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import type { Person } from '../register/people.ts';

export type StoppedPack = NonNullable<VisitView['stoppedPack']>;

/** Whether it runs to its end is not the program's to say; that it is not begun, or begun again, is. */
const whatNow: Readonly<Record<PackInUse['state'], string>> = {
  prepared: 'Do not start it: withdraw the preparation, put the pack aside, prepare one of another batch.',
  runs: 'Ask a prescriber and the pharmacist now whether the drip goes on. Once paused it does not run again.',
  'stands still': 'It does not run again: stop it for good, say how much was given, ask a prescriber.',
  given: 'It was given today, and they are still here: the pharmacist and a prescriber say what they are told.',
};

export async function stoppedPackOf(
  { notes }: Pick<AtHand, 'notes'>,
  person: Person,
): Promise<StoppedPack | undefined> {
  const inUse = packInUse(person.record, person.today);
  if (inUse === undefined) return undefined;
  const { batch, scan } = inUse.preparation.body;
  const alike = (await notes.all('batch')).filter((one) => isAlikeBatch(batchWritten(one) ?? '', batch));
  const own = await notes.of('batch', subjectId(batchSubject(batch)));
  const [stop] = [own, ...alike].flatMap((record) => stopOf(record, scan?.productNumber) ?? []);
  if (stop === undefined) return undefined;
  const { why, reason } = stop.body;
  // The checker reads the batch off the pack: until then nothing said here may give it away.
  const named = inUse.checked
    ? `Batch ${batch}: ${why} since ${shortDate(stop.on)}, ${reason}`
    : `${why} since ${shortDate(stop.on)}`;
  return { state: inUse.state, since: plainDate(stop.on), says: named, whatNow: whatNow[inUse.state] };
}
