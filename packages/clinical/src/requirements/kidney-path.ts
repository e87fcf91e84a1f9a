/** What would make the kidney function hold on a day, and what is never assumed about it (docs/readiness.md A2). */
import { type Day, addDays, shortDate } from '../calendar/day.ts';
import type { Evidence } from './evidence.ts';
import type { Protocol } from '../protocol/protocol.ts';
import { KidneyFacts } from './kidney-facts.ts';
import { type Blocker, type Needs, type Path, readyPath } from './requirement.ts';
import { isOutOfDate, isVoided } from './samples.ts';

const repeat = (): Partial<Evidence> => ({ creatinine: undefined });
const weighAnew = (): Partial<Evidence> => ({ weight: undefined });

/** Which weight decides, where they disagree. */
export const weightBlocker: Blocker = {
  what: 'a prescriber and a pharmacist: which weight decides',
  who: 'prescriber',
  step: 'prescriber decides',
  settled: () => ({ actualDecidesAssumed: true }),
};
const riseBlocker: Blocker = {
  what: 'a prescriber on the rise in creatinine, or a repeat',
  who: 'prescriber',
  step: 'prescriber decides',
  settled: repeat,
};

const lowBlocker: Blocker = {
  what: 'a prescriber: given at this clearance or not, and calcium looked at afterwards',
  who: 'prescriber',
  step: 'prescriber decides',
  settled: repeat,
};

const birthDateBlocker: Blocker = {
  what: 'the birth date to the day: ask, never assume one',
  who: 'clerk',
  step: 'complete identity',
  settled: undefined,
};

/** The first matter that only a person can settle; undefined: steps alone will do. */
function blockerOn(facts: KidneyFacts, day: Day): Blocker | undefined {
  const { evidence, protocol, birth, umol, kg, count } = facts;
  const { creatinine, weight, sex } = evidence;
  if (birth === undefined) return birthDateBlocker;
  if (sex === undefined)
    return { what: 'the sex as registered', who: 'clerk', step: 'complete identity', settled: undefined };
  if (facts.lacksHeight)
    return { what: 'the peak adult height: measure or ask', who: 'nurse', step: 'settle', settled: undefined };
  if (creatinine !== undefined) {
    if (isVoided(creatinine, count)) {
      return {
        what: `a new creatinine: that of ${shortDate(creatinine.on)} no longer counts`,
        who: 'nurse',
        step: 'repeat result',
        settled: repeat,
      };
    }
    if (umol === undefined && creatinine.value !== 'assumed good') {
      return { what: 'a creatinine that can be used', who: 'nurse', step: 'repeat result', settled: repeat };
    }
    if (facts.risen) return riseBlocker;
  }
  if (weight !== undefined && kg === undefined && weight.value !== 'assumed good') {
    return { what: 'a weight that can be used', who: 'nurse', step: 'repeat result', settled: weighAnew };
  }
  const age = facts.ageAt(day);
  if (facts.isLowAt(age)) {
    if (facts.mayBeLow) return undefined;
    if (protocol.regimen.belowClearanceFloor === 'a prescriber decides') return lowBlocker;
    return {
      what: 'a prescriber: repeat creatinine and weight, then decide',
      who: 'prescriber',
      step: 'repeat result',
      settled: repeat,
    };
  }
  return facts.weightsDisagreeAt(age) ? weightBlocker : undefined;
}

/** A prescriber's decision is about the value it was made for: had again, the value needs another, which is never assumed. */
function blockerOfRepeat(facts: KidneyFacts, day: Day, { draw, weigh }: Needs): Blocker | undefined {
  if (draw !== undefined && facts.repeatRises) return riseBlocker;
  if (facts.birth === undefined) return undefined;
  const age = facts.ageAt(day);
  if (draw !== undefined && facts.isLowAt(age)) return lowBlocker;
  const anew = draw !== undefined || weigh !== undefined;
  return anew && facts.weightsDisagreeAnewAt(age) ? weightBlocker : undefined;
}

/** A draw for another test weighs too: a weight that a prescriber let decide would be replaced by one nobody has decided on. */
export function losesWeightDecision(evidence: Evidence, protocol: Protocol, day: Day): boolean {
  if (protocol.leavesOut.has('kidney-function')) return false;
  if (evidence.weight?.actualDecides !== true) return false;
  const facts = new KidneyFacts(evidence, protocol);
  return facts.birth !== undefined && facts.weightsDisagreeAnewAt(facts.ageAt(day));
}

export function kidneyPath(facts: KidneyFacts, day: Day): Path {
  const by = blockerOn(facts, day);
  if (by !== undefined) return { is: 'blocked', by };
  const { creatinine, weight } = facts.evidence;
  const { bloodsValidDays, weightValidDays } = facts.protocol.number;
  const needs: { -readonly [Key in keyof Needs]: Needs[Key] } = {};
  if (creatinine === undefined || isOutOfDate(creatinine, day, bloodsValidDays, facts.ageException)) {
    needs.draw = {
      test: 'creatinine',
      validDays: bloodsValidDays,
      neverMeasured: creatinine === undefined,
      why:
        creatinine === undefined
          ? 'creatinine was never measured'
          : `bloods of ${shortDate(creatinine.on)} count until ${shortDate(addDays(creatinine.on, bloodsValidDays))}`,
    };
  } else if (!creatinine.signed && creatinine.entry !== undefined) {
    needs.sign = { results: [creatinine.entry], why: `bloods of ${shortDate(creatinine.on)} are not signed` };
  }
  const changed = facts.weightChangedFrom !== undefined;
  if (weight === undefined || weight.method === 'estimated' || changed || isOutOfDate(weight, day, weightValidDays)) {
    needs.weigh = { validDays: weightValidDays, neverMeasured: weight === undefined, why: whyWeigh(facts) };
  }
  const undecided = blockerOfRepeat(facts, day, needs);
  if (undecided !== undefined) return { is: 'blocked', by: undecided };
  return needs.draw === undefined && needs.sign === undefined && needs.weigh === undefined
    ? readyPath
    : { is: 'steps', needs };
}

function whyWeigh({ evidence: { weight }, protocol, weightChangedFrom }: KidneyFacts): string {
  if (weight === undefined) return 'weight was never recorded';
  if (weight.method === 'estimated') return 'the weight was only estimated';
  const from = weightChangedFrom;
  if (from !== undefined)
    return `weight changed by more than ${protocol.number.weightChangePercent} % since ${shortDate(from.on)}: weigh again`;
  return `weight of ${shortDate(weight.on)} counts until ${shortDate(addDays(weight.on, protocol.number.weightValidDays))}`;
}
