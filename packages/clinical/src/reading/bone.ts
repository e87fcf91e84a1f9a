/**
 * Bone density and markers at a glance, as a review reads them: each site against the newest comparable scan up to the first dose
 * of the course, scores as the report printed them, and whether a change is more than the scanner's noise.
 */
import { type Day, shortDate } from '../calendar/day.ts';
import { parseScaled, scaledText } from '../exact/decimal.ts';
import { exactValue, quantityText } from '../exact/quantity.ts';
import { ratioOf, ratioText } from '../exact/ratio.ts';
import { courseFactsOf } from '../course/course-facts.ts';
import type { Course } from '../course/course.ts';
import { type DensityThen, densitiesThen } from '../course/gathered/density.ts';
import { changeInWords, fallInWords } from '../course/gathered/change-in-words.ts';
import { markersThen } from '../course/gathered/markers-then.ts';
import { densityBand, densityScore, densityScoreSources, youngAdultReference } from '../formulas/bone-density-score.ts';
import { scoresText } from '../kinds-texts/density-text.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { SubjectRecord } from '../record/patient-record.ts';
import type { ReadingLine, ReadingPart } from './reading.ts';

const densityRule =
  'ISCD: only the same scanner, site and side are compared; a change counts from the least significant change on (2.77 x precision error)';
const markerRule =
  'IOF-ECTS 2017: a fall counts from more than 38 % for P1NP and 56 % for CTX on, for tablets over three months';

export function boneReading(record: SubjectRecord, course: Course, protocol: Protocol, today: Day): ReadingPart {
  const facts = courseFactsOf(record, today);
  const firstDose = course.doses[0]?.on;
  const densities = densitiesThen(facts, firstDose, protocol);
  const markers = markersThen(facts, firstDose);
  const lines: ReadingLine[] = [
    ...densities.flatMap(densityLines),
    ...markers.map((one): ReadingLine => ({
      what: one.marker,
      is: quantityText(one.newest.body.quantity),
      of: `on ${shortDate(one.newest.on)}; ${fallInWords(one)}`,
      put: undefined,
      source: markerRule,
      entries: [...(one.before === undefined ? [] : [one.before.id]), one.newest.id],
    })),
  ];
  return {
    title: 'Bone',
    lines,
    cautions: [
      ...(densities.length === 0 ? ['Bone density never scanned.'] : []),
      ...(markers.length === 0 ? ['No signed CTX or P1NP.'] : []),
    ],
  };
}

function densityLines(one: DensityThen): ReadingLine[] {
  const { newest, first } = one;
  const { site, side, density, tScore, scanner } = newest.body;
  const entries = first === undefined ? [newest.id] : [first.id, newest.id];
  const where = `${site}${side === undefined ? '' : `, ${side}`}`;
  const lines: ReadingLine[] = [
    {
      what: where,
      is: `${quantityText(density)}${scoresText(newest.body)}`,
      of: `on ${shortDate(newest.on)}, ${scanner}; ${changeInWords(one)}`,
      put:
        first === undefined
          ? undefined
          : `(${density.value} - ${first.body.density.value}) / ${first.body.density.value} g/cm2`,
      source: densityRule,
      entries,
    },
  ];
  const reference = site === 'lumbar spine' ? undefined : youngAdultReference[site];
  const printed = tScore === undefined ? undefined : parseScaled(tScore);
  if (printed !== undefined)
    lines.push({
      what: `${where}: band of the printed T-score`,
      is: densityBand(ratioOf(printed), false),
      of: `T ${tScore} as printed; with a fragility fracture severe`,
      put: undefined,
      source: densityScoreSources.bands,
      entries: [newest.id],
    });
  if (reference !== undefined)
    lines.push({
      what: `${where}: T-score worked out, to see whether the report is plausible`,
      is: ratioText(densityScore(exactValue(density), reference), 2),
      of: 'the printed one counts: the reference belongs to one make of scanner',
      put: `(${density.value} - ${scaledText(reference.meanGramsPerCm2)}) / ${scaledText(reference.sdGramsPerCm2)} g/cm2`,
      source: densityScoreSources.young,
      entries: [newest.id],
    });
  return lines;
}
