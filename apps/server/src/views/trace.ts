/** Batch trace, both ways: everybody in whose notes a batch stands, and the batches of one person. */
import {
  type BatchInPerson,
  type Day,
  type Fact,
  type SubjectRecord,
  batchSubject,
  batchWritten,
  batchesOf,
  day,
  dosesWithoutBatch,
  entryText,
  factsOf,
  isAlikeBatch,
  isBatch,
  isToldBefore,
  latest,
  packInUse,
  plainDate,
  productOfMedicine,
  receivedAs,
  sameBatch,
  stopOf,
  subjectId,
  toTellOf,
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
  const everyone = await atHand.people.all();
  const stop = toTellOf(record);
  const people = everyone
    .flatMap((person) => {
      const [here, ...also] = batchesShown(person).filter((one) => isBatch(one.batch, batch));
      return here === undefined ? [] : [{ person, here, also }];
    })
    .toSorted((a, b) => b.here.on - a.here.on);
  return {
    batch: receivedAs(record)?.batch ?? people[0]?.here.batch ?? batch,
    said: record.all.map((fact) => ({ on: plainDate(fact.on), by: nameOf(fact.author.staff), text: entryText(fact) })),
    stopped: stop !== undefined,
    people: people.map(({ person, here, also }) => ({
      ...whoIn(person),
      ...hadIn(here, person),
      also: also.map((one) => hadIn(one, person)),
      ...toldIn(toldOf(person.record, batch), stop, nameOf),
    })),
    waitForCheck: everyone.filter(({ record: of, today }) => packInUse(of, today)?.checked === false).length,
    alike: await alikeTo(batch, everyone, atHand),
    withoutBatch: withoutBatchIn(record, everyone),
  };
}

/** The same number written with other signs, here or in anybody's notes: each is traced by itself. */
async function alikeTo(batch: string, everyone: readonly Person[], { notes }: AtHand): Promise<string[]> {
  const written = [
    ...(await notes.all('batch')).flatMap((record) => batchWritten(record) ?? []),
    ...everyone.flatMap(({ record }) => batchesOf(record).map((one) => one.batch)),
  ];
  const found = new Map(written.filter((one) => isAlikeBatch(one, batch)).map((one) => [sameBatch(one), one]));
  return [...found.values()];
}

function whoIn(
  person: Person,
): Pick<TraceView['people'][number], 'patient' | 'name' | 'number' | 'born' | 'telephone' | 'standing' | 'died'> {
  const telephone = person.contact?.telephone;
  const died = latest(person.record, 'died');
  return {
    patient: person.patient,
    name: fullName(person),
    number: person.identity?.number ?? '',
    born: bornInWords(person.identity?.born),
    ...(telephone === undefined ? {} : { telephone }),
    standing: person.standing.says,
    ...(died === undefined ? {} : { died: plainDate(died.on) }),
  };
}

function toldIn(
  told: Fact<'told-of-batch'> | undefined,
  stop: Fact<'batch-stopped'> | undefined,
  nameOf: (staff: string) => string,
): Pick<TraceView['people'][number], 'told'> {
  if (told === undefined) return {};
  return {
    told: {
      on: plainDate(told.on),
      by: nameOf(told.author.staff),
      how: told.body.how,
      before: isToldBefore(told, stop),
      ...(told.body.note === undefined ? {} : { note: told.body.note }),
    },
  };
}

const hadIn = (one: BatchInPerson, person: Person): TraceView['people'][number]['also'][number] => ({
  on: plainDate(one.on),
  ...whatAndWhere(one, person),
});

function whatAndWhere(
  { dose, preparation }: BatchInPerson,
  { record, today }: Person,
): { what: string; where: string } {
  if (dose !== undefined) return doseInWords(dose);
  const inUse = packInUse(record, today);
  const state = inUse !== undefined && inUse.preparation.id === preparation?.id ? inUse.state : undefined;
  return { what: state === undefined ? noDose : inUseWords[state], where: 'this service' };
}

const noDose = 'opened for them; no dose of it in the notes';
const inUseWords = {
  prepared: 'prepared for them today, not started',
  runs: 'running now',
  'stands still': 'started, stands still now',
  given: noDose,
} as const;

function doseInWords({ body }: Fact<'dose'>): { what: string; where: string } {
  const { medicine, partMilliliters, minutes, setting } = body;
  const part = partMilliliters === undefined ? '' : `, part dose of ${partMilliliters} mL`;
  return { what: `${medicine}${part}${minutes === undefined ? '' : `, over ${minutes} minutes`}`, where: setting };
}

/** Of a batch that was received: the doses of its medicine from then until its packs were past their date. */
function withoutBatchIn(batch: SubjectRecord, everyone: readonly Person[]): TraceView['withoutBatch'] {
  const received = receivedAs(batch);
  if (received === undefined) return [];
  const from = Math.min(...factsOf(batch, 'batch-received').map(({ on }) => on)) as Day;
  const until = day(received.expiresOn);
  return everyone
    .flatMap((person) =>
      dosesWithoutBatch(person.record)
        .filter(({ on, body }) => on >= from && on <= until && productOfMedicine(body.medicine) === received.product)
        .map((dose) => ({
          patient: person.patient,
          name: fullName(person),
          number: person.identity?.number ?? '',
          on: plainDate(dose.on),
          ...doseInWords(dose),
        })),
    )
    .toSorted((a, b) => (a.on < b.on ? 1 : -1));
}

export async function batchesOfPersonOf(atHand: AtHand, person: Person): Promise<BatchesOfPersonView> {
  const batches: BatchesOfPersonView['batches'] = [];
  for (const one of batchesShown(person)) {
    const record = await atHand.notes.of('batch', subjectId(batchSubject(one.batch)));
    const stop = stopOf(record, one.preparation?.body.scan?.productNumber);
    batches.push({
      batch: one.batch,
      ...hadIn(one, person),
      ...(stop === undefined ? {} : { stopped: `${stop.body.why}: ${stop.body.reason}` }),
    });
  }
  return {
    patient: person.patient,
    name: fullName(person),
    number: person.identity?.number ?? '',
    batches,
    withoutBatch: dosesWithoutBatch(person.record).map((dose) => ({ on: plainDate(dose.on), ...doseInWords(dose) })),
  };
}
