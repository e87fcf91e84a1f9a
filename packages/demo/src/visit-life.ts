/** One attendance, step by step, with its people and its minutes; what can go wrong does, now and then. */
import {
  type Author,
  type GoVerdict,
  type Place,
  addDays,
  goVerdict,
  latest,
  lineLookedAlong,
  plainDate,
} from '@twelvemonth/clinical';
import type { BodyOfKind } from '@twelvemonth/clinical';
import { atTime } from './clock.ts';
import type { Life, Me } from './life.ts';
import { packFor } from './packs.ts';
import { inRole, nursesAt } from './staff.ts';
import { weighs } from './work-up.ts';
import { protocolIn, sessionIn } from './world.ts';

export type VisitOutcome = 'given' | 'part' | 'put off' | 'did not come';
type ReasonCode = NonNullable<BodyOfKind<'go-decision'>['reasonCode']>;

/** What the day brings besides the ordinary. */
export type Surprise =
  | 'none'
  | 'unwell'
  | 'teeth'
  | 'thigh'
  | 'changed mind'
  | 'no cannula'
  | 'swelling'
  | 'part dose'
  | 'hot';

export function surpriseOf(me: Me): Surprise {
  const luck = me.chance.next();
  const limits: readonly (readonly [number, Surprise])[] = [
    [0.025, 'unwell'],
    [0.035, 'teeth'],
    [0.041, 'thigh'],
    [0.05, 'changed mind'],
    [0.056, 'no cannula'],
    [0.075, 'swelling'],
    [0.082, 'part dose'],
    [0.088, 'hot'],
  ];
  return limits.find(([until]) => luck < until)?.[1] ?? 'none';
}

export function* visits(me: Me, place: Place, surprise: Surprise, minutesLate?: number): Life<VisitOutcome> {
  const { chance, person } = me;
  const session = sessionIn(me.world, place.session);
  const due = atTime(place.on, place.arriveAt);
  yield* me.until(due + (minutesLate ?? (chance.isTrue(0.07) ? chance.between(15, 35) : chance.between(-8, 6))));
  if (session === undefined || session.cancelled !== undefined) return 'did not come';
  const nurses = nursesAt(person.unit);
  const [giver, checker] = pair(nurses, chance.between(0, 7));
  const chair = takesChair(me);
  yield* me.marks(me.by('assistant'), 'arrived', {
    session: place.session,
    identifiers: chance.isTrue(0.5) ? ['full name', 'birth date'] : ['full name', 'number'],
    chair,
  });
  yield* me.minutes(2, 6);
  yield* weighs(me);
  yield* me.marks(me.by('assistant'), 'observations', observations(me, surprise));
  yield* me.minutes(4, 9);
  yield* me.marks(giver, 'checklist', { answers: answers(me, surprise) });
  yield* me.minutes(1, 3);
  const outcome = yield* decidesAndGives(me, giver, checker, surprise);
  me.world.chairs[person.unit].delete(chair);
  return outcome;
}

const pair = (nurses: readonly Author[], turn: number): readonly [Author, Author] => {
  const giver = nurses[turn % nurses.length];
  const checker = nurses[(turn + 1) % nurses.length];
  if (giver === undefined || checker === undefined || giver.staff === checker.staff)
    throw new RangeError('a unit has two nurses');
  return [giver, checker];
};

function takesChair(me: Me): number {
  const used = me.world.chairs[me.person.unit];
  let chair = 1;
  while (used.has(chair)) chair += 1;
  used.add(chair);
  return chair;
}

function observations({ chance }: Me, surprise: Surprise): BodyOfKind<'observations'> {
  return {
    pulsePerMinute: chance.between(58, 92),
    systolicMmHg: chance.between(112, 158),
    diastolicMmHg: chance.between(62, 88),
    temperatureCelsius: surprise === 'hot' ? 38.2 : chance.between(361, 372) / 10,
    saturationPercent: chance.between(94, 99),
    newIrregularPulse: false,
    when: 'before',
  };
}

