/** The visit screen: who is here, what is done, what is asked, what runs. */
import {
  type Day,
  type Fact,
  type Protocol,
  type Visit,
  atTheNeedle,
  checkerOf,
  entryText,
  factsOf,
  foreseeable,
  heldAt,
  inUsUnits,
  injectionOf,
  injectionSites,
  plainDate,
  protocolFor,
  shortDate,
  sinceCheck,
  subject,
  toldAheadOf,
  toldAnswerText,
  visitOn,
  watchAfter,
} from '@twelvemonth/clinical';
import type { VisitView } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import type { Person } from '../register/people.ts';
import { atPharmacyOf } from './pharmacy.ts';
import { exceptionsInWords } from './exceptions.ts';
import { goViewOf } from './go.ts';
import { infusionViewOf, pauseOf } from './infusion.ts';
import { lastTimeInWords } from './last-time.ts';
import { nearNames } from './look-alikes.ts';
import { observationsViewOf } from './observations.ts';
import { nursesFor } from './named-nurse.ts';
import { allergiesInWords, bornInWords, fullName, needsOf } from './person-words.ts';
import { byPatient, listedOn } from './sessions.ts';
import { failedTriesOf } from './failed-tries.ts';
import { seatedBeside } from './seated.ts';
import { seeOffOf } from './see-off.ts';
import { resiteViewOf, siteViewOf } from './site.ts';
import { stoppedPackOf } from './stopped-packs.ts';
import { supportLinesOf } from './supports.ts';
import { whereTheyAre } from './where-they-are.ts';
import { visitStepsOf } from './visit-steps.ts';

/** An illness written so many days ago or less may be the one they tell of. Common practice, no source. */
const illnessIsRecentDays = 14;
/** What a bag of 5 mg holds; pumps and drops are reckoned from it. */
const bagMilliliters = 100;

/** `on`: the day of the visit, where it is not today's: an earlier one is typed in from paper. */
export async function visitViewOf(atHand: AtHand, asked: Person, on?: Day): Promise<VisitView> {
  const person = on === undefined ? asked : { ...asked, today: on };
  const { record, today, identity, contact, course, place } = person;
  const visit = visitOn(record, today);
  const nameOf = atHand.accounts.nameOf;
  const now = atHand.clock.reading();
  const placeToday = place?.on === today ? place : undefined;
  const { sessionId, session, unit } = await whereTheyAre(atHand, person);
  // By what is ordered: its questions, its numbers.
  const protocol = unit?.protocol === undefined ? undefined : protocolFor(unit.protocol, record, today);
  const onTheList =
    session === undefined
      ? []
      : listedOn(session, byPatient(await atHand.people.all())).flatMap(({ person }) => person ?? []);
  const steps = visitStepsOf(visit, nameOf);
  const current = steps.find(({ state }) => state === 'running' || state === 'waiting')?.step;
  const prescription = factsOf(record, 'prescription').findLast(({ on }) => on <= today);
  const pharmacist = atPharmacyOf(person);
  const infusion = infusionViewOf(visit, protocol, now);
  const site = siteViewOf(visit, protocol, nameOf);
  const go = goViewOf(person, unit);
  const stoppedPack = await stoppedPackOf(atHand, person);
  const sinceCheckMilliseconds = visit?.check === undefined ? undefined : sinceCheck(visit.check, now);
  return {
    patient: person.patient,
    seq: record.lastSeq,
    name: fullName(person),
    born: identity?.born ?? '',
    bornInWords: bornInWords(identity?.born),
    number: identity?.number ?? '',
    allergies: allergiesInWords(person),
    ...(contact?.armToAvoid === undefined ? {} : { armToAvoid: contact.armToAvoid }),
    ...(contact?.armToAvoidBecause === undefined ? {} : { armToAvoidBecause: contact.armToAvoidBecause }),
    exceptions: exceptionsInWords(person, today, nameOf),
    needs: needsOf(person),
    supports: supportLinesOf(person, today),
    nearNames: nearNames(person, onTheList),
    ...failedTriesOf(person, protocol, nameOf),
    ...(visit?.arrived.body.chair === undefined ? {} : { chair: visit.arrived.body.chair }),
    seated: seatedBeside(person, onTheList),
    atTheNeedle: [...atTheNeedle(record, today)],
    dose: person.row().dose,
    firstTimer: course.firstTimer,
    lastTime: lastTimeInWords(person, nameOf),
    ...(sessionId === undefined ? {} : { session: sessionId }),
    on: plainDate(today),
    ...(await nursesFor(atHand, sessionId, person, visit)),
    ...(placeToday === undefined ? {} : { arriveAt: placeToday.arriveAt }),
    steps,
    ...(current === undefined ? {} : { current }),
    questions: questionsOf(person, visit, protocol),
    putOffValues: protocol === undefined ? [] : putOffValuesOf(protocol),
    ...observationsViewOf(record, today, nameOf),
    ...(go === undefined ? {} : { go }),
    ...(await foreseenOf(atHand, person, visit)),
    ...(visit?.decision === undefined
      ? {}
      : { decision: { decision: visit.decision.body.decision, says: entryText(visit.decision) } }),
    illnessToWrite: illnessToWrite(person, visit, protocol),
    ...(prescription === undefined ? {} : { prescription: orderInWords(prescription, protocol) }),
    ...heldOf(person, visit, nameOf),
    ...(pharmacist === undefined ? {} : { atPharmacy: pharmacist }),
    ...preparationOf(visit, nameOf),
    ...(stoppedPack === undefined ? {} : { stoppedPack }),
    ...(visit?.check === undefined
      ? {}
      : {
          check: {
            agrees: visit.check.body.agrees,
            differs: [...visit.check.body.differs],
            by: `${nameOf(checkerOf(visit.check))}${visit.check.body.signedOnPaperBy === undefined ? '' : ', on paper'}`,
            at: momentOf(visit.check),
            ...(sinceCheckMilliseconds === undefined ? {} : { agoSeconds: sinceCheckMilliseconds / 1000 }),
          },
        }),
    ...injectionViewOf(visit),
    ...(infusion === undefined ? {} : { infusion: { ...infusion, ...pauseOf(visit, nameOf) } }),
    ...(site === undefined ? {} : { site }),
    ...resiteViewOf(visit),
    ...reactionsOf(visit, nameOf),
    packsListed: (unit?.unit.formulary.packs.length ?? 0) > 0,
    bagMilliliters,
    ...checkedMinutesOf(visit),
    leastMinutes: protocol?.number.runningMinutesLeast ?? 0,
    ...(protocol === undefined ? {} : { interruptionMinutes: protocol.number.interruptionMinutes }),
    observeMinutes:
      protocol === undefined
        ? 0
        : watchAfter(record, { on: today, medicine: visit?.dose?.body.medicine ?? protocol.regimen.medicine }, protocol)
            .minutes,
    letterReady: visit !== undefined && (visit.dose !== undefined || visit.putOff),
    letterSent: visit?.letter !== undefined,
    ...seeOffOf(person, visit),
    cautions:
      protocol === undefined
        ? ['No protocol is in force at this unit.']
        : [...notDripped(protocol), ...protocol.regimen.cautions, ...protocol.sheet.cautions],
    serverTime: now.wall,
  };
}

