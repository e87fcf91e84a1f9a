/**
 * Where a person is in the course of care, on a given day. Exactly one standing, with the role that owns the next move and
 * the date by which. The entries say what is held (transitions.ts); the day says the rest: a booked place, someone who is
 * here, a due date that has passed, a break that is over. A ledger that no entry brought into care is `not accounted for`.
 */
import { type Day, type PlainDate, addDays, addMonths, day, shortDate } from '../calendar/day.ts';
import { clockOf } from '../clock/clock.ts';
import { samplesDue } from '../clock/samples-due.ts';
import { type Course, courseOf } from '../course/course.ts';
import type { Role } from '../ledger/role.ts';
import { type Protocol, underRegimen } from '../protocol/protocol.ts';
import { noAfterConsent } from '../record/no-after-consent.ts';
import { type Fact, type SubjectRecord, factsOf, latest } from '../record/patient-record.ts';
import { placeFrom } from '../visit/place.ts';
import { visitOn } from '../visit/visit.ts';
import { type LookAgainKey, lookAgainOn } from './look-again.ts';
import type { Standing, StandingNow } from './standings.ts';
import { type Held, eventOf, transitions } from './transitions.ts';

export type HeldStanding = { readonly held: Held; readonly since: Day; readonly by: Fact | undefined };

/** What the entries say, in the order of the days on which they were true, up to a day. */
export function heldBy(record: SubjectRecord, until: Day): HeldStanding {
  let standing: HeldStanding = { held: 'not accounted for', since: record.all[0]?.on ?? until, by: undefined };
  for (const fact of record.all) {
    if (fact.on > until) break;
    const event = eventOf(fact);
    const to = event === undefined ? undefined : transitions[event][standing.held];
    if (to !== undefined && (to !== standing.held || restates.has(fact.kind)))
      standing = { held: to, since: fact.on, by: fact };
  }
  return standing;
}

/** Said again, these name a new date or reason though the standing stays. */
const restates: ReadonlySet<string> = new Set([
  'refusal',
  'cannot-be-reached',
  'transfer-out',
  'transfer-acknowledged',
  'go-decision',
  'course-review',
]);

/** The unit that looks after the person: the newest referral's, else that of the newest place. Empty: not known. */
export const unitOfPatient = (record: SubjectRecord): string =>
  latest(record, 'referral')?.body.unit ?? latest(record, 'place-booked')?.body.unit ?? '';

/** The standing on a day. `protocol`: the one in force at the person's unit that day; without one no due date can be told. */
export function standingOf(record: SubjectRecord, protocol: Protocol | undefined, today: Day): StandingNow {
  const held = heldBy(record, today);
  const at = { record, protocol, today, held, unit: unitOfPatient(record) };
  if (isUnderCare(held.held)) return underCare(at);
  if (held.held === 'closed') return closed(at);
  return beforeClock(at, held.held === 'on planned break' ? onBreak(at) : settled(at, held.held));
}

const underCareHeld = ['treated elsewhere', 'in care', 'put off', 'in review'] as const;
type UnderCare = (typeof underCareHeld)[number];
const isUnderCare = (held: Held): held is UnderCare => underCareHeld.some((one) => one === held);

type At = {
  readonly record: SubjectRecord;
  readonly protocol: Protocol | undefined;
  readonly today: Day;
  readonly held: HeldStanding;
  readonly unit: string;
};

const standing = (
  at: At,
  name: Standing,
  says: string,
  owner: Role | 'nobody',
  on: Day | undefined,
  since = at.held.since,
): StandingNow => ({
  standing: name,
  says: says === '' ? name : `${name}: ${says}`,
  owner,
  unit: at.unit,
  on,
  since,
});

function underCare(at: At): StandingNow {
  const { record, today, held } = at;
  const visit = visitOn(record, today);
  if (visit !== undefined && !visit.over) {
    return standing(
      at,
      'here today',
      visit.putOff ? 'put off, not gone home yet' : '',
      'nurse in charge',
      today,
      today,
    );
  }
  const place = placeFrom(record, visit === undefined ? today : addDays(today, 1));
  if (place !== undefined) {
    return standing(
      at,
      'booked',
      `${shortDate(place.on)}, ${place.arriveAt}`,
      'nurse in charge',
      place.on,
      place.bookedOn,
    );
  }
  if (held.held === 'put off') return beforeClock(at, putOff(at));
  const course = courseOf(record, at.protocol, today);
  return beforeClock(at, onCourse(at, course));
}

/** A medicine that waits for its successor, or a sample due after a dose, waits for nobody: the next look is no later than they say. */
function beforeClock(at: At, now: StandingNow): StandingNow {
  const { record, protocol, today } = at;
  if (protocol === undefined) return now;
  const clock = clockOf(record, protocol, today, undefined);
  const after = clock === undefined ? now : noLaterThan(now, clock.says, clock.actBy);
  return samplesDue(record, protocol, today).reduce((told, { says, by }) => noLaterThan(told, says, by), after);
}

