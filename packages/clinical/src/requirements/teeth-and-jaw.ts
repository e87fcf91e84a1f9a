/**
 * Teeth and jaw, ahead of the day: pending work and an unhealed socket hold until somebody has seen and recorded that nothing is
 * left to heal; an answer ages and is asked for again; a check is demanded where the protocol says so (docs/readiness.md R13).
 */
import { type Day, addDays, shortDate } from '../calendar/day.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Threshold } from '../readiness/working.ts';
import type { DentalAnswer, Evidence } from './evidence.ts';
import { exceptionFor } from './exceptions.ts';
import {
  type Blocker,
  type Judge,
  type Judgement,
  type Path,
  type Requirement,
  always,
  judgement,
  readyPath,
  withException,
} from './requirement.ts';

const trouble: Readonly<
  Partial<Record<DentalAnswer['answer'], { readonly verdict: 'not ready' | 'cannot say'; readonly cause: string }>>
> = {
  'work pending': { verdict: 'not ready', cause: 'dental work pending' },
  'socket not healed': { verdict: 'not ready', cause: 'socket not healed' },
  'jaw pain or loose tooth': { verdict: 'cannot say', cause: 'jaw pain or a loose tooth, not looked at' },
  'sore or loose denture': { verdict: 'cannot say', cause: 'sore or loose denture, not looked at' },
};

/** Trouble after which nobody has seen that nothing is left to heal, oldest first. */
function openTrouble(dental: readonly DentalAnswer[]): readonly DentalAnswer[] {
  const healed = dental.findLastIndex(({ answer }) => answer === 'seen: nothing left to heal');
  return dental.slice(healed + 1).filter(({ answer }) => trouble[answer] !== undefined);
}

const seenToday: NonNullable<Blocker['settled']> = (evidence) => ({
  dental: [
    ...evidence.dental,
    { answer: 'seen: nothing left to heal', on: evidence.today, checkedOn: evidence.today, entry: undefined },
  ],
});

function inputsOf(dental: readonly DentalAnswer[]) {
  return dental.map(({ answer, on, checkedOn, entry }) => ({
    label: 'teeth and jaw',
    text: checkedOn === undefined ? answer : `${answer}, checked ${shortDate(checkedOn)}`,
    on,
    ...(entry === undefined ? {} : { entry }),
  }));
}

function judgeTrouble(open: readonly DentalAnswer[]): Judge | undefined {
  const gravest = open.findLast(({ answer }) => trouble[answer]?.verdict === 'not ready') ?? open[open.length - 1];
  const found = gravest === undefined ? undefined : trouble[gravest.answer];
  if (gravest === undefined || found === undefined) return undefined;
  return always(
    judgement(found.verdict, found.cause, () => ({
      says: `Told on ${shortDate(gravest.on)}: ${gravest.answer}. It holds until somebody has seen and recorded that nothing is left to heal.`,
      inputs: inputsOf(open),
      cautions: ['A date on which a socket should have healed is a date on which to ask.'],
    })),
    {
      is: 'blocked',
      by: {
        what: `healing seen and recorded, or a prescriber's exception: ${found.cause}`,
        who: 'nurse',
        step: 'settle',
        settled: seenToday,
      },
    },
  );
}

const latestCheck = (dental: readonly DentalAnswer[], today: Day): Day | undefined =>
  dental.reduce<Day | undefined>(
    (latest, { checkedOn }) =>
      checkedOn !== undefined && checkedOn <= today && (latest === undefined || checkedOn > latest)
        ? checkedOn
        : latest,
    undefined,
  );

const reads = ['dental', 'today', 'exceptions'] as const;
type Read = Pick<Evidence, (typeof reads)[number]>;

function judgeAnswer({ dental, today }: Read, { number, sheet }: Protocol): Judge {
  const { teethAnswerDays, dentalValidDays } = number;
  const demanded = sheet.dentalCheck === 'demanded';
  const newest = dental[dental.length - 1];
  const checked = latestCheck(dental, today);
  const answerUntil = newest === undefined ? undefined : addDays(newest.on, teethAnswerDays);
  const checkUntil = checked === undefined ? undefined : addDays(checked, dentalValidDays);
  const noDentist = newest?.answer === 'cannot get a dentist';
  const thresholds: Threshold[] = [
    { key: 'teethAnswerDays' },
    ...(demanded ? ([{ key: 'dentalValidDays' }] as const) : []),
  ];
  const cautions = [
    ...(noDentist ? ['Cannot get a dentist: looked into the mouth here, and the wish for a check passed on.'] : []),
    ...(checked === undefined ? ['No dental check is recorded.'] : []),
  ];
  const say = (verdict: Judgement['verdict'], cause: string, says: () => string): Judgement =>
    judgement(verdict, cause, () => ({ says: says(), inputs: inputsOf(dental), thresholds, cautions }));

  const ready = say('ready', 'teeth and jaw', () =>
    newest === undefined || answerUntil === undefined
      ? ''
      : `Answered on ${shortDate(newest.on)}: ${newest.answer}; counts until ${shortDate(answerUntil)}.`,
  );
  const noCheck = say('cannot say', noDentist ? 'cannot get a dentist' : 'no dental check in date', () =>
    checked === undefined || checkUntil === undefined
      ? 'This protocol demands a dental check, and none is recorded.'
      : `The check of ${shortDate(checked)} counted until ${shortDate(checkUntil)}.`,
  );
  const unasked =
    newest === undefined || answerUntil === undefined
      ? say('cannot say', 'teeth and jaw never asked', () => 'Nobody has recorded an answer about teeth and jaw.')
      : say(
          'cannot say',
          `teeth and jaw last asked on ${shortDate(newest.on)}`,
          () => `The answer counted until ${shortDate(answerUntil)}: ask again.`,
        );
  const lacksCheck = (day: Day): boolean => demanded && (checkUntil === undefined || day > checkUntil);
  const lacksAnswer = (day: Day): boolean => answerUntil === undefined || day > answerUntil;
  const blocked: Path = {
    is: 'blocked',
    by: {
      what: noDentist
        ? 'a dental check, or a prescriber where no dentist can be had'
        : 'a dental check, or a prescriber without one',
      who: noDentist ? 'prescriber' : 'patient',
      step: 'settle',
      settled: seenToday,
    },
  };
  const ask: Path = {
    is: 'steps',
    needs: { ask: { what: 'teeth and jaw', validDays: teethAnswerDays, why: unasked.cause } },
  };
  return {
    changes: [
      ...(answerUntil === undefined ? [] : [addDays(answerUntil, 1)]),
      ...(demanded && checkUntil !== undefined ? [addDays(checkUntil, 1)] : []),
    ],
    on: (day) => (lacksCheck(day) ? noCheck : lacksAnswer(day) ? unasked : ready),
    path: (day) => (lacksCheck(day) ? blocked : lacksAnswer(day) ? ask : readyPath),
  };
}

function judge(evidence: Read, protocol: Protocol): Judge {
  return withException(
    judgeTrouble(openTrouble(evidence.dental)) ?? judgeAnswer(evidence, protocol),
    exceptionFor(evidence, protocol, 'teeth and jaw'),
    'teeth and jaw',
  );
}

export const teethAndJaw: Requirement<(typeof reads)[number]> = {
  id: 'teeth-and-jaw',
  title: 'Teeth and jaw',
  clearedBy:
    'the answer to the question; who has seen that nothing is left to heal; a dental check where one is demanded',
  exceptionPossible: true,
  reads,
  judge,
};
