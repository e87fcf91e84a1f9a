/** An act carried out: surroundings gathered, decided inside the write, every outcome in words. */
import { createHash } from 'node:crypto';
import {
  type Act,
  type ActNamed,
  type Author,
  type BodyOfKind,
  type Entry,
  type Refusal,
  type Subject,
  type SubjectRecord,
  type Surroundings,
  batchSubject,
  batchWritten,
  canonicalText,
  dateWithWeekday,
  decide,
  isAlikeBatch,
  isKindName,
  kindNamed,
  noFormulary,
  newestWritten,
  patientSubject,
  readKindsOf,
  recordOfLedgers,
  subjectId,
  isSubjectOf,
  sessionOf,
  subject,
  subjectsOf,
} from '@twelvemonth/clinical';
import type { ActAnswer, ActBody } from '@twelvemonth/exchange';
import type { ActOutcome } from '@twelvemonth/store';
import type { AtHand } from '../at-hand.ts';
import { Refused } from '../problem.ts';
import { zoneBeforeAnyUnit } from '../register/units.ts';
import { hiddenUntilChecked, wordsOf } from '../views/entries.ts';
import { fullName } from '../views/person-words.ts';
import { type LookAlike, looksLike } from '../views/look-alikes.ts';
import { namedCheckerRefused } from './named-checker.ts';
import { namedStaffRefused } from './named-staff.ts';
import { scanSaysOtherwise } from './scanned-pack.ts';
import { unitOfAct } from './unit-of-act.ts';

export type ActToDo = {
  /** Made by the sender. */
  readonly id: string;
  readonly act: Act;
  readonly by: Author;
  readonly seen?: Readonly<Record<string, number>>;
  /** The sender's own clock, where the act waited for the network. */
  readonly deviceAt?: string;
  readonly device?: ActBody['device'];
};

/** Like any write: all of it or nothing, and safe to send twice. */
export async function doAct(
  atHand: AtHand,
  { id, act: sent, by, seen, deviceAt, device }: ActToDo,
): Promise<ActAnswer | Refused> {
  const act = sent.name === 'write protocol' ? hashed(sent) : sent;
  const unit = await unitOfAct(act, atHand);
  const zone = unit?.unit.zone ?? zoneOf(act);
  const refused = scanSaysOtherwise(act, unit) ?? namedCheckerRefused(act, atHand) ?? namedStaffRefused(act, atHand);
  if (refused !== undefined) return refused;
  const lookAlikes = await lookAlikesIn(act, atHand);
  // Once: asked again because somebody wrote meanwhile, the same act must come out the same.
  const { today, moment } = atHand.clock.local(zone);
  const clock = atHand.clock.reading();
  const outcome = await atHand.store.act<Refusal>({
    id,
    content: JSON.stringify([by.staff, sent]),
    by,
    at: atHand.clock.now(),
    subjects: await subjectsToHandOver(act, lookAlikes ?? [], atHand),
    ...(seen === undefined ? {} : { seen }),
    readKinds: readKindsOf(act),
    decide: (ledgers) => {
      const surroundings: Surroundings = {
        ledgers,
        context: unit?.context,
        formulary: unit?.unit.formulary ?? noFormulary,
        directions: unit?.unit.directions,
        by,
        today,
        moment,
        zone,
        clock,
        ...(device === undefined
          ? {}
          : {
              device: {
                id: device.id,
                name: device.name,
                takesOver: device.takesOver === true,
                waited: deviceAt !== undefined,
              },
            }),
        ...(lookAlikes === undefined ? {} : { lookAlikes }),
      };
      const decided = decide(act, surroundings);
      if (!('drafts' in decided)) return decided;
      if (isOfDose(act) && !isAtHand(act, ledgers)) return { refusals: [notAtHand] };
      return deviceAt === undefined ? decided : { drafts: decided.drafts.map((draft) => ({ ...draft, deviceAt })) };
    },
  });
  return answerTo(outcome, act, atHand);
}

/** Who looks like the person whose identity the act writes; undefined: it writes none. */
async function lookAlikesIn(act: Act, { people }: AtHand): Promise<LookAlike[] | undefined> {
  const identity =
    act.name === 'register'
      ? act.identity
      : act.name === 'take in' || act.name === 'record together'
        ? act.lines.findLast(({ kind }) => kind === 'identity')?.body
        : act.name === 'record' && act.line.kind === 'identity'
          ? act.line.body
          : undefined;
  const read = kindNamed('identity').body.safeParse(identity);
  if (!read.success || !('patient' in act)) return undefined;
  return looksLike(await people.all(), read.data as BodyOfKind<'identity'>, act.patient);
}

