/** The patient pack of one person: their own dates gathered, and the sheets made of them. */
import {
  type Day,
  type Fact,
  type ParacetamolRow,
  addDays,
  day as dayOf,
  factsOf,
  loadingsBy,
  paracetamolFor,
  plainDate,
  ratioText,
  remainingDoses,
  underRegimen,
  weightKg,
} from '@twelvemonth/clinical';
import { type PatientPackAsked, type PatientPackView, partsAsked } from '@twelvemonth/exchange';
import {
  type PackFacts,
  type PackParacetamol,
  patientPackHtml,
  patientPackOf,
  patientPackText,
} from '@twelvemonth/letters';
import { Refused } from '../problem.ts';
import type { Person } from '../register/people.ts';
import { bloodsBetween } from './bloods-between.ts';
import { isAboutDoseGiven, whyNoDoseAhead } from './last-or-next.ts';
import { bornInWords, fullName } from '../views/person-words.ts';

const theMedicine = 'zoledronic acid 5 mg';

type Made = ReturnType<typeof patientPackOf> & { readonly facts: PackFacts };

function made(person: Person, asked: PatientPackAsked): Made | Refused {
  const facts = packFactsOf(person, asked);
  if (facts instanceof Refused) return facts;
  return {
    facts,
    ...patientPackOf(facts, asked.easy === 'yes' ? { easy: true } : { parts: partsAsked(asked.parts) }),
  };
}

/** A document of its own; what cannot be printed is left out of it, and all of it left out is a refusal with the reasons. */
export function patientPackDocumentOf(person: Person, asked: PatientPackAsked): string | Refused {
  const pack = made(person, asked);
  if (pack instanceof Refused) return pack;
  return pack.pack.parts.length === 0
    ? new Refused(409, 'nothing-to-print', pack.leftOut.map(({ part, because }) => `${part}: ${because}`).join('; '))
    : patientPackHtml(pack.pack, asked.size);
}

export function patientPackViewOf(person: Person, asked: PatientPackAsked): PatientPackView | Refused {
  const found = made(person, asked);
  if (found instanceof Refused) return found;
  const { pack, leftOut, facts } = found;
  const wanted = asked.easy === 'yes' ? (['easy page'] as const) : partsAsked(asked.parts);
  return {
    patient: person.patient,
    seq: person.record.lastSeq,
    name: facts.person.name,
    born: facts.person.born,
    number: facts.person.number,
    today: plainDate(person.today),
    language: facts.language,
    wording: pack.version,
    parts: wanted.filter((part) => !leftOut.some((left) => left.part === part)),
    text: patientPackText(pack),
    leftOut: [...leftOut],
    ...(facts.paracetamol.told ? {} : { noAmount: whyNoAmount[facts.paracetamol.because] }),
  };
}

const whyNoAmount = {
  'not asked': 'nobody has asked about the liver, alcohol and being underfed',
  liver: 'a prescriber or pharmacist says how much, because of the liver',
  'weight not known': 'no measured weight is in the notes',
  'weight too old': 'the weight in the notes is older than the protocol lets it count',
  'below the table': 'no row of the protocol fits the weight',
  'no table': 'the protocol in force has no table of amounts with a source',
} as const;

function packFactsOf(person: Person, asked: PatientPackAsked): PackFacts | Refused {
  const { today, course, place, identity, unit, standing } = person;
  if (standing.standing === 'died')
    return new Refused(409, 'has-died', 'This person has died: nothing is printed for them.');
  if (unit?.protocol === undefined)
    return new Refused(409, 'no-protocol', 'No protocol is in force at this unit: no pack can be made.');
  if (course.regimen !== undefined && course.regimen.medicine !== theMedicine)
    return new Refused(
      409,
      'no-pack',
      `There is no pack for ${course.regimen.title}: this one is about the yearly drip.`,
    );
  const { number } = underRegimen(unit.protocol, course.regimen?.id);
  const last = course.lastDose;
  const given = isAboutDoseGiven(person) ? last : undefined;
  const isGiven = given !== undefined;
  const firstTimer = course.lifetime === (isGiven ? 1 : 0);
  return {
    language: asked.language ?? unit.unit.letters?.language ?? 'en-GB',
    demo: unit.unit.demo,
    unit: { name: unit.unit.name, telephone: unit.unit.telephone },
    person: { name: fullName(person), born: bornInWords(identity?.born), number: identity?.number ?? '' },
    today,
    protocolVersion: unit.protocol.version,
    firstTimer,
    visit: place === undefined ? undefined : { on: place.on, arriveAt: place.arriveAt },
    minutes: {
      drip: number.runningMinutesUsual,
      watch: firstTimer ? number.observeFirstMinutes : number.observeLaterMinutes,
    },
    bloods: isGiven ? undefined : bloodsBetween(person),
    vitaminDCourse: isGiven ? undefined : vitaminDCourseOf(person),
    noneAhead: whyNoDoseAhead(person),
    askAbout: medicinesToAskAbout(person),
    paracetamol: paracetamolOf(person, asked.liver, number.weightValidDays, unit.protocol.sheet.paracetamol),
    given: given === undefined ? undefined : { on: given.on, number: numberOf(given, person), batch: given.body.batch },
    next: isGiven ? nextOf(person) : undefined,
  };
}

