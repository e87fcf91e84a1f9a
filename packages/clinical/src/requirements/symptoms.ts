/** What the person told us and nobody has cleared: pain is not over because it is not mentioned (docs/readiness.md R10). */
import { type Day, addDays, shortDate } from '../calendar/day.ts';
import type { BodyOfKind } from '../kinds/index.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Fact } from '../record/patient-record.ts';
import type { Evidence } from './evidence.ts';
import { exceptionFor } from './exceptions.ts';
import {
  type Judge,
  type Judgement,
  type Path,
  type Requirement,
  always,
  byException,
  judgement,
  readyPath,
} from './requirement.ts';
import { heldByFractures } from './thigh-fracture.ts';

type Holding = {
  readonly verdict: 'not ready' | 'cannot say';
  readonly cause: string;
  readonly told: Fact;
  /** "Teeth and jaw": a prescriber's exception passes it over while it lasts. */
  readonly excepted: boolean;
};

/** Back pain and height loss belong to the course (R7). */
const held: Readonly<
  Partial<Record<BodyOfKind<'symptom'>['what'], Pick<Holding, 'verdict' | 'cause'> & { excepted?: true }>>
> = {
  'thigh, hip or groin pain': { verdict: 'not ready', cause: 'suspected atypical fracture: X-ray first' },
  'eye pain or redness': { verdict: 'cannot say', cause: 'eye pain or redness not cleared' },
  'jaw pain': { verdict: 'cannot say', cause: 'jaw pain not cleared', excepted: true },
  other: { verdict: 'cannot say', cause: 'something else told, not looked into' },
  'tingling or cramps': { verdict: 'cannot say', cause: 'tingling or cramps: calcium to be looked at' },
};

/** X-ray first: what holds so is cleared by a prescriber and nobody else (docs/readiness.md R10). */
export const isPrescribersToClear = (what: BodyOfKind<'symptom'>['what']): boolean =>
  held[what]?.verdict === 'not ready';

const reads = ['told', 'isAnswerCleared', 'undecidedFractures', 'exceptions'] as const;
type Read = Pick<Evidence, (typeof reads)[number]>;

const none: readonly Holding[] = [];

function holdingOf({ told: all, isAnswerCleared, undecidedFractures }: Read, protocol: Protocol): readonly Holding[] {
  if (all.length === 0 && undecidedFractures.length === 0) return none;
  const holding: Holding[] = heldByFractures(undecidedFractures).map((held) => ({ ...held, excepted: false }));
  for (const told of all) {
    if (told.kind === 'symptom') {
      const found = held[told.body.what];
      if (found !== undefined) holding.push({ ...found, told, excepted: found.excepted === true });
      continue;
    }
    const { answers } = told.body;
    for (const { id, holdsOn, staysUntilCleared, then, says, exception } of protocol.sheet.dayQuestions) {
      if (staysUntilCleared === true && answers[id]?.answer === holdsOn && !isAnswerCleared(told.id, id))
        holding.push({ verdict: then, cause: says, told, excepted: exception !== undefined });
    }
  }
  return holding;
}

const inputsOf = (holding: readonly Holding[]) =>
  holding.map(({ cause, told }) => ({ label: 'told, not cleared', text: cause, on: told.on, entry: told.id }));

const sayNothing = () => ({ says: 'Nothing that holds a dose is left uncleared.' });

function judged(holding: readonly Holding[]): Judgement {
  const gravest = holding.find(({ verdict }) => verdict === 'not ready') ?? holding[0];
  if (gravest === undefined) return judgement('ready', 'no symptom', sayNothing);
  return judgement(gravest.verdict, gravest.cause, () => ({
    says: `Told on ${shortDate(gravest.told.on)} and not cleared: ${gravest.cause}.`,
    inputs: inputsOf(holding),
    cautions: ['It holds every dose until a registered practitioner has looked and recorded what was found.'],
  }));
}

function blocked(holding: readonly Holding[]): Path {
  const grave = holding.some(({ verdict }) => verdict === 'not ready');
  return {
    is: 'blocked',
    by: {
      what: `look into it and record what was found: ${[...new Set(holding.map(({ cause }) => cause))].join(', ')}`,
      who: grave ? 'prescriber' : 'nurse',
      step: 'settle',
      settled: () => ({ told: [], undecidedFractures: [] }),
    },
  };
}

function judge(evidence: Read, protocol: Protocol): Judge {
  const all = holdingOf(evidence, protocol);
  if (all.length === 0) return always(judged(all), readyPath);
  const whole = judged(all);
  const path = blocked(all);
  const exception = exceptionFor(evidence, protocol, 'teeth and jaw');
  const left = all.filter(({ excepted }) => !excepted);
  if (exception === undefined || left.length === all.length) return always(whole, path);
  const passedOver = byException(judged(left), exception.entry);
  const leftPath = left.length === 0 ? readyPath : blocked(left);
  const lasts = (day: Day): boolean => exception.from <= day && day <= exception.until;
  return {
    changes: [addDays(exception.until, 1)],
    on: (day) => (lasts(day) ? passedOver : whole),
    path: (day) => (lasts(day) ? leftPath : path),
  };
}

export const symptoms: Requirement<(typeof reads)[number]> = {
  id: 'symptoms',
  title: 'Symptoms not cleared',
  clearedBy:
    'a registered practitioner who has looked and records what was found; a prescriber for thigh pain or a fracture of the thigh. Never by exception',
  exceptionPossible: true,
  reads,
  judge,
};
