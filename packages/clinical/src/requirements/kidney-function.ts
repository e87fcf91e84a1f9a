/**
 * Creatinine clearance from a creatinine and a weight in date, by both printed forms, at the age of the day
 * (docs/readiness.md R2). Acute change and a disagreement with ideal weight are a prescriber's.
 */
import { type Day, addDays, shortDate } from '../calendar/day.ts';
import { plausibility } from '../exact/plausible.ts';
import { type Quantity, quantityText } from '../exact/quantity.ts';
import { eitherBelow } from '../formulas/creatinine-clearance.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Sample, Weighed } from './evidence.ts';
import { carryingEnds } from './exceptions.ts';
import { type KidneyEvidence, KidneyFacts, kidneyReads } from './kidney-facts.ts';
import { kidneyPath } from './kidney-path.ts';
import { clearanceText, kidneyWorking } from './kidney-working.ts';
import { type Judge, type Judgement, type Requirement, byException, judgement } from './requirement.ts';
import { isOutOfDate, isVoided, whyVoided } from './samples.ts';

/** A fact that is missing or does not count, so that nothing can be said: its cause, and a sentence. */
type Missing = { readonly cause: string; readonly says: string };

function missingFrom({ evidence, birth, lacksHeight }: KidneyFacts): Missing | undefined {
  if (birth === undefined) {
    return {
      cause: 'age not known, so clearance',
      says: 'The birth date is not known to the day, so neither age nor clearance can be said.',
    };
  }
  if (evidence.sex === undefined)
    return { cause: 'sex not recorded, so clearance', says: 'The clearance formula needs the sex as registered.' };
  if (lacksHeight)
    return {
      cause: 'height not recorded, so ideal weight',
      says: 'This protocol lets another weight than the actual decide, and no usable height tells it.',
    };
  return undefined;
}

/** " Is it 0.9 mg/dL?", where the number would be usual in another unit. */
function otherUnit(measure: 'creatinine', { value, unit }: Quantity): string {
  const { betterAs } = plausibility(measure, unit, Number(value));
  return betterAs === undefined ? '' : ` Is it ${value} ${betterAs}?`;
}

function creatinineTrouble({ evidence: { creatinine }, umol, count }: KidneyFacts): Missing | undefined {
  if (creatinine === undefined) return { cause: 'creatinine never measured', says: 'No creatinine is in these notes.' };
  const on = shortDate(creatinine.on);
  if (isVoided(creatinine, count)) {
    return {
      cause: `bloods of ${on} no longer count`,
      says: `The creatinine of ${on} no longer counts: ${whyVoided(creatinine, count)}.`,
    };
  }
  if (creatinine.contradicted) {
    return {
      cause: `two creatinines of ${on} differ`,
      says: 'Two values of one day say otherwise and both stand: withdraw or correct the one that is wrong, or repeat.',
    };
  }
  if (umol === undefined && typeof creatinine.value !== 'string') {
    return {
      cause: 'creatinine cannot be used as reported',
      says: `Reported as ${quantityText(creatinine.value)}: not a plain number in umol/L or mg/dL that a body can have.${otherUnit('creatinine', creatinine.value)}`,
    };
  }
  if (!creatinine.signed) {
    return {
      cause: `bloods of ${on} not signed`,
      says: 'Nobody has signed that this creatinine has been read and belongs to this person.',
    };
  }
  return undefined;
}

function weightTrouble({ evidence: { weight }, kg }: KidneyFacts): Missing | undefined {
  if (weight === undefined) return { cause: 'weight never recorded', says: 'No body weight is in these notes.' };
  if (kg === undefined && typeof weight.value !== 'string') {
    return {
      cause: 'weight cannot be used as recorded',
      says: `Written as ${quantityText(weight.value)}: not a plain number in kg or lb that a body can have.`,
    };
  }
  if (weight.method === 'estimated') {
    return {
      cause: `weight of ${shortDate(weight.on)} only estimated`,
      says: 'An estimated weight does not count: weigh.',
    };
  }
  return undefined;
}

const bloodsOutOfDate = ({ on }: Sample, validDays: number): Missing => ({
  cause: `bloods of ${shortDate(on)} out of date`,
  says: `The sample counts for ${validDays} days, up to ${shortDate(addDays(on, validDays))}.`,
});
const weightOutOfDate = ({ on }: Weighed, validDays: number): Missing => ({
  cause: `weight of ${shortDate(on)} out of date`,
  says: `A weight counts for ${validDays} days, up to ${shortDate(addDays(on, validDays))}.`,
});