/** What the act names, the notes that are read in those, and whoever would be noted as looking alike. */
async function subjectsToHandOver(act: Act, alike: readonly LookAlike[], { notes }: AtHand): Promise<Subject[]> {
  const named = [...subjectsOf(act), ...alike.map(({ patient }) => patientSubject(patient))];
  named.push(...(await besidesOf(act, notes)));
  const read = await Promise.all(
    named
      .filter((of) => isSubjectOf('patient', of))
      .map(async (of) => (await notes.of('patient', subjectId(of))).together ?? []),
  );
  return [...new Set([...named, ...read.flat().map(({ patient }) => patientSubject(patient))])].toSorted();
}

/** What an act reads beside what it names: the batch and the session of a dose, everybody on a list that is closed. */
async function besidesOf(act: Act, notes: AtHand['notes']): Promise<readonly Subject[]> {
  if (act.name === 'close session') {
    const session = sessionOf(await notes.of('session', act.session));
    return [...(session?.taken.values() ?? [])].map(patientSubject);
  }
  const alike = await alikeBatchesOf(act, notes);
  if (!isOfDose(act) && !preparesDose(act)) return alike;
  const ofDose = readForDose(await notes.of('patient', act.patient));
  const sessions = ofDose.filter((of) => isSubjectOf('session', of));
  const units = await Promise.all(
    sessions.map(async (of) => sessionOf(await notes.of('session', subjectId(of)))?.unit ?? []),
  );
  return [...alike, ...ofDose, ...units.flat().map((unit) => subject('unit', unit))];
}

/** Batches written like those the act is about but for their signs: a stop of one holds the other. */
async function alikeBatchesOf(act: Act, notes: AtHand['notes']): Promise<readonly Subject[]> {
  const named = await batchesNamed(act, notes);
  if (named.length === 0) return [];
  return (await notes.all('batch'))
    .filter((record) => named.some((batch) => isAlikeBatch(batchWritten(record) ?? '', batch)))
    .map(({ subject: of }) => of);
}

async function batchesNamed(act: Act, notes: AtHand['notes']): Promise<readonly string[]> {
  if (act.name === 'receive packs' || act.name === 'stop batch') return [act.body.batch];
  if (isOfDose(act))
    return [newestWritten(await notes.of('patient', act.patient), 'preparation')?.body.batch ?? []].flat();
  const lines = act.name === 'record' ? [act.line] : act.name === 'record together' ? act.lines : [];
  return lines.flatMap(({ kind, body }) => {
    const read = kind === 'preparation' ? kindNamed('preparation').body.safeParse(body) : undefined;
    return read?.success === true ? [(read.data as BodyOfKind<'preparation'>).batch] : [];
  });
}

type OfDose = ActNamed<'start infusion' | 'resume infusion' | 'second check' | 'give injection'>;
const isOfDose = (act: Act): act is OfDose =>
  act.name === 'start infusion' ||
  act.name === 'resume infusion' ||
  act.name === 'second check' ||
  act.name === 'give injection';
/** Who prepares is somebody whom the opening of the session names. */
const preparesDose = (act: Act): act is ActNamed<'record' | 'record together'> =>
  (act.name === 'record' && act.line.kind === 'preparation') ||
  (act.name === 'record together' && act.lines.some(({ kind }) => kind === 'preparation'));

/** The batch may have been stopped since it was prepared; the session may not be open. */
function readForDose(record: SubjectRecord): readonly Subject[] {
  const prepared = newestWritten(record, 'preparation');
  const arrived = newestWritten(record, 'arrived');
  return [
    ...(prepared === undefined ? [] : [batchSubject(prepared.body.batch)]),
    ...(arrived === undefined ? [] : [subject('session', arrived.body.session)]),
  ];
}

/** Whether the notes that were handed over are those of the preparation and the arrival that stand now. */
const isAtHand = (act: OfDose, ledgers: ReadonlyMap<Subject, readonly Entry[]>): boolean =>
  readForDose(recordOfLedgers(patientSubject(act.patient), (of) => ledgers.get(of))).every((of) => ledgers.has(of));