/** What the notes of a week before said about today: asked beside a put-off, so only until the medicine runs. */
async function foreseenOf(
  { store }: AtHand,
  { patient, today, unit }: Person,
  visit: Visit | undefined,
): Promise<Pick<VisitView, 'foreseen'>> {
  if (visit === undefined || visit.over || visit.infusion !== undefined || unit?.context === undefined) return {};
  return { foreseen: foreseeable(await store.ledger(subject('patient', patient)), unit.context, today) };
}

/** While it runs: at which device, and from which it was taken. */
function heldOf(
  { record }: Person,
  visit: Visit | undefined,
  nameOf: (staff: string) => string,
): Pick<VisitView, 'held'> {
  const held = visit?.infusion?.finished === undefined && visit !== undefined ? heldAt(record, visit) : undefined;
  if (held === undefined) return {};
  const { device, takenFrom } = held.body;
  return {
    held: {
      device: device.id,
      name: device.name,
      by: nameOf(held.author.staff),
      at: momentOf(held),
      ...(takenFrom === undefined ? {} : { takenFrom: takenFrom.id }),
    },
  };
}

const reactionsOf = (
  visit: Visit | undefined,
  nameOf: (staff: string) => string,
): Pick<VisitView, 'reactions' | 'reactionToWrite'> => {
  const reactions = visit?.reactions ?? [];
  const paused = visit?.infusion?.paused;
  return {
    reactions: reactions.map((fact) => ({
      at: momentOf(fact),
      by: nameOf(fact.author.staff),
      says: entryText(fact),
    })),
    reactionToWrite: paused?.body.because === 'a reaction' && !reactions.some(({ seq }) => seq > paused.seq),
  };
};

/** What the pack is read against names the medicine and its dose, not only the regimen's short name. */
export const orderInWords = (prescription: Fact<'prescription'>, protocol: Protocol | undefined): string =>
  entryText(
    protocol === undefined || protocol.regimen.id !== prescription.body.regimen
      ? prescription
      : { ...prescription, body: { ...prescription.body, regimen: withMedicine(protocol.regimen) } },
  );

const withMedicine = ({ medicine, title }: Protocol['regimen']): string =>
  title.includes(medicine) ? title : `${medicine}, ${title}`;