function answers(me: Me, surprise: Surprise): BodyOfKind<'checklist'>['answers'] {
  const holding: Partial<Record<Surprise, string>> = {
    unwell: 'unwell-now',
    teeth: 'teeth',
    thigh: 'thigh',
    'changed mind': 'consent-today',
  };
  const questions = protocolIn(me.world, me.person.unit, me.today)?.sheet.dayQuestions ?? [];
  return Object.fromEntries(
    questions.map(({ id, holdsOn }) => {
      const good = holdsOn === 'yes' ? 'no' : 'yes';
      return [id, { answer: holding[surprise] === id ? holdsOn : good }] as const;
    }),
  );
}

function* decidesAndGives(me: Me, giver: Author, checker: Author, surprise: Surprise): Life<VisitOutcome> {
  const context = me.world === undefined ? undefined : me.context();
  const verdict = context === undefined ? undefined : goVerdict(me.record(), context, me.today);
  if (verdict?.verdict !== 'ready') {
    yield* putsOff(me, giver, reasonOf(surprise, verdict), verdict?.headline);
    return 'put off';
  }
  yield* me.does(giver, { name: 'decide', patient: me.patient, decision: 'go' });
  yield* me.minutes(3, 8);
  if (!(yield* placesCannula(me, giver, surprise))) {
    yield* putsOff(me, giver, 'no cannula', 'three tries, no vein; come again well warmed and having drunk');
    return 'put off';
  }
  yield* me.marks(giver, 'flush', { milliliters: 10, ranFreely: true, calciumInLine: false, when: 'before' });
  yield* me.minutes(1, 4);
  yield* preparesAndChecks(me, giver, checker);
  return yield* infuses(me, giver, surprise);
}

function* placesCannula(me: Me, giver: Author, surprise: Surprise): Life<boolean> {
  const { chance } = me;
  const avoid = latest(me.record(), 'contact')?.body.armToAvoid;
  const sides =
    avoid === 'left'
      ? (['right forearm', 'right hand'] as const)
      : avoid === 'right'
        ? (['left forearm', 'left hand'] as const)
        : (['right forearm', 'left forearm', 'right hand'] as const);
  const site = chance.oneOf(sides);
  if (surprise === 'no cannula') {
    yield* me.marks(giver, 'cannula', { site, gauge: '22', tries: 3, placed: false });
    yield* me.minutes(2, 5);
    return false;
  }
  yield* me.marks(giver, 'cannula', { site, gauge: '22', tries: chance.isTrue(0.28) ? 2 : 1, placed: true });
  yield* me.minutes(1, 2);
  return true;
}

function* preparesAndChecks(me: Me, giver: Author, checker: Author): Life {
  const pack = packFor(me);
  const { batch, expiresOn } = pack;
  yield* me.marks(giver, 'preparation', {
    ...pack,
    minutes: 30,
    identifiers: ['full name', 'birth date'],
    clearAndColourless: true,
  });
  yield* me.minutes(1, 5);
  const preparation = latest(me.record(), 'preparation');
  if (preparation === undefined) throw new RangeError('a preparation was written and is not there');
  yield* me.does(checker, {
    name: 'second check',
    patient: me.patient,
    preparation: preparation.id,
    reading: {
      product: 'zoledronic acid 5 mg in 100 mL',
      batchLastFour: batch.slice(-4),
      expiryMonth: expiresOn.slice(0, 7),
      pumpMillilitersPerHour: 200,
      identifiers: ['full name', 'number'],
    },
  });
  yield* me.minutes(1, 2);
}

