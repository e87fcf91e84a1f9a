/** A whole life in the register, from the referral to wherever it has come by the demo's day. */
import { isAskedAfter } from './aftercare-life.ts';
import {
  type BodyOfKind,
  type Day,
  addDays,
  addMonths,
  courseOf,
  factsOf,
  placeFrom,
  plainDate,
} from '@twelvemonth/clinical';
import { looksBeforeReview } from './before-review.ts';
import { hadDenosumab, hadWardDose, isAccepted, isBroughtIn, isReferred, isReturned } from './begin.ts';
import { drawsWhatIsDue } from './follow-up.ts';
import { HasDied, type Life, type Me } from './life.ts';
import { givesUp } from './places.ts';
import { letter } from './visit-life.ts';
import { asksEverything, consents, drawsBloods, prescribes, signsResults } from './work-up.ts';
import { protocolIn } from './world.ts';
import { type YearOutcome, dueOf, isRecalled, year } from './year.ts';

export function* story(me: Me, notTheSameAs: readonly string[] = []): Life {
  try {
    yield* lives(me, notTheSameAs);
  } catch (ended) {
    if (!(ended instanceof HasDied)) throw ended;
    yield* dies(me);
  }
}

/** Known some days later, by a letter or a call; the place goes to someone else. */
function* dies(me: Me): Life {
  const { diesOn } = me.person;
  if (diesOn === undefined || me.record().lastSeq === 0) return;
  me.now = (yield { at: Math.max(me.now + 1, addDays(diesOn, me.chance.between(1, 16)) * 1440 + 10 * 60) }).now;
  yield* me.writes(
    me.by('clerk'),
    'died',
    { source: me.chance.oneOf(['family doctor', 'daughter rang', 'letter returned', 'ward']) },
    diesOn,
  );
  if (me.chance.isTrue(0.8)) yield* givesUp(me, 'has died', 'the unit');
}

function* lives(me: Me, notTheSameAs: readonly string[]): Life {
  const { person, chance } = me;
  yield* begins(me, notTheSameAs);
  if (person.story === 'returned') return;
  yield* me.days(2, 12);
  yield* asksEverything(me);
  if (person.story === 'no to the medicine' || person.story === 'no to all contact') return yield* saysNo(me);
  if (person.story === 'leaves denosumab') yield* hadDenosumab(me, chance.between(4, 6), chance.between(2, 6));
  yield* me.days(1, 15);
  yield* drawsBloods(me, chance.isTrue(0.85));
  yield* me.days(0, 4);
  yield* signsResults(me);
  yield* me.days(1, 14);
  yield* consents(me);
  yield* prescribes(me);
  yield* years(me);
}

function* begins(me: Me, notTheSameAs: readonly string[]): Life {
  const { person, chance } = me;
  yield* me.officeDay(me.today);
  if (person.story === 'brought in') {
    const last = addDays(me.today, -chance.between(120, 330));
    return yield* isBroughtIn(me, chance.isTrue(0.5) ? [addMonths(last, -12), last] : [last]);
  }
  yield* isReferred(
    me,
    person.story === 'leaves denosumab' ? { tier: 'first in line', reason: 'denosumab stopped: replace in time' } : {},
    notTheSameAs,
  );
  if (person.story === 'inpatient dose') yield* hadWardDose(me);
  yield* person.story === 'returned' ? isReturned(me) : isAccepted(me);
}

function* saysNo(me: Me): Life {
  yield* me.days(3, 20);
  const all = me.person.story === 'no to all contact';
  yield* me.writes(me.by('nurse'), 'refusal', {
    to: all ? 'all contact' : 'this medicine',
    words: all
      ? 'please do not ring or write again'
      : me.chance.oneOf(['I have read about jaws and I will not', 'no more drips, I am eighty-nine']),
  });
}

