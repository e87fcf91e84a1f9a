/**
 * Teeth and jaw, ahead of the day: pending work and an unhealed socket hold until somebody has seen and recorded that nothing is
 * left to heal; an answer ages and is asked for again; a check is demanded where the protocol says so (docs/readiness.md R13).
 */
import { type Day, addDays, shortDate } from '../calendar/day.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Threshold, Working } from '../readiness/working.ts';
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

const isTrouble = ({ answer }: DentalAnswer): boolean => trouble[answer] !== undefined;
const none: readonly DentalAnswer[] = [];

/** Trouble after which nobody has seen that nothing is left to heal, oldest first. */
function openTrouble(dental: readonly DentalAnswer[]): readonly DentalAnswer[] {
  if (!dental.some(isTrouble)) return none;
  const healed = dental.findLastIndex(({ answer }) => answer === 'seen: nothing left to heal');
  return dental.slice(healed + 1).filter(isTrouble);
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

function latestCheck(dental: readonly DentalAnswer[], today: Day): Day | undefined {
  let latest: Day | undefined;
  for (const { checkedOn } of dental)
    if (checkedOn !== undefined && checkedOn <= today && (latest === undefined || checkedOn > latest))
      latest = checkedOn;
  return latest;
}

const reads = ['dental', 'today', 'exceptions'] as const;
type Read = Pick<Evidence, (typeof reads)[number]>;

/** A class: what is asked of it on a day is not made anew, and what is said is made when a day first asks for it. */
class AnswerJudge implements Judge {
  readonly changes: readonly Day[];
  readonly #dental: readonly DentalAnswer[];
  readonly #newest: DentalAnswer | undefined;
  readonly #answerDays: number;
  readonly #demanded: boolean;
  readonly #checked: Day | undefined;
  readonly #answerUntil: Day | undefined;
  readonly #checkUntil: Day | undefined;
  #ready: Judgement | undefined;
  #noCheck: Judgement | undefined;
  #unasked: Judgement | undefined;

  constructor({ dental, today }: Read, { number, sheet }: Protocol) {
    const newest = dental[dental.length - 1];
    const checked = latestCheck(dental, today);
    this.#dental = dental;
    this.#newest = newest;
    this.#checked = checked;
    this.#demanded = sheet.dentalCheck === 'demanded';
    this.#answerDays = number.teethAnswerDays;
    this.#answerUntil = newest === undefined ? undefined : addDays(newest.on, number.teethAnswerDays);
    this.#checkUntil = checked === undefined ? undefined : addDays(checked, number.dentalValidDays);
    const changes: Day[] = [];
    if (this.#answerUntil !== undefined) changes.push(addDays(this.#answerUntil, 1));
    if (this.#demanded && this.#checkUntil !== undefined) changes.push(addDays(this.#checkUntil, 1));
    this.changes = changes;
  }

  on(day: Day): Judgement {
    if (this.#lacksCheck(day)) return (this.#noCheck ??= this.#sayNoCheck());
    return this.#lacksAnswer(day) ? (this.#unasked ??= this.#sayUnasked()) : (this.#ready ??= this.#sayReady());
  }

  path(day: Day): Path {
    if (this.#lacksCheck(day)) return this.#noDentist ? asksPrescriber : asksCheck;
    if (!this.#lacksAnswer(day)) return readyPath;
    const why = this.on(day).cause;
    return { is: 'steps', needs: { ask: { what: 'teeth and jaw', validDays: this.#answerDays, why } } };
  }

  #lacksCheck(day: Day): boolean {
    return this.#demanded && (this.#checkUntil === undefined || day > this.#checkUntil);
  }

  #lacksAnswer(day: Day): boolean {
    return this.#answerUntil === undefined || day > this.#answerUntil;
  }

  get #noDentist(): boolean {
    return this.#newest?.answer === 'cannot get a dentist';
  }

  #working(says: string): Partial<Working> & { readonly says: string } {
    const cautions: string[] = [];
    if (this.#noDentist)
      cautions.push('Cannot get a dentist: looked into the mouth here, and the wish for a check passed on.');
    if (this.#checked === undefined) cautions.push('No dental check is recorded.');
    const thresholds = this.#demanded ? answerAndCheck : answerAlone;
    return { says, inputs: inputsOf(this.#dental), thresholds, cautions };
  }

  #sayReady(): Judgement {
    const [newest, until] = [this.#newest, this.#answerUntil];
    return judgement('ready', 'teeth and jaw', () =>
      this.#working(
        newest === undefined || until === undefined
          ? ''
          : `Answered on ${shortDate(newest.on)}: ${newest.answer}; counts until ${shortDate(until)}.`,
      ),
    );
  }

  #sayNoCheck(): Judgement {
    const [checked, until] = [this.#checked, this.#checkUntil];
    return judgement('cannot say', this.#noDentist ? 'cannot get a dentist' : 'no dental check in date', () =>
      this.#working(
        checked === undefined || until === undefined
          ? 'This protocol demands a dental check, and none is recorded.'
          : `The check of ${shortDate(checked)} counted until ${shortDate(until)}.`,
      ),
    );
  }

  #sayUnasked(): Judgement {
    const [newest, until] = [this.#newest, this.#answerUntil];
    if (newest === undefined || until === undefined)
      return judgement('cannot say', 'teeth and jaw never asked', () =>
        this.#working('Nobody has recorded an answer about teeth and jaw.'),
      );
    return judgement('cannot say', `teeth and jaw last asked on ${shortDate(newest.on)}`, () =>
      this.#working(`The answer counted until ${shortDate(until)}: ask again.`),
    );
  }
}

const answerAlone: readonly Threshold[] = [{ key: 'teethAnswerDays' }];
const answerAndCheck: readonly Threshold[] = [...answerAlone, { key: 'dentalValidDays' }];

const asksCheck: Path = {
  is: 'blocked',
  by: { what: 'a dental check, or a prescriber without one', who: 'patient', step: 'settle', settled: seenToday },
};
const asksPrescriber: Path = {
  is: 'blocked',
  by: {
    what: 'a dental check, or a prescriber where no dentist can be had',
    who: 'prescriber',
    step: 'settle',
    settled: seenToday,
  },
};

function judge(evidence: Read, protocol: Protocol): Judge {
  return withException(
    judgeTrouble(openTrouble(evidence.dental)) ?? new AnswerJudge(evidence, protocol),
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