/** A loading under way ends with the last of its doses; where one is needed and none runs, a prescriber starts it first. */
function vitaminDCourseOf(person: Person): PackFacts['vitaminDCourse'] {
  const { record, place, today } = person;
  const of = <Kind extends 'vitamin-d-loading' | 'vitamin-d-taken' | 'vitamin-d-loading-stopped'>(kind: Kind) =>
    factsOf(record, kind).filter(({ on }) => on <= today);
  const loadings = loadingsBy(of('vitamin-d-loading'), of('vitamin-d-taken'), of('vitamin-d-loading-stopped'));
  const running = loadings.findLast(({ state }) => state.is === 'running');
  if (running !== undefined && running === loadings.at(-1))
    return { is: 'taken', endsOn: remainingDoses(running, today).last };
  const steps = person.view(place?.on ?? today)?.nextSteps ?? [];
  return steps.some(({ kind }) => kind === 'loading dose') ? { is: 'to be started' } : undefined;
}

const numberOf = (dose: Fact<'dose'>, { course }: Person): number => {
  const index = course.doses.findIndex(({ id }) => id === dose.id);
  return index === -1 ? course.lifetime : index + 1;
};

/** Hard on the kidneys, lowering calcium, thinning the blood: what a nurse asks about, by the name in the notes. */
function medicinesToAskAbout({ record, today }: Person): readonly string[] {
  const sorts: ReadonlySet<string> = new Set(['nephrotoxic', 'calcium-lowering', 'anticoagulant']);
  const taken = factsOf(record, 'medicine').filter(
    ({ on, body }) =>
      on <= today && sorts.has(body.sort) && (body.stoppedOn === undefined || dayOf(body.stoppedOn) > today),
  );
  return [...new Set(taken.map(({ body }) => body.name))];
}

const milligramsInATablet = 500;
const milligramsInAGram = 1000;

/** By the table, for a measured weight that still counts and a liver that was asked about; otherwise no amount. */
function paracetamolOf(
  { record, today }: Person,
  liver: PatientPackAsked['liver'],
  weightValidDays: number,
  rows: readonly ParacetamolRow[],
): PackParacetamol {
  const weight = factsOf(record, 'weight').findLast(({ on, body }) => on <= today && body.method === 'measured');
  const kilograms = weight === undefined ? undefined : weightKg(weight.body.quantity);
  if (liver === undefined) return { told: false, because: 'not asked' };
  if (rows.length === 0) return { told: false, because: 'no table' };
  if (liver === 'trouble') return { told: false, because: 'liver' };
  if (weight === undefined || kilograms === undefined) return { told: false, because: 'weight not known' };
  if (addDays(weight.on, weightValidDays) < today) return { told: false, because: 'weight too old' };
  const found = paracetamolFor(rows, { weightKg: kilograms, liverRisk: false, egfr: newestEgfr(record, today) });
  if (found === undefined) return { told: false, because: 'below the table' };
  const { row, leastHoursBetween } = found;
  return {
    told: true,
    tabletsADose: [row.leastMilligrams / milligramsInATablet, row.mostMilligrams / milligramsInATablet],
    timesADay: row.timesADay,
    mostTabletsADay: (row.mostGramsADay * milligramsInAGram) / milligramsInATablet,
    hoursBetween: leastHoursBetween,
    weightKg: ratioText(kilograms, 1),
    weighedOn: weight.on,
  };
}

/** Only a signed one without a sign before it; none is treated as low. */
function newestEgfr(record: Person['record'], today: Day): number | undefined {
  const signed = new Set(factsOf(record, 'results-signed').flatMap(({ body }) => body.results));
  const newest = factsOf(record, 'result').findLast(({ on, body }) => on <= today && body.analyte === 'egfr');
  return newest === undefined || !signed.has(newest.id) || newest.body.quantity.comparator !== ''
    ? undefined
    : Number(newest.body.quantity.value);
}

/** Someone is called from the recall on; the day to worry is when bloods may first be drawn, still weeks before it is due. */
function nextOf({ course, today }: Person): PackFacts['next'] {
  if (course.review !== undefined)
    return course.anniversary === undefined || course.anniversary <= today
      ? undefined
      : { is: 'review', worryOn: course.anniversary };
  if (course.due === undefined || course.recall === undefined) return undefined;
  const { from, bloods } = course.recall;
  const worryOn = bloods === undefined || bloods.from < from ? from : bloods.from;
  return { is: 'dose', due: course.due, calledFrom: from, worryOn, bloods };
}