function judgeAtAge(facts: KidneyFacts, age: number): Judgement {
  const clearance = facts.clearanceAt(age);
  if (clearance === undefined) {
    return judgement('ready', 'kidney function, if good', () =>
      kidneyWorking(facts, 'Assumed good: not measured yet.', undefined),
    );
  }
  const { clearanceFloor, nearLimitCeiling } = facts.protocol.exact;
  const working = (says?: string) => () => kidneyWorking(facts, says, { age, clearance });
  const isLow = facts.isLowAt(age);
  if (isLow && !facts.mayBeLow) {
    const cause = `kidney function at ${age}: ${clearanceText(clearance, clearanceFloor)}`;
    return facts.protocol.regimen.belowClearanceFloor === 'not given'
      ? judgement('not ready', cause, working())
      : judgement(
          'cannot say',
          cause,
          working(
            'Below this clearance low calcium threatens: a prescriber decides whether it is given, and calcium is looked at afterwards.',
          ),
        );
  }
  if (facts.risen) {
    return judgement(
      'cannot say',
      'creatinine has risen',
      working('Creatinine has risen on the own baseline: whatever the clearance, a prescriber is asked.'),
    );
  }
  const changedFrom = facts.weightChangedFrom;
  if (changedFrom !== undefined) {
    const { value, on } = changedFrom;
    return judgement(
      'cannot say',
      `weight changed by more than ${facts.protocol.number.weightChangePercent} %`,
      working(
        `On ${shortDate(on)} it was ${quantityText(value)}. Weigh again: a slip of unit or of a figure, a plaster or water may stand behind it. If it is true, a prescriber looks into it.`,
      ),
    );
  }
  if (facts.weightsDisagreeAt(age)) {
    return judgement(
      'cannot say',
      'ideal weight gives another answer',
      working(
        `By the ${facts.deciding?.sort ?? 'actual'} weight the clearance passes, by a lighter one it does not: prescriber and pharmacist choose and record.`,
      ),
    );
  }
  return judgement('ready', 'kidney function', working(), eitherBelow(clearance, nearLimitCeiling));
}

function judge(evidence: KidneyEvidence, protocol: Protocol): Judge {
  const facts = new KidneyFacts(evidence, protocol);
  const { creatinine, weight } = evidence;
  const { birth, ageException } = facts;
  const { bloodsValidDays, weightValidDays } = protocol.number;
  const cannotSay = ({ cause, says }: Missing): Judgement =>
    judgement('cannot say', cause, () => kidneyWorking(facts, says, undefined));

  const lasting = missingFrom(facts) ?? creatinineTrouble(facts);
  const byWeight = weightTrouble(facts);
  const always = lasting === undefined ? undefined : cannotSay(lasting);
  const unweighed = byWeight === undefined ? undefined : cannotSay(byWeight);
  let oldBloods: Judgement | undefined;
  let oldWeight: Judgement | undefined;
  /** At the age asked about last: days are asked about in order, and most are of one age. */
  let atAge: { readonly age: number; readonly stands: Judgement; carried: Judgement | undefined } | undefined;

  function on(day: Day): Judgement {
    if (always !== undefined) return always;
    if (creatinine === undefined || birth === undefined)
      throw new RangeError('a creatinine and a birth date that are there and not there');
    if (isOutOfDate(creatinine, day, bloodsValidDays, ageException))
      return (oldBloods ??= cannotSay(bloodsOutOfDate(creatinine, bloodsValidDays)));
    if (unweighed !== undefined) return unweighed;
    if (weight !== undefined && isOutOfDate(weight, day, weightValidDays))
      return (oldWeight ??= cannotSay(weightOutOfDate(weight, weightValidDays)));
    const age = facts.ageAt(day);
    if (atAge?.age !== age) atAge = { age, stands: judgeAtAge(facts, age), carried: undefined };
    if (!isOutOfDate(creatinine, day, bloodsValidDays)) return atAge.stands;
    // Past its days, but a prescriber's exception carries it: shown beside whatever the value says.
    return (atAge.carried ??= byException(atAge.stands, ageException?.entry));
  }

  const changes: Day[] = [...facts.birthdays, ...carryingEnds(ageException, creatinine)];
  if (creatinine !== undefined) changes.push(addDays(creatinine.on, bloodsValidDays + 1));
  if (weight !== undefined) changes.push(addDays(weight.on, weightValidDays + 1));
  return { changes, on, path: (day) => kidneyPath(facts, day) };
}

export const kidneyFunction: Requirement<(typeof kidneyReads)[number]> = {
  id: 'kidney-function',
  title: 'Kidney function',
  clearedBy:
    'new bloods and weight; a prescriber where creatinine has risen or the weight decides, and below the limit where the regimen says so. No exception',
  exceptionPossible: false,
  reads: kidneyReads,
  judge,
};
