/**
 * Who it is: a birth date known to the day, a number, and no other notes that may be the same person's (docs/readiness.md
 * R8). Nothing is ever completed by a guess.
 */
import { type Day, birthdayIn, civilFromDay, shortDate } from '../calendar/day.ts';
import { type PartialDate, textOfKnown } from '../calendar/partial-date.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Working } from '../readiness/working.ts';
import type { Fact } from '../record/patient-record.ts';
import type { Evidence } from './evidence.ts';
import {
  type Judge,
  type Judgement,
  type Path,
  type Requirement,
  always,
  judgement,
  readyPath,
} from './requirement.ts';

const knownOf = (born: PartialDate | undefined): string =>
  born === undefined
    ? 'nothing'
    : born.precision === 'day'
      ? shortDate(born.day)
      : born.precision === 'year'
        ? String(born.year)
        : `${born.year}-${String(born.month).padStart(2, '0')}`;

const reads = ['identity', 'born', 'today', 'mayBeTwice'] as const;
type Read = Pick<Evidence, (typeof reads)[number]>;

function judge({ identity, born, today, mayBeTwice }: Read, protocol: Protocol): Judge {
  const blocked = (what: string): Path => ({
    is: 'blocked',
    by: { what, who: 'clerk', step: 'complete identity', settled: undefined },
  });
  if (identity === undefined) {
    return always(
      judgement('cannot say', 'no identity recorded', () => ({ says: 'Nobody has recorded who this is.' })),
      blocked('who it is'),
    );
  }
  const inputs = (): Working['inputs'] => [
    { label: 'born', text: textOfKnown(identity.body.born, born), on: identity.on, entry: identity.id },
    { label: 'number', text: identity.body.number, on: identity.on, entry: identity.id },
  ];
  if (born?.precision !== 'day' || born.day > today) {
    const known = knownOf(born);
    const cause = born?.precision === 'day' ? `birth date ${known} lies ahead` : `birth date known only as ${known}`;
    return always(
      judgement('cannot say', cause, () => ({
        says: 'Without the day of birth neither the person nor the age is certain. It is asked, never assumed.',
        inputs: inputs(),
      })),
      blocked('the birth date to the day: ask, never assume one'),
    );
  }
  if (identity.body.number.trim() === '') {
    return always(
      judgement('cannot say', 'no number recorded', () => ({
        says: 'The number this service knows the person by is missing.',
        inputs: inputs(),
      })),
      blocked('the number'),
    );
  }
  if (mayBeTwice !== undefined) return always(possibleDuplicate(mayBeTwice, inputs), untilToldApart);
  const known = judgement('ready', 'identity', () => ({
    says: `Born ${shortDate(born.day)}, number ${identity.body.number}.`,
    inputs: inputs(),
  }));
  const { adultFromYears } = protocol.number;
  const grownUpOn = birthdayIn(born.day, civilFromDay(born.day).year + adultFromYears);
  if (grownUpOn <= today) return always(known, readyPath);
  const young = judgement('cannot say', `under ${adultFromYears} years`, () => ({
    says: `${adultFromYears} on ${shortDate(grownUpOn)}. The dose, the formula for the clearance and the trials are for adults: a prescriber who treats children decides.`,
    inputs: inputs(),
    thresholds: [{ key: 'adultFromYears' }],
  }));
  const asked: Path = {
    is: 'blocked',
    by: {
      what: 'a prescriber who treats children: these rules are for adults',
      who: 'prescriber',
      step: 'prescriber decides',
      settled: undefined,
    },
  };
  const isYoung = (on: Day): boolean => on < grownUpOn;
  return {
    changes: [grownUpOn],
    on: (on) => (isYoung(on) ? young : known),
    path: (on) => (isYoung(on) ? asked : readyPath),
  };
}

const untilToldApart: Path = {
  is: 'blocked',
  by: {
    what: 'whether other notes are the same person: compare the two side by side, and say one person or two',
    who: 'nurse in charge',
    step: 'complete identity',
    settled: undefined,
  },
};

const openBecause = {
  'may be one': 'Other notes may be the same person: a dose or an illness may stand in them and not here.',
  proposed: 'One of two people has said that other notes are the same person; the second has not said so yet.',
  one: 'Other notes are the same person, but they are not at hand here: what stands in them is not known.',
} as const;

function possibleDuplicate({ id, on, body }: Fact<'same-person'>, inputs: () => Working['inputs']): Judgement {
  const says = body.answer === 'two' ? '' : openBecause[body.answer];
  return judgement('cannot say', 'possible duplicate', () => ({
    says: `${says} Whoever may write here clears it: "not the same person", with what differs, or one person, said by two.`,
    inputs: [...inputs(), { label: 'other notes', text: body.reason, on, entry: id }],
  }));
}

export const identity: Requirement<(typeof reads)[number]> = {
  id: 'identity',
  title: 'Identity',
  clearedBy: 'whoever asks the person or the register. No exception',
  exceptionPossible: false,
  reads,
  judge,
};