/** The steps of the drip are for zoledronic acid 5 mg; what else is ordered is written as a dose given, after the go. */
const notDripped = ({ regimen }: Protocol): readonly string[] =>
  regimen.medicine === 'zoledronic acid 5 mg'
    ? []
    : [
        regimen.given === 'injection' && injectionOf(regimen.medicine) !== undefined
          ? `Ordered: ${regimen.title}. After the decision to go it is prepared${regimen.secondCheck === 'not asked for' ? '' : ', checked by another person'} and injected: the steps of the drip are not for it.`
          : `Ordered: ${regimen.title}. The cannula, pack and infusion below are not for it: after the decision to go, record it as a dose given on the person's page.`,
      ];

const momentOf = (fact: Fact): string => fact.at ?? fact.recordedAt;

function questionsOf(person: Person, visit: Visit | undefined, protocol: Protocol | undefined): VisitView['questions'] {
  return (protocol?.sheet.dayQuestions ?? []).map(({ id, asks, holdsOn }) => {
    const answer = visit?.checklist?.body.answers[id];
    const toldUs = toldBefore(person, id);
    return {
      id,
      asks,
      holdsOn,
      ...(answer === undefined
        ? {}
        : { answer: answer.answer, ...(answer.note === undefined ? {} : { note: answer.note }) }),
      ...(toldUs === undefined ? {} : { toldUs }),
    };
  });
}

/** What the notes already say that bears on a question; it is asked all the same. */
function toldBefore(person: Person, question: string): string | undefined {
  const { record, course } = person;
  const since: Day = course.lastDose?.on ?? (0 as Day);
  const ahead = toldAheadOf(record, question, since);
  const told =
    ahead === undefined
      ? undefined
      : `${shortDate(ahead.on)}, ${ahead.body.how}: ${toldAnswerText(ahead.body, question) ?? ''}`;
  return [told, noted(person, question, since)].filter((one) => one !== undefined).join('; ') || undefined;
}

function noted({ record }: Person, question: string, since: Day): string | undefined {
  const newest = (facts: readonly Fact[]): string | undefined => {
    const fact = facts.findLast(({ on }) => on >= since);
    return fact === undefined ? undefined : `${shortDate(fact.on)}: ${entryText(fact)}`;
  };
  switch (question) {
    case 'unwell-now':
    case 'ill-since-bloods':
      return newest(factsOf(record, 'illness'));
    case 'new-medicine':
    case 'other-bone-medicine':
      return newest(factsOf(record, 'medicine'));
    case 'teeth':
      return newest(factsOf(record, 'dental'));
    case 'thigh':
    case 'eye':
      return newest(factsOf(record, 'symptom'));
    default:
      return undefined;
  }
}

/** An answer of the day, or a dose put off, that tells of an illness no entry of these days does. */
function illnessToWrite({ record }: Person, visit: Visit | undefined, protocol: Protocol | undefined): boolean {
  if (visit === undefined) return false;
  const answers = visit.checklist?.body.answers ?? {};
  const told =
    visit.decision?.body.reasonCode === 'unwell' ||
    (protocol?.sheet.dayQuestions ?? []).some(
      ({ id, event, holdsOn }) => event !== undefined && answers[id]?.answer === holdsOn,
    );
  return told && !factsOf(record, 'illness').some(({ on }) => on > visit.on - illnessIsRecentDays);
}

const putOffValuesOf = ({ number }: Protocol): string[] => [
  `temperature ${number.putOffTemperature} degrees Celsius (${inUsUnits('putOffTemperature', String(number.putOffTemperature)) ?? 'no other unit'}) or more`,
  `systolic pressure below ${number.putOffSystolicLow} mmHg`,
  'a new irregular pulse',
];

/** What the go was for, where it is injected. */
function injectionViewOf(visit: Visit | undefined): Pick<VisitView, 'injection'> {
  const given = visit?.injection === undefined ? undefined : injectionOf(visit.injection.medicine);
  if (visit?.injection === undefined || given === undefined) return {};
  const { medicine, checkedByAnother } = visit.injection;
  const { product, packs, goes } = given;
  return { injection: { medicine, product, packs, goes, sites: [...injectionSites[goes]], checkedByAnother } };
}

function preparationOf(visit: Visit | undefined, nameOf: (staff: string) => string): Pick<VisitView, 'preparation'> {
  const preparation = visit?.preparation;
  if (preparation === undefined) return {};
  return {
    preparation: {
      entry: preparation.id,
      by: nameOf(preparation.author.staff),
      byStaff: preparation.author.staff,
      at: momentOf(preparation),
    },
  };
}

/** In how many minutes it runs as prepared and checked. It is a reading of the preparer's until the check agrees. */
const checkedMinutesOf = (visit: Visit | undefined): Pick<VisitView, 'checkedMinutes'> => {
  const minutes = visit?.check?.body.agrees === true ? visit.preparation?.body.minutes : undefined;
  return minutes === undefined ? {} : { checkedMinutes: minutes };
};
