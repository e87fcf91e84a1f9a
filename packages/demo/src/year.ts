/** One dose's worth of a life: the recall, the work, the place, the day, what comes after. */
import {
  type Day,
  type Place,
  type RequirementId,
  addDays,
  civilFromDay,
  courseOf,
  factsOf,
  latest,
  placeFrom,
  plainDate,
} from '@twelvemonth/clinical';
import { ringsBack } from './follow-up.ts';
import type { Life, Me } from './life.ts';
import { books, givesUp, moves } from './places.ts';
import {
  type Values,
  decidesInBestInterest,
  drawsBloods,
  prescribes,
  readinessNow,
  signsResults,
  worksTowards,
} from './work-up.ts';
import { type VisitOutcome, surpriseOf, visits } from './visit-life.ts';
import { protocolIn } from './world.ts';

export type YearOutcome = 'given' | 'part' | 'kidneys' | 'review' | 'stuck';

const MOST_VISITS = 5;
const MOST_WEEKS_WITHOUT_A_PLACE = 24;

/** Until a dose is given, or something only a person can decide stands in the way. */
export function* year(me: Me): Life<YearOutcome> {
  let placeless = 0;
  for (let attempt = 0; attempt < MOST_VISITS && placeless < MOST_WEEKS_WITHOUT_A_PLACE;) {
    yield* hasPrescription(me);
    const blocked = yield* unblocked(me);
    if (blocked !== undefined) return blocked;
    const place = yield* getsPlace(me);
    if (place === undefined) {
      placeless += 1;
      yield* me.days(6, 9);
      continue;
    }
    attempt += 1;
    const outcome = yield* comes(me, place);
    if (outcome === 'given' || outcome === 'part') return outcome;
    yield* afterPutOff(me, outcome);
  }
  return 'stuck';
}

function* hasPrescription(me: Me): Life {
  const newest = factsOf(me.record(), 'prescription').at(-1);
  const needed = plainDate(addDays(me.today, 80));
  if (newest !== undefined && newest.body.validUntil >= needed) return;
  yield* me.days(0, 6);
  yield* prescribes(me);
}

/** Settles what a person must settle; answers with what cannot be. */
function* unblocked(me: Me): Life<YearOutcome | undefined> {
  for (let round = 0; round < 4; round += 1) {
    const { noWindow } = readinessNow(me);
    if (noWindow === undefined) return undefined;
    const need = noWindow.needs[0]?.requirement;
    if (need === 'course') return 'review';
    if (need === 'kidney-function' && me.person.story === 'low clearance') return 'kidneys';
    const settle = need === undefined ? undefined : settled[need];
    if (settle === undefined) return 'stuck';
    yield* settle(me);
  }
  return readinessNow(me).noWindow === undefined ? undefined : 'kidneys';
}

const settled: Partial<Record<RequirementId, (me: Me) => Life>> = {
  'kidney-function': (me) => repeats(me, { creatinine: Math.round(me.person.creatinine * 0.94) }),
  calcium: (me) => repeats(me, { calcium: '2.34' }),
  *illness(me) {
    yield* me.days(4, 12);
    yield* me.writes(me.by('nurse'), 'well-since', { note: 'eating and drinking' });
  },
  prescription: (me) => prescribes(me),
};

function* repeats(me: Me, values: Values): Life {
  yield* me.days(5, 21);
  yield* drawsBloods(me, false, values);
  yield* signsResults(me);
}

/** Two habits: the work first and then a place, or a place first and the work in time for it. */
function* getsPlace(me: Me): Life<Place | undefined> {
  if (me.chance.isTrue(0.45)) {
    const early = yield* books(me, readinessNow(me));
    if (early !== undefined) {
      yield* readiesFor(me, early);
      return placeFrom(me.record(), me.today);
    }
  }
  const due = dueOf(me);
  // Bloods drawn long before the due date would run out before a place is found.
  if (due !== undefined && due > addDays(me.today, 40)) yield* me.officeDay(addDays(due, -me.chance.between(20, 38)));
  const ready = yield* worksTowards(me, addDays(me.today, 120));
  return yield* books(me, ready);
}

/** The work for a booked place; one in nine is not done in time, but for the demo's own day, which is shown with its people in their chairs. */
function* readiesFor(me: Me, place: Place): Life {
  if (me.chance.isTrue(0.11) && place.on !== me.world.today) return;
  const latest = addDays(place.on, -7);
  const drawOn = addDays(me.today, Math.max(1, Math.floor((latest - me.today) * me.chance.around(0.2, 0.95))));
  const loadingFirst = readinessNow(me, place.on).nextSteps.some(({ kind }) => kind === 'loading dose');
  if (!loadingFirst && drawOn > me.today && drawOn < place.on) yield* me.officeDay(drawOn);
  yield* worksTowards(me, addDays(place.on, -5));
}