function noLaterThan(now: StandingNow, saying: string, by: Day): StandingNow {
  if (now.on === undefined) return now;
  const says = `${now.says}${now.says === now.standing ? ': ' : '; '}${saying}`;
  return { ...now, says, on: Math.min(now.on, by) as Day };
}

function onCourse(at: At, course: Course): StandingNow {
  const { held } = at;
  const { review, regimen, lastDose } = course;
  if (held.held === 'in review')
    return inReview(at, course.review?.says ?? 'a review ended the treatment: close, or begin again', held.since);
  const isGiven = review?.because === 'planned doses given';
  if (regimen?.lastsMonths !== undefined && lastDose !== undefined && (review === undefined || isGiven))
    return daily(at, lastDose, regimen.lastsMonths);
  if (isGiven && regimen?.countedApart === true) {
    const says = 'the single dose was given; nobody is recalled: look at its effect, then close';
    return inReview(at, says, review.since, course.anniversary);
  }
  if (review !== undefined) return inReview(at, review.says, review.since, course.anniversary);
  return course.doses.length === 0 ? beforeFirst(at) : betweenDoses(at, course);
}

function putOff(at: At): StandingNow {
  const decision = at.held.by as Fact<'go-decision'> | undefined;
  const { nextStep, nextBy, nextOwner } = decision?.body ?? {};
  // A day far off is looked at before, as the protocol says: a slip of the year loses nobody.
  const on = callBackAfter(at) ?? noLater(nextBy, lookAgainOn(at, 'lookAgainPutOffDays', at.held.since));
  const reason = decision?.body.reasonCode ?? 'no reason recorded';
  const next = nextStep === undefined || nextBy === undefined ? '' : `; ${nextStep}, by ${shortDate(day(nextBy))}`;
  return standing(
    at,
    'put off',
    `${reason}${next}; look again on ${shortDate(on)}`,
    nextOwner ?? 'nurse in charge',
    on,
  );
}

const noLater = (named: PlainDate | undefined, last: Day): Day =>
  named === undefined ? last : (Math.min(day(named), last) as Day);

/** The call-back date named in a call since the standing began. */
const callBackAfter = (at: At): Day | undefined => {
  const call = factsOf(at.record, 'call').findLast(
    (one) => one.on >= at.held.since && one.on <= at.today && one.body.callBackOn !== undefined,
  );
  return call?.body.callBackOn === undefined ? undefined : day(call.body.callBackOn);
};

/** The day a call named; else the protocol's days after the standing began. */
const callBackOr = (at: At, key: LookAgainKey, since = at.held.since): Day =>
  callBackAfter(at) ?? lookAgainOn(at, key, since);

const inReview = (at: At, says: string, since: Day, anniversary?: Day): StandingNow =>
  standing(at, 'in review', says, 'prescriber', anniversary ?? lookAgainOn(at, 'lookAgainReviewDays', since), since);

/** Before a first dose, or the first of a new course: once it is prescribed and consented to, a place is what is missing. */
function beforeFirst(at: At): StandingNow {
  const { record, today, held } = at;
  const prescription = factsOf(record, 'prescription').findLast((one) => one.on <= today);
  const consent = factsOf(record, 'consent').findLast((one) => one.on <= today);
  const prescribed = prescription !== undefined && day(prescription.body.validUntil) >= today;
  const refusal = factsOf(record, 'refusal').findLast((one) => one.on <= today);
  const consented = consent?.body.decision !== 'not given' && noAfterConsent(consent, refusal) === undefined;
  if (prescription !== undefined && prescribed && consent !== undefined && consented) {
    const since = Math.max(prescription.on, consent.on, held.since) as Day;
    return standing(at, 'waiting for a place', '', 'clerk', callBackOr(at, 'lookAgainPlaceDays', since), since);
  }
  return standing(at, 'in work-up', '', 'nurse', callBackOr(at, 'lookAgainWorkUpDays'));
}

/** What is taken every day at home: until it ends, and then what follows. */
function daily(at: At, begun: Fact<'dose'>, lastsMonths: number): StandingNow {
  const { medicine, until } = begun.body;
  const end = until === undefined ? addMonths(begun.on, lastsMonths) : day(until);
  return at.today <= end
    ? standing(at, 'between doses', `${medicine} daily until ${shortDate(end)}`, 'nurse in charge', end, begun.on)
    : inReview(at, `${medicine} ended on ${shortDate(end)}: what follows it`, addDays(end, 1));
}

