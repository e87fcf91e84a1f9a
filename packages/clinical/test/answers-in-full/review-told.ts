/** A review sheet as text: the course and its counts, each section with what a line rests on, the rule of failure, what is missing. */
import {
  type Criterion,
  type Day,
  type Entry,
  type ReviewChoice,
  consequencesOf,
  courseOf,
  day,
  entriesFromDrafts,
  nextDoseInWords,
  parseLedger,
  plainDate,
  recordOf,
  reviewSheetOf,
  teaching,
  whyReviewed,
} from '@twelvemonth/clinical';
import { asked } from '../person.ts';

const choices: readonly ReviewChoice[] = [
  { outcome: 'carry on', toDoses: 5 },
  { outcome: 'new course', plannedDoses: 3 },
  { outcome: 'planned break', reviewOn: day('2028-11-25') },
  { outcome: 'other treatment', to: 'teriparatide', dueOn: day('2027-01-10') },
  { outcome: 'other treatment', to: '', dueOn: day('2027-01-10') },
  { outcome: 'stop' },
];

const dateOr = (on: Day | undefined): string => (on === undefined ? '-' : plainDate(on));

/** The notes of a case, up to its "--", and what is expected below it. */
export function reviewCase(text: string): { readonly entries: readonly Entry[]; readonly expected: string } {
  const [, ...rest] = text.split('\n');
  const [notes = '', expected = ''] = rest.join('\n').split(/\n--(?:\n|$)/);
  const read = parseLedger(notes);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return { entries: entriesFromDrafts(read.drafts, { start: '2015-01-01T00:00:00.000Z' }), expected: expected.trim() };
}

export function reviewInFull(entries: readonly Entry[]): string {
  const record = recordOf('patient/person', entries);
  const { course, sections, failure, carryingOn, gaps, basis, events, ...sheet } = reviewSheetOf(
    record,
    teaching,
    asked,
  );
  const rests = (ids: readonly string[]): string =>
    ids.length === 0 ? '' : ` (${ids.map((id) => entries.findIndex((one) => one.id === id) + 1).join(', ')})`;
  const criterion = ({ asks, is, says, entries: ids, source }: Criterion): string =>
    `   ? ${asks}: ${is}: ${says}${rests(ids)} [${source}]`;
  const { planned, recall } = course;
  const without = courseOf(record, undefined, asked);
  return [
    whyReviewed(sheet),
    ...events.map(({ because, says, entry }) => `   ! ${because}: ${says}${rests([entry])}`),
    `Next: ${nextDoseInWords(course)}; planned ${planned === undefined ? '-' : `${planned.count} by the ${planned.from}`}; every ${course.intervalMonths ?? '-'} months`,
    `   this course ${course.doses.length}, in a row ${course.consecutive}, in all ${course.lifetime}; ${course.given.map(({ medicine, doses }) => `${medicine} ${doses}`).join(', ')}`,
    `   tablets ${course.tabletDays} days, bisphosphonates ${course.bisphosphonateDays ?? '-'} days; part doses undecided ${course.undecidedPartDoses.length}`,
    `   last ${dateOr(course.lastDose?.on)}, due ${dateOr(course.due)}, anniversary ${dateOr(course.anniversary)}, recall ${dateOr(recall?.from)}, bloods ${dateOr(recall?.bloods?.from)} to ${dateOr(recall?.bloods?.until)}`,
    `   without a protocol: planned ${without.planned?.count ?? '-'}, due ${dateOr(without.due)}, bisphosphonates ${without.bisphosphonateDays ?? '-'}, review ${without.review?.says ?? '-'}, recall ${dateOr(without.recall?.from)}, every ${without.intervalMonths ?? '-'}`,
    ...sections.flatMap(({ title, lines, none }) => [
      title,
      ...(lines.length === 0
        ? [`   ${none}`]
        : lines.map(
            ({ says, on, entries: ids }) => `   - ${says}${rests(ids)}${on === undefined ? '' : ` ${plainDate(on)}`}`,
          )),
    ]),
    `Failure: ${failure.is}. ${failure.says}`,
    ...failure.criteria.map(criterion),
    'Carrying on',
    ...carryingOn.map(criterion),
    'Missing',
    ...gaps.map(({ says, kind }) => `   - ${says} (${kind})`),
    'What each choice would do',
    `   break usually until ${dateOr(basis.breakUntil)}, at the latest ${dateOr(basis.breakLatest)}; booked ${dateOr(basis.booked)}; steroids ${basis.steroids.join(', ')}; ${basis.needsSpecialist ? 'a specialist' : 'any prescriber'}; last dose ${dateOr(basis.lastDose)}`,
    ...choices.flatMap((choice) => consequencesOf(basis, choice).map((says) => `   ${choice.outcome}: ${says}`)),
  ].join('\n');
}
