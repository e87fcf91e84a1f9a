/** What speaks for carrying on after the planned doses (NOGG 2021: up to six years; numbers are the protocol's). */
import { type Day, ageOn, shortDate } from '../../calendar/day.ts';
import type { PartialDate } from '../../calendar/partial-date.ts';
import { scaled } from '../../exact/decimal.ts';
import { plural } from '../../kinds-texts/words.ts';
import type { Protocol } from '../../protocol/protocol.ts';
import type { CourseFacts } from '../course-facts.ts';
import type { Course } from '../course.ts';
import { isAtOrAbove, steroidsOn } from '../steroids.ts';
import { type Answer, type Criterion, answer } from './criterion.ts';
import { fracturesThen, untoldSpineFractures } from './fractures.ts';

const NOGG = 'NOGG 2021, Gregson 2022, doi 10.1007/s11657-022-01061-5 (from memory)';

export function carryingOn(
  facts: CourseFacts,
  course: Course,
  born: PartialDate | undefined,
  protocol: Protocol,
  today: Day,
): readonly Criterion[] {
  const { number } = protocol;
  return [
    ageCriterion(born, number.continueFromAge, protocol, today),
    hipOrSpine(facts),
    onTreatment(facts, course),
    hipScore(facts, protocol),
    steroid(facts, protocol, today),
  ];
}

function ageCriterion(born: PartialDate | undefined, from: number, protocol: Protocol, today: Day): Criterion {
  const age = born?.precision === 'day' ? ageOn(born.day, today) : undefined;
  return {
    asks: `${from} years old or more`,
    is: age === undefined ? 'cannot say' : answer(age >= from),
    says: age === undefined ? 'the birth date is not whole' : `${age} years old`,
    entries: [],
    source: protocol.sheet.numbers.continueFromAge.source,
  };
}

function hipOrSpine(facts: CourseFacts): Criterion {
  const found = facts.fractures.filter(({ body }) => body.site === 'hip' || body.site === 'spine');
  const says = [
    ...found.map(({ body, on }) => `${body.site} ${body.dateKnown ? shortDate(on) : 'on a day not known'}`),
    ...facts.newSpineFractures.map(({ on }) => `spine on imaging ${shortDate(on)}`),
  ];
  return {
    asks: 'a hip or spine fracture at any time',
    is: answer(says.length > 0),
    says: says.length === 0 ? 'none in the notes' : plural(says, 'and'),
    entries: [...found, ...facts.newSpineFractures].map(({ id }) => id),
    source: NOGG,
  };
}

function onTreatment(facts: CourseFacts, course: Course): Criterion {
  const then = fracturesThen(facts, course).filter((one) => one.onTreatment !== 'before treatment');
  const sure = then.filter((one) => one.onTreatment === 'counts');
  const untold = untoldSpineFractures(facts, course.doses[0]?.on);
  const is: Answer = sure.length + untold.length > 0 ? 'met' : then.length > 0 ? 'cannot say' : 'not met';
  return {
    asks: 'a fracture on treatment',
    is,
    says:
      then.length + untold.length === 0
        ? 'none in the notes since the first dose'
        : plural(
            [
              ...then.map(
                ({ fracture: { body, on }, afterDose }) =>
                  `${body.site} ${body.dateKnown ? shortDate(on) : 'on a day not known'}, after dose ${afterDose}`,
              ),
              ...untold.map(({ on }) => `spine on imaging ${shortDate(on)}`),
            ],
            'and',
          ),
    entries: [...then.map(({ fracture }) => fracture.id), ...untold.map(({ id }) => id)],
    source: NOGG,
  };
}

/** By the newest hip scans that print a T-score: one such day may have the neck and the total hip; the lower decides. */
function hipScore(facts: CourseFacts, protocol: Protocol): Criterion {
  const hips = facts.scans.filter(({ body }) => body.site !== 'lumbar spine' && body.tScore !== undefined);
  const newest = hips[hips.length - 1];
  const ofThatDay = hips.filter(({ on }) => on === newest?.on);
  const low = protocol.exact.continueHipTScore;
  return {
    asks: `hip T-score of ${protocol.number.continueHipTScore} or below`,
    is:
      newest === undefined
        ? 'cannot say'
        : answer(ofThatDay.some(({ body }) => body.tScore !== undefined && scaled(body.tScore) <= low)),
    says:
      newest === undefined
        ? 'no hip scan with a T-score'
        : `${plural(
            ofThatDay.map(({ body }) => `${body.site} T ${body.tScore ?? ''}`),
            'and',
          )} on ${shortDate(newest.on)}; as printed, which rounds to one decimal`,
    entries: ofThatDay.map(({ id }) => id),
    source: protocol.sheet.numbers.continueHipTScore.source,
  };
}

function steroid(facts: CourseFacts, protocol: Protocol, today: Day): Criterion {
  const taken = steroidsOn(facts, today);
  const known = taken.filter(({ body }) => body.prednisoloneMgPerDay !== undefined);
  const high = known.filter((one) => isAtOrAbove(one, protocol));
  const is: Answer = high.length > 0 ? 'met' : known.length < taken.length ? 'cannot say' : 'not met';
  return {
    asks: `on ${protocol.number.steroidMgPerDay} mg of prednisolone a day or more`,
    is,
    says:
      taken.length === 0
        ? 'no steroid in the notes'
        : plural(
            taken.map(
              ({ body }) =>
                `${body.name}, ${body.prednisoloneMgPerDay === undefined ? 'daily dose not known' : `${body.prednisoloneMgPerDay} mg a day`}`,
            ),
            'and',
          ),
    entries: taken.map(({ id }) => id),
    source: protocol.sheet.numbers.steroidMgPerDay.source,
  };
}
