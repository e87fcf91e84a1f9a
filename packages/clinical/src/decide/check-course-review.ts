/** What a review of the course may decide (docs/readiness.md R7): refused where it is written, with what to do instead. */
import { type Day, addMonths, day, shortDate } from '../calendar/day.ts';
import { courseFactsOf } from '../course/course-facts.ts';
import { courseOf } from '../course/course.ts';
import { protocolFor } from '../course/prescribed.ts';
import { isAtOrAbove, steroidsOn } from '../course/steroids.ts';
import { counted, plural } from '../kinds-texts/words.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Fact, SubjectRecord } from '../record/patient-record.ts';
import { fieldWrong } from './check-fields.ts';
import { needsWhatFollows } from './needs-what-follows.ts';
import { type Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';

/** `sheet`: the one in force today; without one only what needs no number is checked. */
export function checkCourseReview(
  record: SubjectRecord,
  { body, on }: Fact<'course-review'>,
  path: string,
  sheet: Protocol | undefined,
): readonly Refusal[] {
  // The regimen's own numbers stand in place of the protocol's.
  const protocol = sheet === undefined ? undefined : protocolFor(sheet, record, on);
  const capacity =
    body.capacity === undefined
      ? [
          fieldWrong(
            `${path}.capacity`,
            'it does not say in which capacity it was decided',
            'specialist or other prescriber',
          ),
        ]
      : [];
  const outcome =
    body.outcome === 'carry on' || body.outcome === 'new course'
      ? checkSpecialist(record, body, on, path, protocol)
      : body.outcome === 'planned break'
        ? checkBreak(record, body, on, path, protocol)
        : [];
  return [...capacity, ...checkWhatFollows(record, body, on, path, sheet), ...outcome];
}

/** A medicine whose clock runs is never stopped or paused: another treatment follows, with the date by which it is due. */
const checkWhatFollows = (
  record: SubjectRecord,
  { outcome }: Fact<'course-review'>['body'],
  on: Day,
  path: string,
  protocol: Protocol | undefined,
): readonly Refusal[] =>
  outcome === 'stop' || outcome === 'planned break'
    ? needsWhatFollows(record, protocol, on, `${path}.outcome`, 'stopped or paused')
    : [];

function checkSpecialist(
  record: SubjectRecord,
  { capacity }: Fact<'course-review'>['body'],
  on: Day,
  path: string,
  protocol: Protocol | undefined,
): readonly Refusal[] {
  if (protocol === undefined || capacity === 'specialist') return [];
  const inARow = courseOf(record, protocol, on).consecutive;
  return inARow < protocol.number.maxConsecutiveDoses
    ? []
    : [
        refusal(
          'a-specialist-decides',
          `${counted(inARow, 'dose')} in a row without a planned break: only a specialist may let the treatment go on.`,
          {
            field: `${path}.capacity`,
            remedy: 'ask a specialist and record their decision, or choose a planned break',
          },
        ),
      ];
}

function checkBreak(
  record: SubjectRecord,
  body: Fact<'course-review'>['body'] & { readonly outcome: 'planned break' },
  on: Day,
  path: string,
  protocol: Protocol | undefined,
): readonly Refusal[] {
  const reviewOn = day(body.reviewOn);
  const field = `${path}.reviewOn`;
  if (reviewOn <= on)
    return [fieldWrong(field, 'the break would be over before it begins', 'the day on which it is reviewed')];
  if (protocol === undefined) return [];
  const refusals: Refusal[] = [];
  const last = breakCountedFrom(record, body, on, protocol);
  const latest = addMonths(last, protocol.number.breakLongestMonths);
  if (reviewOn > latest)
    refusals.push(
      fieldWrong(
        field,
        `a planned break is reviewed at the latest ${protocol.number.breakLongestMonths} months after ${shortDate(last)}`,
        `a day up to ${shortDate(latest)}`,
      ),
    );
  const steroids = steroidsOn(courseFactsOf(record, on), on).filter((one) => isAtOrAbove(one, protocol));
  if (steroids.length > 0)
    refusals.push(
      refusal(
        'no-break-on-steroid',
        `No planned break while on ${plural(
          steroids.map(({ body: { name, prednisoloneMgPerDay } }) =>
            prednisoloneMgPerDay === undefined
              ? `${name} (dose not known)`
              : `${name} (${prednisoloneMgPerDay} mg of prednisolone a day)`,
          ),
          'and',
        )}: the protocol allows none from ${protocol.number.steroidMgPerDay} mg a day on.`,
        { field: `${path}.outcome`, remedy: 'choose another outcome, or record that it was stopped or its true dose' },
      ),
    );
  return refusals;
}

/** From which day a planned break is counted: what the review says, else the last infusion, else the review itself. */
function breakCountedFrom(
  record: SubjectRecord,
  body: { readonly countedFrom?: string | undefined },
  on: Day,
  protocol: Protocol,
): Day {
  if (body.countedFrom !== undefined) return day(body.countedFrom);
  return courseOf(record, protocol, on).lastDose?.on ?? on;
}
