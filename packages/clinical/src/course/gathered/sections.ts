/** The gathered facts in the order in which a review reads them, one sentence a line. */
import { type Day, shortDate } from '../../calendar/day.ts';
import { quantityText } from '../../exact/quantity.ts';
import { minus, ratioText } from '../../exact/ratio.ts';
import { heightCm } from '../../formulas/units.ts';
import { scoresText } from '../../kinds-texts/density-text.ts';
import { entryText } from '../../kinds-texts/entry-text.ts';
import { counted } from '../../kinds-texts/words.ts';
import type { Protocol } from '../../protocol/protocol.ts';
import { type Fact, type SubjectRecord, factsOf } from '../../record/patient-record.ts';
import { tallestBefore } from '../course-events.ts';
import type { CourseFacts } from '../course-facts.ts';
import type { Course } from '../course.ts';
import { steroidsOn } from '../steroids.ts';
import { densitiesThen } from './density.ts';
import { dosesGiven, exposureOf } from './doses-given.ts';
import { changeInWords, fallInWords } from './change-in-words.ts';
import { fracturesThen } from './fractures.ts';
import { markersThen } from './markers-then.ts';
import type { GatheredLine, GatheredSection } from './review-sheet.ts';

const line = (says: string, ...facts: readonly Fact[]): GatheredLine => ({
  says,
  on: facts[facts.length - 1]?.on,
  entries: facts.map(({ id }) => id),
});
const told = (fact: Fact): GatheredLine => line(entryText(fact), fact);

export function sectionsOf(
  record: SubjectRecord,
  facts: CourseFacts,
  course: Course,
  protocol: Protocol,
  today: Day,
): readonly GatheredSection[] {
  const firstDose = course.doses[0]?.on;
  const upTo = <Kind extends 'adherence' | 'spine-imaging' | 'symptom' | 'reaction' | 'course-review'>(
    kind: Kind,
  ): readonly Fact<Kind>[] => factsOf(record, kind).filter(({ on }) => on <= today);
  const section = (title: string, lines: readonly GatheredLine[], none: string, source?: string): GatheredSection => ({
    title,
    lines,
    none,
    source,
  });
  return [
    section('Doses and exposure', exposureLines(record, course, today), 'No dose yet.'),
    section(
      'Fractures',
      [...fractureLines(facts, course), ...upTo('spine-imaging').map(told)],
      'No fracture in the notes.',
    ),
    section(
      'Bone density',
      densitiesThen(facts, firstDose, protocol).map((one) =>
        line(
          `${one.newest.body.site}${one.newest.body.side === undefined ? '' : `, ${one.newest.body.side}`}: ${quantityText(one.newest.body.density)}${scoresText(one.newest.body)} on ${shortDate(one.newest.on)}: ${changeInWords(one)}`,
          ...(one.first === undefined ? [one.newest] : [one.first, one.newest]),
        ),
      ),
      'Never scanned.',
      'ISCD: only the same scanner, site and side are compared; a change counts from the least significant change on (2.77 x precision error). T-scores are not compared.',
    ),
    section(
      'Bone markers',
      markersThen(facts, firstDose).map((one) =>
        line(
          `${one.marker} ${quantityText(one.newest.body.quantity)} on ${shortDate(one.newest.on)}${one.before === undefined ? ':' : ','} ${fallInWords(one)}`,
          ...(one.before === undefined ? [one.newest] : [one.before, one.newest]),
        ),
      ),
      'No signed CTX or P1NP.',
      'IOF-ECTS 2017: a fall counts from more than 38 % for P1NP and 56 % for CTX on, for tablets over three months. CTX fasting, in the morning; neither soon after a fracture (from memory).',
    ),
    section('Taken at home', upTo('adherence').map(told), 'Nobody has written how much is taken.'),
    section('Height', heightLines(facts), 'Never measured.'),
    section(
      'Thigh, hip or groin pain',
      upTo('symptom')
        .filter(({ body }) => body.what === 'thigh, hip or groin pain')
        .map((fact) =>
          line(
            `${shortDate(fact.on)}: ${entryText(fact)}${isCleared(record, fact, today) ? ', cleared since' : ', not cleared: X-ray first'}`,
            fact,
          ),
        ),
      'None told. Ask: the risk of an atypical fracture grows with the years of treatment.',
    ),
    section('Steroid', steroidsOn(facts, today).map(told), 'None in the notes.'),
    section('Reactions', upTo('reaction').map(told), 'None in the notes.'),
    section(
      'Earlier reviews',
      upTo('course-review').map((fact) => line(`${shortDate(fact.on)}: ${entryText(fact)}`, fact)),
      'None.',
    ),
  ];
}