function* infuses(me: Me, giver: Author, surprise: Surprise): Life<VisitOutcome> {
  const { chance, patient } = me;
  yield* me.does(giver, {
    name: 'start infusion',
    patient,
    plannedMinutes: 30,
    identifiers: ['full name', 'birth date'],
    alongTheLine: lineLookedAlong,
  });
  if (surprise === 'swelling' || surprise === 'part dose') {
    yield* me.minutes(6, 12);
    yield* me.does(giver, { name: 'pause infusion', patient, reason: 'swelling at the site, looked' });
    yield* me.minutes(4, 9);
    if (surprise === 'swelling')
      yield* me.does(giver, { name: 'resume infusion', patient, alongTheLine: lineLookedAlong });
  }
  const part = surprise === 'part dose';
  if (!part) yield* me.minutes(30, 36);
  yield* me.does(giver, {
    name: 'finish infusion',
    patient,
    milliliters: part ? chance.oneOf([20, 30, 40]) : 100,
    ...(part ? { stoppedBecause: 'swelling, cannula lost, no other vein' } : {}),
  });
  yield* me.minutes(1, 4);
  if (!part) yield* me.marks(giver, 'flush', { milliliters: 10, ranFreely: true, when: 'after' });
  yield* me.marks(giver, 'cannula-removed', { site: part ? 'swollen' : 'looks well' });
  yield* me.minutes(14, 30);
  yield* me.marks(me.by('assistant'), 'observed', { minutes: 30, well: true });
  yield* me.minutes(1, 8);
  yield* me.marks(me.by('assistant'), 'left', { cardGiven: true, leaves: 'fit to go' });
  yield* me.minutes(10, 90);
  yield* letter(
    me,
    giver,
    'dose given',
    'Zoledronic acid 5 mg was given today. Please do not prescribe another bone tablet beside it.',
  );
  return part ? 'part' : 'given';
}

export function* letter(
  me: Me,
  by: Author,
  about: BodyOfKind<'letter'>['about'],
  text: string,
  to: BodyOfKind<'letter'>['to'] = 'family doctor',
): Life {
  const opening = to === 'patient' ? 'Hello' : to === 'family doctor' ? 'Dear Doctor' : 'Dear colleague';
  yield* me.writes(by, 'letter', { to, about, version: '1', text: `${opening}\n\n${text}\n\nThe day unit` });
}

const byRequirement: Readonly<Record<string, ReasonCode>> = {
  'kidney-function': 'bloods',
  calcium: 'bloods',
  'vitamin-d': 'vitamin D',
  illness: 'unwell',
  interval: 'too early',
  prescription: 'no prescription',
  consent: 'no consent',
};

function reasonOf(surprise: Surprise, verdict: GoVerdict | undefined): ReasonCode {
  const told: Partial<Record<Surprise, ReasonCode>> = {
    unwell: 'unwell',
    hot: 'unwell',
    teeth: 'teeth and jaw',
    thigh: 'thigh, hip or groin pain',
    'changed mind': 'changed their mind',
  };
  const reason = told[surprise];
  if (reason !== undefined) return reason;
  const first = verdict?.requirements.find((one) => one.verdict === 'not ready' || one.verdict === 'cannot say');
  if (first === undefined) return 'other';
  return first.requirement === 'kidney-function' && first.verdict === 'not ready'
    ? 'kidney function'
    : (byRequirement[first.requirement] ?? 'other');
}

const onlyToday: ReadonlySet<ReasonCode> = new Set(['unwell', 'teeth and jaw', 'no cannula', 'changed their mind']);
const nextAfter: Partial<Record<ReasonCode, string>> = {
  bloods: 'bloods again, then another place',
  'kidney function': 'creatinine and weight again, then ask the prescriber',
  calcium: 'calcium again, then ask the prescriber',
  'vitamin D': 'loading, then calcium, then another place',
  unwell: 'ring when they are well, then bloods again',
  'teeth and jaw': 'ask the dentist by letter, then ring them',
  'thigh, hip or groin pain': 'X-ray of the whole thigh, the prescriber looks at it',
  'no prescription': 'ask the prescriber for a prescription',
  'changed their mind': 'ring them and ask how they see it now',
};

function* putsOff(me: Me, giver: Author, reasonCode: ReasonCode, note: string | undefined): Life {
  yield* me.does(giver, {
    name: 'decide',
    patient: me.patient,
    decision: 'put off',
    reasonCode,
    ...(note === undefined ? {} : { note }),
    couldHaveBeenSeen: onlyToday.has(reasonCode) ? 'only today' : 'in the last days',
    nextStep: nextAfter[reasonCode] ?? 'ring them and offer another place',
    nextBy: plainDate(addDays(me.today, 7)),
    nextOwner: 'nurse',
    tellsThePatient: 'told at the chair',
  });
  yield* me.minutes(3, 12);
  yield* me.marks(inRole('assistant', me.person.unit, 0), 'left', { cardGiven: true, leaves: 'fit to go' });
  yield* me.minutes(10, 60);
  yield* letter(me, giver, 'put off', `The dose planned for today was put off: ${reasonCode}.`);
}