/** From booking to the end of the day, with what may come between. */
function* comes(me: Me, booked: Place): Life<VisitOutcome> {
  let place = booked;
  if (place.on - me.today > 9 && me.chance.isTrue(0.14)) {
    yield* me.days(1, Math.max(1, place.on - me.today - 6));
    place = yield* moves(me, place, readinessNow(me));
  }
  if (place.on - me.today > 12 && me.chance.isTrue(0.04)) {
    yield* fallsIll(me, place);
    const now = placeFrom(me.record(), me.today);
    if (now === undefined) return 'put off';
    place = now;
  }
  // The demo's own day is shown with its people in their chairs.
  if (me.chance.isTrue(0.03) && place.on !== me.world.today) {
    yield* me.officeDay(addDays(place.on, 1));
    yield* me.writes(me.by('clerk'), 'call', {
      route: 'telephone',
      about: 'place',
      reached: true,
      note: me.chance.oneOf(['forgot', 'unwell, did not ring', 'transport did not come']),
    });
    return 'did not come';
  }
  return yield* visits(me, place, surpriseOf(me));
}

function* fallsIll(me: Me, place: Place): Life {
  yield* me.days(1, 4);
  yield* me.writes(me.by('nurse'), 'illness', {
    what: me.chance.oneOf(['vomiting for two days', 'chest infection, antibiotics', 'diarrhoea since the weekend']),
    sort: 'illness',
  });
  yield* me.days(1, 3);
  yield* givesUp(me, 'unwell', 'the patient');
  if (place.on <= me.today) return;
  yield* me.days(5, 12);
  yield* me.writes(me.by('nurse'), 'well-since', {});
}

/** The question of the checklist that a visit put off for this was put off by. */
const questionOf = { 'teeth and jaw': 'teeth', 'thigh, hip or groin pain': 'thigh', eye: 'eye' } as const;

function* afterPutOff(me: Me, outcome: VisitOutcome): Life {
  const { chance } = me;
  yield* me.days(1, 4);
  const decision = factsOf(me.record(), 'go-decision').at(-1)?.body;
  if (outcome === 'did not come' || decision === undefined) return;
  yield* me.writes(me.by('nurse'), 'call', {
    route: 'telephone',
    about: 'place',
    reached: true,
    callBackOn: plainDate(addDays(me.today, chance.between(7, 21))),
  });
  if (decision.reasonCode === 'unwell') {
    yield* me.writes(me.by('nurse'), 'illness', { what: 'fever and cough on the day', sort: 'illness' });
    yield* me.days(7, 15);
    yield* me.writes(me.by('nurse'), 'well-since', {});
  } else if (
    decision.reasonCode === 'teeth and jaw' ||
    decision.reasonCode === 'thigh, hip or groin pain' ||
    decision.reasonCode === 'eye'
  ) {
    yield* me.days(10, 40);
    const asked = factsOf(me.record(), 'checklist').at(-1);
    if (asked !== undefined)
      yield* me.writes(
        me.by(decision.reasonCode === 'teeth and jaw' ? 'nurse in charge' : 'prescriber'),
        'symptom-cleared',
        {
          entry: asked.id,
          question: questionOf[decision.reasonCode],
          finding:
            decision.reasonCode === 'teeth and jaw'
              ? 'dentist: root filled, healed and seen'
              : decision.reasonCode === 'eye'
                ? 'eye seen: conjunctivitis, gone'
                : 'X-ray of both femurs clear, muscular',
        },
      );
  } else {
    yield* me.days(6, 20);
  }
  yield* ringsBack(me);
}

/** The day the next dose is due, as the notes say it; undefined while a review comes first. */
export function dueOf(me: Me): Day | undefined {
  return courseOf(me.record(), protocolIn(me.world, me.person.unit, me.today), me.today).due;
}

/** Someone from the desk rings before the dose is due. */
/** The oldest of the demo. */
const livesInACareHome = ({ person, today }: Me): boolean =>
  civilFromDay(today).year - Number(person.born.slice(0, 4)) >= 86;
export const careHome = {
  who: 'Heron House, nurse on duty',
  relation: 'care home',
  telephone: '01632 960355',
  mayBeTold: 'yes, they agreed',
  speakToFirst: true,
} as const;

export function* isRecalled(me: Me, due: Day): Life {
  yield* me.officeDay(addDays(due, -70 + me.chance.between(0, 18)));
  if (me.chance.isTrue(0.25)) {
    yield* me.writes(me.by('clerk'), 'call', { route: 'telephone', about: 'recall', reached: false });
    yield* me.days(2, 6);
  }
  const clerk = me.by('clerk');
  yield* me.writes(clerk, 'call', { route: 'telephone', about: 'recall', reached: true, note: 'wants to come' });
  yield* me.writes(clerk, 'recall-talk', { toldBy: 'the person', wants: 'yes', address: 'right', bloods: 'form sent' });
  if (livesInACareHome(me)) yield* me.writes(clerk, 'contact-person', careHome);
  yield* me.writes(me.by('clerk'), 'vitamin-d-maintenance', { taken: me.chance.isTrue(0.93) });
  if (latest(me.record(), 'consent')?.body.decision === 'best interest') yield* decidesInBestInterest(me);
}