const notAtHand: Refusal = {
  name: 'notes-not-at-hand',
  says: 'Another pack was prepared a moment ago.',
  remedy: 'look at the visit, then start again',
};

const hashed = (act: ActNamed<'write protocol'>): ActNamed<'write protocol'> => ({
  ...act,
  contentHash: `sha256:${createHash('sha256').update(canonicalText(act.sheet)).digest('hex')}`,
});

/** The first settings of a unit say in which zone it lives. */
const zoneOf = (act: Act): string =>
  act.name === 'set unit' ? act.body.zone : act.name === 'plan session' ? act.body.zone : zoneBeforeAnyUnit;

async function answerTo(outcome: ActOutcome<Refusal>, act: Act, atHand: AtHand): Promise<ActAnswer | Refused> {
  switch (outcome.outcome) {
    case 'recorded':
    case 'already-recorded': {
      const entries = outcome.entries.map(({ subject, id, seq, kind }) => ({ subject, id, seq, kind }));
      return { outcome: outcome.outcome, commit: outcome.commit, entries, says: await saidAfter(act, entries, atHand) };
    }
    case 'refused':
      return refusedWith(outcome.refusals);
    case 'same-id-other-content':
      return new Refused(
        409,
        outcome.outcome,
        'An act with this id was recorded before and says something else: send this one under an id of its own.',
        // Its sender has not had the answer: where it stands in the notes is theirs to know.
        { more: { wrote: outcome.entries.map(({ subject: of, seq }) => ({ subject: of, seq })) } },
      );
    case 'ledger-moved-on': {
      const missed = outcome.missed.map((entry) => ({
        id: entry.id,
        kind: entry.kind,
        // Whoever is asked to check must not be told what the preparer read.
        text: entry.kind === 'preparation' ? hiddenUntilChecked : wordsOf(entry),
        by: atHand.accounts.nameOf(entry.author.staff),
        recordedAt: entry.recordedAt,
      }));
      return new Refused(
        409,
        outcome.outcome,
        'Somebody wrote in these notes while you were deciding: read it, then decide again.',
        { more: { missed } },
      );
    }
    case 'ledger-expired':
      return new Refused(409, outcome.outcome, outcome.says);
    case 'read-only':
      return new Refused(503, outcome.outcome, outcome.says, { headers: { 'retry-after': '30' } });
  }
}

function refusedWith(refusals: readonly [Refusal, ...Refusal[]]): Refused {
  const [headline] = refusals;
  const reasons = refusals.map(({ name, says, field, remedy }) => ({
    name,
    says,
    ...(field === undefined ? {} : { field }),
    ...(remedy === undefined ? {} : { remedy }),
  }));
  return new Refused(headline.name === 'not-yours-to-do' ? 403 : 422, headline.name, headline.says, { reasons });
}

/** What was decided, or written in their notes as the notes call it: in the middle of a visit that is what a nurse reads back. */
function inTheNotes(act: Act, entries: ActAnswer['entries'], patient: string): string {
  return act.name === 'decide' ? act.decision : labelsOf(entries.filter(({ subject }) => subject === patient));
}

/** What somebody did; at which screen the drip is looked after stands beside the drip, and nobody did that alone. */
const labelsOf = (entries: ActAnswer['entries']): string =>
  [
    ...new Set(
      entries.flatMap(({ kind }) => (isKindName(kind) && kind !== 'dose-held' ? [kindNamed(kind).label] : [])),
    ),
  ].join(', ');

/** What the person should read: in a visit what was recorded, else where the patient stands now, and what is due. */
async function saidAfter(act: Act, entries: ActAnswer['entries'], { people }: AtHand): Promise<string> {
  const patient = entries.find(({ subject }) => isSubjectOf('patient', subject as `patient/${string}`))?.subject;
  const person = patient === undefined ? undefined : await people.of(subjectId(patient as `patient/${string}`));
  if (patient === undefined || person === undefined) return `Recorded: ${labelsOf(entries)}.`;
  if (person.standing.standing === 'here today')
    return `Recorded for ${fullName(person)}: ${inTheNotes(act, entries, patient)}.`;
  // Between doses that is what the standing says.
  const isSaid = person.course.due === undefined || person.standing.standing === 'between doses';
  const due = isSaid ? '' : `; the next dose is due on ${dateWithWeekday(person.course.due)}`;
  return `Recorded. ${fullName(person)}: ${person.standing.says}${due}.`;
}