/** Dose after dose; between them a year of waiting. */
function* years(me: Me): Life {
  const { person } = me;
  for (let round = 0; round < 10; round += 1) {
    const due = dueOf(me);
    if (due !== undefined && due > addDays(me.today, 20)) {
      if (yield* leavesBetween(me, due)) return;
      yield* isRecalled(me, due);
    }
    const outcome = yield* year(me);
    if (outcome === 'given' || outcome === 'part') yield* afterDose(me, outcome);
    else if (outcome === 'stuck')
      return yield* closes(me, 'could not be treated here after six attempts; with the family doctor');
    if (outcome === 'kidneys')
      return yield* goesElsewhere(me, 'denosumab with the family doctor', 'clearance below the limit');
    if (reviewWaits(me) || outcome === 'review') {
      if (!(yield* isReviewed(me))) return;
    }
    if (person.story === 'closes' && round === 1)
      return yield* closes(me, 'moved to a nursing home that looks after it; agreed with the family');
  }
}

const reviewWaits = (me: Me): boolean =>
  courseOf(me.record(), protocolIn(me.world, me.person.unit, me.today), me.today).review !== undefined;

/** Between two doses some say no, move away, or cannot be found any more. Answers true if the life here is over. */
function* leavesBetween(me: Me, due: Day): Life<boolean> {
  const { person, chance } = me;
  const doses = factsOf(me.record(), 'dose').length;
  if (chance.isTrue(0.015)) {
    yield* me.officeDay(addDays(me.today, chance.between(20, 200)));
    const site = chance.oneOf(['hip', 'spine'] as const);
    const broken = addDays(me.today, -chance.between(2, 9));
    const treated = site === 'hip' ? 'repaired' : 'not known';
    yield* me.writes(me.by('nurse'), 'fracture', { site, dateKnown: true, treated }, broken);
    if (site === 'hip') yield* me.writes(me.by('nurse'), 'surgery', { what: 'hip repair' }, addDays(broken, 1));
    return !(yield* isReviewed(me));
  }
  if (person.story === 'no second dose' && doses === 1) {
    yield* me.officeDay(addDays(due, -chance.between(20, 60)));
    yield* me.writes(me.by('nurse'), 'refusal', {
      to: 'this dose',
      words: chance.oneOf([
        'three days in bed after the last one',
        "not before my grandson's wedding",
        'not this year',
      ]),
      askAgainOn: plainDate(addDays(me.today, chance.between(60, 200))),
    });
    if (chance.isTrue(0.5)) return true;
    yield* me.days(100, 220);
    yield* me.writes(me.by('nurse'), 'reopened', { reason: 'rang us, wants the next dose' });
    yield* consents(me);
    return false;
  }
  if (person.story === 'moves away' && chance.isTrue(0.6)) {
    yield* me.officeDay(addDays(me.today, chance.between(30, 240)));
    yield* me.writes(me.by('clerk'), 'transfer-out', {
      to: chance.oneOf([
        'the bone clinic at Farrowby Sands',
        'the day unit at Ellonmouth',
        'their new family doctor at Netherquay',
      ]),
      chaseOn: plainDate(addDays(me.today, 28)),
    });
    yield* letter(
      me,
      me.by('nurse'),
      'transfer',
      'Care goes over to you. Please tell us that you have it.',
      'other service',
    );
    // Some have to be rung more than once.
    yield* chance.isTrue(0.55) ? me.days(10, 60) : me.days(240, 420);
    yield* me.writes(me.by('clerk'), 'transfer-acknowledged', { by: 'their booking office, by letter' });
    return true;
  }
  if (person.story === 'drifts') {
    yield* me.officeDay(addDays(due, -chance.between(10, 40)));
    yield* me.writes(me.by('clerk'), 'call', { route: 'telephone', about: 'recall', reached: false });
    yield* me.officeDay(addDays(due, chance.between(60, 130)));
    return false;
  }
  if (person.story === 'out of reach') {
    yield* me.officeDay(addDays(due, -40));
    for (const route of ['telephone', 'telephone', 'letter', 'family doctor'] as const) {
      yield* me.writes(me.by('clerk'), 'call', { route, about: 'recall', reached: false });
      yield* me.days(6, 12);
    }
    yield* me.writes(me.by('nurse'), 'cannot-be-reached', {
      tried: 'two calls, a letter, the family doctor',
      lookAgainOn: plainDate(addDays(me.today, 90)),
    });
    yield* letter(me, me.by('nurse'), 'no answer', 'We could not reach you. Please ring us.', 'patient');
    yield* letter(me, me.by('nurse'), 'no answer', 'We could not reach this person about the next dose.');
    return true;
  }
  return false;
}