const isCleared = (record: SubjectRecord, symptom: Fact, today: Day): boolean =>
  factsOf(record, 'symptom-cleared').some(({ on, body }) => on <= today && body.entry === symptom.id);

function exposureLines(record: SubjectRecord, course: Course, today: Day): readonly GatheredLine[] {
  const { thisCourse, consecutive, lifetime, otherProduct, tabletYears, years } = exposureOf(record, course, today);
  const given = dosesGiven(course).map(({ dose, number, daysLate }) =>
    line(
      `dose ${number} on ${shortDate(dose.on)}${daysLate === undefined ? '' : daysLate > 0 ? `, ${counted(daysLate, 'day')} late` : ', not late'}`,
      dose,
    ),
  );
  const parts = partLines(record, course, today);
  if (lifetime === 0 && tabletYears === 0 && otherProduct.length === 0) return [...given, ...parts];
  return [
    ...given,
    ...parts,
    line(`${thisCourse} in this course, ${consecutive} in a row since the last planned break, ${lifetime} in all`),
    ...(otherProduct.length === 0
      ? []
      : [
          line(`${counted(otherProduct.length, 'dose')} of zoledronic acid 4 mg, in the lifetime too`, ...otherProduct),
        ]),
    line(
      `about ${years.toFixed(1)} years with a bisphosphonate at work${tabletYears === 0 ? '' : `, ${tabletYears.toFixed(1)} of them tablets`}; days that overlap count once`,
      ...factsOf(record, 'medicine').filter(({ on, body }) => on <= today && body.sort === 'bisphosphonate tablet'),
    ),
  ];
}

/** Part doses that do not count, or not yet: nobody may read that nothing was given. */
const partLines = (record: SubjectRecord, course: Course, today: Day): readonly GatheredLine[] =>
  factsOf(record, 'dose')
    .filter((dose) => dose.on <= today && dose.body.partMilliliters !== undefined && !course.doses.includes(dose))
    .map((dose) => {
      const isOpen = course.undecidedPartDoses.includes(dose);
      return line(
        `${entryText(dose)}: ${isOpen ? 'whether it counts is for the prescriber' : 'not counted in this course'}`,
        dose,
      );
    });

const fractureLines = (facts: CourseFacts, course: Course): readonly GatheredLine[] =>
  fracturesThen(facts, course).map(({ fracture, afterDose, daysAfterDose, onTreatment }) =>
    line(
      `${entryText(fracture)}: ${
        onTreatment === 'before treatment'
          ? 'before the first dose of this course'
          : `${counted(daysAfterDose ?? 0, 'day')} after dose ${afterDose}${onTreatment === 'counts' ? '' : '; whether it counts is for the prescriber'}`
      }`,
      fracture,
    ),
  );

function heightLines(facts: CourseFacts): readonly GatheredLine[] {
  const newest = facts.heights[facts.heights.length - 1];
  if (newest === undefined) return [];
  const now = heightCm(newest.body.quantity);
  const tallest = tallestBefore(facts, newest.on);
  const measured = `${quantityText(newest.body.quantity)} on ${shortDate(newest.on)}`;
  if (now === undefined || tallest === undefined) return [line(`${measured}: measured once`, newest)];
  const lost = minus(tallest.cm, now);
  return [
    line(
      `${measured}; ${lost.top > 0n ? `${ratioText(lost, 1)} cm less than` : 'no less than'} on ${shortDate(tallest.fact.on)}`,
      tallest.fact,
      newest,
    ),
  ];
}
