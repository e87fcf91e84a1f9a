/** What speaks for carrying on after the planned doses: the criteria, their numbers and their sources are the protocol's. */
import { type Day, ageOn, shortDate } from '../../calendar/day.ts';
import type { PartialDate } from '../../calendar/partial-date.ts';
import { scaled } from '../../exact/decimal.ts';
import { plural } from '../../kinds-texts/words.ts';
import { type AnsweredFromNotes, carryOnAsks, isAnsweredFromNotes } from '../../protocol/carry-on.ts';
import { type Protocol, numberOf } from '../../protocol/protocol.ts';
import type { CourseFacts } from '../course-facts.ts';
import type { Course } from '../course.ts';
import { isAtOrAbove, steroidsOn } from '../steroids.ts';
import { type Answer, type Criterion, answer } from './criterion.ts';
import { fracturesThen, untoldSpineFractures } from './fractures.ts';

/** Each as the rule sheet lists it, with what the notes say; what they cannot say is the prescriber's to answer. */
export const carryingOn = (
  facts: CourseFacts,
  course: Course,
  born: PartialDate | undefined,
  protocol: Protocol,
  today: Day,
): readonly Criterion[] =>
  protocol.sheet.carryOn.map((criterion) => {
    const { id, source, status } = criterion;
    return {
      asks: carryOnAsks(criterion, (key) => numberOf(protocol, key).value ?? ''),
      ...(isAnsweredFromNotes(id) ? answerOf[id]({ facts, course, born, protocol, today }) : askedOfThePrescriber),
      source: `${source} (${status})`,
    };
  });

type Asked = {
  readonly facts: CourseFacts;
  readonly course: Course;
  readonly born: PartialDate | undefined;
  readonly protocol: Protocol;
  readonly today: Day;
};
type Answered = Pick<Criterion, 'is' | 'says' | 'entries'>;

const askedOfThePrescriber: Answered = {
  is: 'cannot say',
  says: 'the notes do not say: the prescriber does',
  entries: [],
};

const answerOf: Readonly<Record<AnsweredFromNotes, (asked: Asked) => Answered>> = {
  age: ageAnswer,
  'hip or spine fracture': hipOrSpine,
  'fracture on treatment': onTreatment,
  'hip T-score': hipScore,
  steroid,
};

function ageAnswer({ born, protocol, today }: Asked): Answered {
  const age = born?.precision === 'day' ? ageOn(born.day, today) : undefined;
  return {
    is: age === undefined ? 'cannot say' : answer(age >= protocol.number.continueFromAge),
    says: age === undefined ? 'the birth date is not whole' : `${age} years old`,
    entries: [],
  };
}

function hipOrSpine({ facts }: Asked): Answered {
  const found = facts.fractures.filter(({ body }) => body.site === 'hip' || body.site === 'spine');
  const says = [
    ...found.map(({ body, on }) => `${body.site} ${body.dateKnown ? shortDate(on) : 'on a day not known'}`),
    ...facts.newSpineFractures.map(({ on }) => `spine on imaging ${shortDate(on)}`),
  ];
  return {
    is: answer(says.length > 0),
    says: says.length === 0 ? 'none in the notes' : plural(says, 'and'),
    entries: [...found, ...facts.newSpineFractures].map(({ id }) => id),
  };
}

function onTreatment({ facts, course }: Asked): Answered {
  const then = fracturesThen(facts, course).filter((one) => one.onTreatment !== 'before treatment');
  const sure = then.filter((one) => one.onTreatment === 'counts');
  const untold = untoldSpineFractures(facts, course.doses[0]?.on);
  const is: Answer = sure.length + untold.length > 0 ? 'met' : then.length > 0 ? 'cannot say' : 'not met';
  return {
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
  };
}

/** By the newest hip scans that print a T-score: one such day may have the neck and the total hip; the lower decides. */
function hipScore({ facts, protocol }: Asked): Answered {
  const hips = facts.scans.filter(({ body }) => body.site !== 'lumbar spine' && body.tScore !== undefined);
  const newest = hips[hips.length - 1];
  const ofThatDay = hips.filter(({ on }) => on === newest?.on);
  const low = protocol.exact.continueHipTScore;
  return {
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
  };
}

function steroid({ facts, protocol, today }: Asked): Answered {
  const taken = steroidsOn(facts, today);
  const known = taken.filter(({ body }) => body.prednisoloneMgPerDay !== undefined);
  const high = known.filter((one) => isAtOrAbove(one, protocol));
  const is: Answer = high.length > 0 ? 'met' : known.length < taken.length ? 'cannot say' : 'not met';
  return {
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
  };
}
