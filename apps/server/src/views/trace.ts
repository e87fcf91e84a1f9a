/** Batch trace, both ways: everybody in whose notes a batch stands, and the batches of one person. */
import {
  type BatchInPerson,
  batchSubject,
  batchesOf,
  entryText,
  isBatch,
  plainDate,
  receivedAs,
  stopOf,
  subjectId,
  toldOf,
} from '@twelvemonth/clinical';
import type { BatchesOfPersonView, TraceView } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import type { Person } from '../register/people.ts';
import { unreadIn } from './entries.ts';
import { bornInWords, fullName } from './person-words.ts';

/** What may be read: not the batch of a pack that waits for its second check. */
function batchesShown(person: Person): readonly BatchInPerson[] {
  const unread = unreadIn(person);
  return batchesOf(person.record).filter(({ preparation }) => preparation === undefined || !unread(preparation));
}

export async function traceOf(atHand: AtHand, batch: string): Promise<TraceView> {
  const nameOf = atHand.accounts.nameOf;
  const record = await atHand.notes.of('batch', subjectId(batchSubject(batch)));
  const people = (await atHand.people.all())
    .flatMap((person) => {
      const here = batchesShown(person).find((one) => isBatch(one.batch, batch));
      return here === undefined ? [] : [{ person, here }];
    })
    .toSorted((a, b) => b.here.on - a.here.on);
  return {
    batch: receivedAs(record)?.batch ?? people[0]?.here.batch ?? batch,
    said: record.all.map((fact) => ({ on: plainDate(fact.on), by: nameOf(fact.author.staff), text: entryText(fact) })),
    stopped: stopOf(record) !== undefined,
    people: people.map(({ person, here }) => rowOf(person, here, batch, nameOf)),
  };
}

function rowOf(
  person: Person,
  here: BatchInPerson,
  batch: string,
  nameOf: (staff: string) => string,
): TraceView['people'][number] {
  const told = toldOf(person.record, batch);
  const telephone = person.contact?.telephone;
  return {
    patient: person.patient,
    name: fullName(person),
    number: person.identity?.number ?? '',
    born: bornInWords(person.identity?.born),
    ...(telephone === undefined ? {} : { telephone }),
    standing: person.standing.says,
    on: plainDate(here.on),
    ...whatAndWhere(here),
    ...(told === undefined
      ? {}
      : {
          told: {
            on: plainDate(told.on),
            by: nameOf(told.author.staff),
            how: told.body.how,
            ...(told.body.note === undefined ? {} : { note: told.body.note }),
          },
        }),
  };
}

function whatAndWhere({ dose }: BatchInPerson): { what: string; where: string } {
  if (dose === undefined) return { what: 'opened for them; no dose of it in the notes', where: 'this service' };
  const { medicine, partMilliliters, minutes, setting } = dose.body;
  const part = partMilliliters === undefined ? '' : `, part dose of ${partMilliliters} mL`;
  return { what: `${medicine}${part}${minutes === undefined ? '' : `, over ${minutes} minutes`}`, where: setting };
}

export async function batchesOfPersonOf(atHand: AtHand, person: Person): Promise<BatchesOfPersonView> {
  const batches: BatchesOfPersonView['batches'] = [];
  for (const one of batchesShown(person)) {
    const record = await atHand.notes.of('batch', subjectId(batchSubject(one.batch)));
    const stop = stopOf(record, one.preparation?.body.scan?.productNumber);
    batches.push({
      batch: one.batch,
      on: plainDate(one.on),
      ...whatAndWhere(one),
      ...(stop === undefined ? {} : { stopped: `${stop.body.why}: ${stop.body.reason}` }),
    });
  }
  return { patient: person.patient, name: fullName(person), number: person.identity?.number ?? '', batches };
}