function* afterDose(me: Me, outcome: YearOutcome): Life {
  const { chance } = me;
  const doses = factsOf(me.record(), 'dose').filter(({ body }) => body.medicine === 'zoledronic acid 5 mg').length;
  if (outcome === 'part') {
    yield* chance.isTrue(0.75) ? me.days(2, 9) : me.days(12, 30);
    const part = factsOf(me.record(), 'dose').at(-1);
    if (part !== undefined)
      yield* me.writes(me.by('prescriber'), 'prescriber-decision', {
        question: (part.body.partMilliliters ?? 0) >= 60 ? 'part dose counts' : 'part dose does not count',
        about: part.id,
        reason: `${part.body.partMilliliters ?? 0} of 100 mL were given`,
      });
  }
  if (doses === 1 || chance.isTrue(0.2)) {
    yield* me.days(1, 3);
    yield* isAskedAfter(me, chance.isTrue(doses === 1 ? 0.4 : 0.07));
  }
  yield* drawsWhatIsDue(me);
}

/** A prescriber looks at the course. Answers false if the life here is over, or the review is still to come. */
function* isReviewed(me: Me): Life<boolean> {
  const { chance } = me;
  yield* looksBeforeReview(me);
  yield* me.officeDay(addDays(me.today, chance.isTrue(0.6) ? chance.between(14, 120) : chance.between(200, 420)));
  const luck = chance.next();
  const reviewed = (body: BodyOfKind<'course-review'>): Life =>
    me.writes(me.by('prescriber'), 'course-review', { ...body, capacity: 'specialist' });
  if (luck < 0.46) {
    const doses = courseOf(me.record(), protocolIn(me.world, me.person.unit, me.today), me.today).doses.length;
    yield* reviewed({
      outcome: 'carry on',
      toDoses: Math.min(10, Math.max(6, doses + 2)),
      reason: 'hip T -2.8, falls',
    });
    return true;
  }
  if (luck < 0.86) {
    const reviewOn = addMonths(me.today, chance.oneOf([18, 24, 36]));
    yield* reviewed({
      outcome: 'planned break',
      reviewOn: plainDate(reviewOn),
      triggers: 'a fracture, a new steroid, hip T below -2.5',
      reason: 'planned doses given, T better than -2.5',
    });
    yield* letter(me, me.by('nurse'), 'review', `A break from treatment until ${plainDate(reviewOn)}.`);
    yield* me.officeDay(addDays(reviewOn, chance.between(5, 60)));
    if (chance.isTrue(0.3)) return yield* endsAfterBreak(me);
    yield* reviewed({ outcome: 'new course', plannedDoses: 3, reason: 'T fallen to -2.7' });
    return true;
  }
  if (luck < 0.94) {
    yield* goesElsewhere(me, 'denosumab with the family doctor', 'new spine fracture on treatment');
    return false;
  }
  yield* reviewed({ outcome: 'stop', reason: 'frail, no longer of use to her' });
  yield* me.days(5, 30);
  yield* closes(me, 'treatment ended by review, told the family doctor');
  return false;
}

function* endsAfterBreak(me: Me): Life<boolean> {
  yield* me.writes(me.by('prescriber'), 'course-review', {
    outcome: 'stop',
    capacity: 'specialist',
    reason: 'no fracture in the break, T stable',
  });
  yield* me.days(3, 20);
  yield* closes(me, 'treatment finished, T stable after the break');
  return false;
}

function* goesElsewhere(me: Me, to: string, reason: string): Life {
  yield* me.days(1, 4);
  yield* signsResults(me);
  yield* me.days(4, 20);
  yield* givesUp(me, 'other treatment', 'the unit');
  yield* me.writes(me.by('prescriber'), 'course-review', {
    outcome: 'other treatment',
    capacity: 'specialist',
    to,
    dueOn: plainDate(addMonths(me.today, 6)),
    reason,
  });
  yield* me.days(150, 230);
  yield* closes(me, 'the family doctor gives the other medicine and keeps its dates');
}

function* closes(me: Me, reason: string): Life {
  yield* me.days(2, 14);
  if (placeFrom(me.record(), me.today) !== undefined) yield* givesUp(me, 'care ends here', 'the unit');
  yield* me.writes(me.by('nurse in charge'), 'closed', { reason });
}