function betweenDoses(at: At, course: Course): StandingNow {
  const since = course.lastDose?.on ?? at.held.since;
  if (course.regimen?.recall === 'none')
    return standing(
      at,
      'between doses',
      'no next dose is called for here',
      'nurse in charge',
      course.anniversary ?? since,
      since,
    );
  if (course.due === undefined || at.protocol === undefined) {
    return standing(
      at,
      'between doses',
      'the due date cannot be told without a protocol in force',
      'nurse in charge',
      since,
      since,
    );
  }
  const overdueFrom = addDays(course.due, underRegimen(at.protocol, course.regimen?.id).number.overdueAfterDays + 1);
  if (at.today >= overdueFrom) {
    const on = callBackOr(at, 'lookAgainOverdueDays', overdueFrom);
    return standing(at, 'overdue', `since ${shortDate(course.due)}`, 'nurse in charge', on, overdueFrom);
  }
  const recallFrom = course.recall?.from ?? course.due;
  const on = at.today < recallFrom ? recallFrom : course.due;
  return standing(at, 'between doses', `next due ${shortDate(course.due)}`, 'clerk', on, since);
}

function onBreak(at: At): StandingNow {
  const { review: needed } = courseOf(at.record, at.protocol, at.today);
  if (needed?.because === 'during the break') return inReview(at, needed.says, needed.since);
  const review = at.held.by as Fact<'course-review'> | undefined;
  const reviewOn = review?.body.outcome === 'planned break' ? day(review.body.reviewOn) : at.held.since;
  if (at.today >= reviewOn) return inReview(at, `the planned break ended on ${shortDate(reviewOn)}`, reviewOn);
  return standing(at, 'on planned break', `review on ${shortDate(reviewOn)}`, 'nurse in charge', reviewOn);
}

function settled(at: At, held: Exclude<Held, UnderCare | 'on planned break' | 'closed'>): StandingNow {
  const { by, since } = at.held;
  switch (held) {
    case 'not accounted for':
      return standing(at, held, 'no referral and no dose', 'nurse in charge', at.today);
    case 'referral received':
      return standing(at, held, '', 'nurse in charge', callBackOr(at, 'lookAgainReferralDays'));
    case 'returned to referrer':
      return standing(at, held, '', 'nurse in charge', callBackOr(at, 'lookAgainReturnedDays'));
    case 'moved to other treatment': {
      const review = by as Fact<'course-review'> | undefined;
      const body = review?.body.outcome === 'other treatment' ? review.body : undefined;
      const on = body === undefined ? since : day(body.dueOn);
      const says = body === undefined ? '' : `${body.to}, due ${shortDate(on)}`;
      return standing(at, held, says, 'nurse in charge', on);
    }
    case 'transferred out':
      return transferred(at);
    case 'cannot be reached': {
      const body = (by as Fact<'cannot-be-reached'> | undefined)?.body;
      const on = body === undefined ? since : day(body.lookAgainOn);
      return standing(at, held, `look again on ${shortDate(on)}`, 'nurse in charge', on);
    }
    case 'said no':
      return saidNo(at);
    case 'died':
      return standing(at, held, '', 'nobody', undefined);
  }
}

/** Over, unless a medicine still waits for its successor: somebody sees that it came, or a prescriber decided that none does. */
function closed(at: At): StandingNow {
  const { held, protocol, record, today } = at;
  const { reason = '', nothingFollows } = (held.by as Fact<'closed'> | undefined)?.body ?? {};
  if (nothingFollows !== undefined)
    return standing(
      at,
      'closed',
      `${reason}; a prescriber decided that nothing follows: ${nothingFollows}`,
      'nobody',
      undefined,
    );
  const clock = protocol === undefined ? undefined : clockOf(record, protocol, today, undefined);
  return clock === undefined
    ? standing(at, 'closed', reason, 'nobody', undefined)
    : standing(at, 'closed', `${reason}; ${clock.says}`, 'nurse in charge', clock.plannedOn ?? clock.actBy);
}

function transferred(at: At): StandingNow {
  const sent = factsOf(at.record, 'transfer-out').findLast((one) => one.on <= at.today);
  const answered = factsOf(at.record, 'transfer-acknowledged').findLast((one) => one.on <= at.today);
  const to = sent?.body.to ?? '';
  if (sent !== undefined && answered !== undefined && answered.on >= sent.on && answered.seq > sent.seq) {
    return standing(at, 'transferred out', `${to}, acknowledged`, 'nobody', undefined);
  }
  const on = callBackAfter(at) ?? (sent === undefined ? at.held.since : day(sent.body.chaseOn));
  return standing(at, 'transferred out', `${to}, not acknowledged`, 'clerk', on);
}

const askAgainDays = {
  'this dose': 'askAgainDoseDays',
  'this medicine': 'askAgainMedicineDays',
  'all contact': 'askAgainContactDays',
} as const;

function saidNo(at: At): StandingNow {
  const refusal = at.held.by as Fact<'refusal'> | undefined;
  const to = refusal?.body.to ?? 'this dose';
  const on =
    refusal?.body.askAgainOn === undefined
      ? lookAgainOn(at, askAgainDays[to], at.held.since)
      : day(refusal.body.askAgainOn);
  return standing(
    at,
    'said no',
    `to ${to}; ask again on ${shortDate(on)}`,
    to === 'this medicine' ? 'prescriber' : 'nurse in charge',
    on,
  );
}
