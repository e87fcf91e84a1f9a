/** R5, R6, R8 - R14 of docs/readiness.md: hip repair, interval, the rest, and exceptions, each asked for one day. */
import { type Answer, CANNOT_SAY, NOT_READY, READY, decided, exceptionHolds } from './answer.ts';
import { ageOn, monthsLater } from './dates.ts';
import { above, below, exactly } from './fraction.ts';
import { isSigned, sameName, wellAgain } from './samples.ts';
import { severeLack } from './vitamin-d.ts';
import type { OracleFact } from './facts.ts';
import type { View } from './view.ts';

const last = <Item>(items: readonly Item[]): Item | undefined => items[items.length - 1];

// R5
export function hipRepair(view: View, day: number): Answer {
  if (exceptionHolds(view, 'hip repair', day)) return READY;
  const repairs = view.of('surgery').filter((fact) => fact.body.what !== 'other operation');
  for (const fracture of view.of('fracture')) {
    if (fracture.body.site !== 'hip' || repairs.some((repair) => repair.on >= fracture.on)) continue;
    if (decided(view, 'hip fracture looked into', fracture.ids)) continue;
    const saidRepaired = fracture.body.dateKnown && fracture.body.treated === 'repaired';
    if (!saidRepaired || day <= fracture.on + view.world.count('hipLookbackDays')) return CANNOT_SAY;
  }
  const repair = last(repairs);
  return repair !== undefined && day < repair.on + view.world.count('hipRepairDays') ? NOT_READY : READY;
}

// R6
type Dose = OracleFact<'dose'>;
const isOurs = (view: View, dose: Dose): boolean => dose.body.medicine === view.regimen.medicine;

const counts = (view: View, dose: Dose): boolean | undefined => {
  if (dose.body.partMilliliters === undefined) return true;
  const decision = last(
    view
      .of('prescriber-decision')
      .filter((fact) => fact.body.question.startsWith('part dose') && fact.body.about === dose.ids[0]),
  );
  return decision === undefined ? undefined : decision.body.question === 'part dose counts';
};

/** Of the regimen's medicine. */
export const countingDoses = (view: View): readonly Dose[] =>
  view.of('dose').filter((dose) => isOurs(view, dose) && counts(view, dose) === true);

export const undecidedPart = (view: View): boolean =>
  view.of('dose').some((dose) => isOurs(view, dose) && counts(view, dose) === undefined);

const isDenosumab = (medicine: string): boolean => medicine.startsWith('denosumab');

/** The regimen's months; the order's own when longer, and when shorter only for the second dose after denosumab, not too soon. */
function intervalMonths(view: View): number {
  const usual = view.regimen.intervalMonths;
  const own = last(view.of('prescription'))?.body.interval?.months;
  if (own === undefined || own >= usual) return own ?? usual;
  if (own < view.world.count('denosumabSecondDoseMonths')) return usual;
  const denosumab = last(view.of('dose').filter((dose) => isDenosumab(dose.body.medicine)));
  if (denosumab === undefined || isDenosumab(view.regimen.medicine)) return usual;
  return countingDoses(view).filter((dose) => dose.on > denosumab.on).length === 1 ? own : usual;
}

export function interval(view: View, day: number): Answer {
  if (undecidedPart(view)) return CANNOT_SAY;
  const previous = last(view.of('dose').filter((dose) => isOurs(view, dose)));
  if (previous !== undefined && day < monthsLater(previous.on, intervalMonths(view))) return NOT_READY;
  const otherProduct = view
    .of('dose')
    .some(
      (dose) =>
        dose.body.medicine === 'zoledronic acid 4 mg' &&
        day < monthsLater(dose.on, view.world.count('otherProductMonths')) &&
        !decided(view, 'after 4 mg product', dose.ids),
    );
  return otherProduct ? NOT_READY : READY;
}

// R8
export function identity(view: View, day: number): Answer {
  const body = last(view.of('identity'))?.body;
  const whole = body !== undefined && /^\d{4}-\d{2}-\d{2}$/.test(body.born) && body.number.trim() !== '';
  const isAdult = whole && ageOn(body.born, day) >= view.world.count('adultFromYears');
  return isAdult && !possibleDuplicate(view) ? READY : CANNOT_SAY;
}

/** The newest word, by writing, about each other ledger. The other's ledger is never at hand here. */
function possibleDuplicate(view: View): boolean {
  const words = new Map<string, OracleFact<'same-person'>>();
  for (const fact of view.of('same-person')) {
    const known = words.get(fact.body.other);
    if (known === undefined || fact.seq > known.seq) words.set(fact.body.other, fact);
  }
  return [...words.values()].some(({ body }) => body.answer !== 'two');
}

export function hypersensitivity(view: View): Answer {
  const answers = view.of('allergy').map(({ body }) => body);
  const [ours = ''] = view.regimen.medicine.split(' ');
  const group = ['zoledronic', 'ibandronate', 'pamidronate'].includes(ours) ? 'bisphosphonate' : ours;
  const words = group === 'bisphosphonate' ? ['dronat', 'dronic', 'zoled', 'bisphosphon', 'biphosphon'] : [ours];
  const against = answers.some((body) => {
    if (body.answer !== 'other') return body.answer === group;
    const told = [body.substance, body.reaction ?? ''].join(' ').toLowerCase();
    return body.medicine === group || words.some((word) => told.includes(word));
  });
  if (against) return NOT_READY;
  const open = severeUndecided(view).length > 0 || answers.some((body) => medicineUnknown(body));
  return open || answers.length === 0 ? CANNOT_SAY : READY;
}

export const severeUndecided = (view: View): readonly OracleFact<'reaction'>[] =>
  view.of('reaction').filter(({ body, ids }) => {
    const grave = ['anaphylaxis', 'uveitis', 'osteonecrosis of the jaw'].includes(body.term ?? '');
    return (
      (grave || body.severity === 'severe' || (body.grade ?? 0) >= 3) &&
      !decided(view, 'severe reaction looked into', ids)
    );
  });

export const medicineUnknown = (body: OracleFact<'allergy'>['body']): boolean =>
  body.answer === 'other' && [undefined, 'not known which'].includes(body.medicine);

export function pregnancy(view: View, day: number): Answer {
  const fact = last(view.of('pregnancy'));
  if (fact === undefined) return CANNOT_SAY;
  if (fact.body.answer === 'does not apply') return { verdict: 'does not apply' };
  if (fact.body.answer !== 'no') return NOT_READY;
  return day <= fact.on + view.world.count('pregnancyAnswerDays') ? READY : CANNOT_SAY;
}

export const illness = (view: View): Answer => (wellAgain(view).over ? READY : NOT_READY);

export function prescription(view: View, day: number): Answer {
  const body = last(view.of('prescription'))?.body;
  if (body === undefined || !view.world.sheet.regimens.some((regimen) => regimen.id === body.regimen))
    return CANNOT_SAY;
  if (day < view.day(body.validFrom)) return NOT_READY;
  return day <= view.day(body.validUntil) ? READY : CANNOT_SAY;
}

export const cannotDecide = (view: View): boolean => last(view.of('capacity'))?.body.answer === 'cannot decide this';

/** A no that no consent has come after, by its day and, on one day, by when it was written. */
export function saidNo(view: View): boolean {
  const no = last(view.of('refusal'));
  const yes = last(view.of('consent'));
  if (no === undefined) return false;
  return yes === undefined || yes.on < no.on || (yes.on === no.on && yes.seq < no.seq);
}

export function consent(view: View, day: number): Answer {
  const fact = last(view.of('consent'));
  if (saidNo(view)) return NOT_READY;
  if (fact === undefined || (fact.body.decision === 'given' && cannotDecide(view))) return CANNOT_SAY;
  if (fact.body.decision === 'not given') return NOT_READY;
  if (fact.body.decision === 'best interest' && view.of('dose').some((dose) => dose.on >= fact.on)) return CANNOT_SAY;
  return day <= fact.on + view.world.count('consentValidDays') ? READY : CANNOT_SAY;
}

// R10
export const isCleared = (view: View, fact: OracleFact, question?: string): boolean =>
  view.of('symptom-cleared').some(({ body }) => body.entry === fact.ids[0] && body.question === question);

export function symptoms(view: View, day: number): Answer {
  const teethPassed = exceptionHolds(view, 'teeth and jaw', day);
  const found: string[] = [];
  for (const fact of view.of('symptom')) {
    if (isCleared(view, fact)) continue;
    const { what } = fact.body;
    if (what === 'thigh, hip or groin pain') found.push('not ready');
    if (what === 'eye pain or redness' || what === 'tingling or cramps' || what === 'other') found.push('cannot say');
    if (what === 'jaw pain' && !teethPassed) found.push('cannot say');
  }
  for (const fact of view.of('checklist')) {
    for (const question of view.world.sheet.dayQuestions) {
      if (question.staysUntilCleared !== true || fact.body.answers[question.id]?.answer !== question.holdsOn) continue;
      if (isCleared(view, fact, question.id)) continue;
      if (question.exception === 'teeth and jaw' && teethPassed) continue;
      found.push(question.then);
    }
  }
  for (const fact of undecidedFractures(view)) found.push(isOfThigh(fact.body) ? 'not ready' : 'cannot say');
  return found.includes('not ready') ? NOT_READY : found.length > 0 ? CANNOT_SAY : READY;
}

type Broken = OracleFact<'fracture'>['body'];
const isOfThigh = ({ site, bone = '', note = '' }: Broken): boolean =>
  site === 'thigh shaft' ||
  (site === 'other' &&
    ['thigh', 'femur', 'femor', 'subtroch'].some((word) =>
      [bone, note].some((text) => text.toLowerCase().includes(word)),
    ));

/** Of the thigh, or of a bone nobody named. */
export const undecidedFractures = (view: View): readonly OracleFact<'fracture'>[] =>
  view
    .of('fracture')
    .filter(({ body }) => isOfThigh(body) || (body.site === 'other' && body.bone === undefined))
    .filter((fact) => !decided(view, 'thigh fracture not atypical', fact.ids));

// R11
export function otherBoneMedicines(view: View, day: number): Answer {
  const found = [...dosesOfOthers(view, day), ...takenAtHome(view, day)];
  return found.includes('not ready') ? NOT_READY : found.includes('cannot say') ? CANNOT_SAY : READY;
}

type Found = 'not ready' | 'cannot say';

function dosesOfOthers(view: View, day: number): readonly Found[] {
  const found: Found[] = [];
  const latest = new Map<string, Dose>();
  for (const dose of view.of('dose')) {
    const { medicine } = dose.body;
    if (isOurs(view, dose) || medicine === 'zoledronic acid 4 mg') continue;
    latest.set(isDenosumab(medicine) ? 'denosumab' : medicine, dose);
  }
  for (const [medicine, dose] of latest) {
    if (medicine === 'denosumab') {
      if (day < monthsLater(dose.on, view.world.count('denosumabIntervalMonths'))) found.push('not ready');
      continue;
    }
    if (medicine === 'teriparatide' && dose.body.until === undefined) {
      found.push('cannot say');
      continue;
    }
    const ended = dose.body.until === undefined ? dose.on : view.day(dose.body.until);
    const row = view.world.sheet.switches.find(
      ({ from, to }) => from === medicine && to.includes(view.regimen.medicine),
    );
    if (row !== undefined) {
      if (day < monthsLater(ended, row.earliestMonths)) found.push('not ready');
    } else if (!countingDoses(view).some((ours) => ours.on > ended) && !decided(view, 'switch agreed', dose.ids))
      found.push('cannot say');
  }
  return found;
}

/** Bone medicines taken elsewhere, the newest entry of each name. */
export function bonesAtHome(view: View): readonly OracleFact<'medicine'>[] {
  const sorts = ['bisphosphonate tablet', 'other bone medicine', 'oncology bone plan'];
  const told = view.of('medicine').filter(({ body }) => sorts.includes(body.sort));
  return told.filter(
    ({ body }, index) =>
      !told.slice(index + 1).some((later) => later.body.sort === body.sort && sameName(later.body.name, body.name)),
  );
}

const takenAtHome = (view: View, day: number): readonly Found[] =>
  bonesAtHome(view).flatMap(({ body }): Found[] =>
    body.stoppedOn !== undefined && day >= view.day(body.stoppedOn)
      ? []
      : [body.sort === 'oncology bone plan' ? 'not ready' : 'cannot say'],
  );

// R12
export function mineralMetabolism(view: View): Answer {
  const looked = (fact: OracleFact): boolean => decided(view, 'mineral metabolism looked into', fact.ids);
  const trouble = ({ body }: OracleFact<'result'>): boolean => {
    const { comparator, value } = body.quantity;
    if (body.analyte === 'alkaline phosphatase' || body.analyte === 'parathyroid hormone') {
      if (body.referenceHigh === undefined) return true;
      return comparator.startsWith('>') || above(exactly(value), exactly(body.referenceHigh));
    }
    if (body.referenceLow === undefined) return true;
    return comparator.startsWith('<') || below(exactly(value), exactly(body.referenceLow));
  };
  for (const analyte of ['alkaline phosphatase', 'parathyroid hormone', 'phosphate', 'magnesium']) {
    const results = view.of('result').filter(({ body }) => body.analyte === analyte);
    const newest = last(results);
    const deciding = [last(results.filter((result) => isSigned(view, result)))];
    if (newest !== undefined && !isSigned(view, newest)) deciding.push(newest);
    if (deciding.some((result) => result !== undefined && trouble(result) && !looked(result))) return CANNOT_SAY;
  }
  return view.of('condition').some((fact) => !looked(fact) && (fact.body.what !== 'bone pain' || severeLack(view)))
    ? CANNOT_SAY
    : READY;
}

// R13
export function teethAndJaw(view: View, day: number): Answer {
  if (exceptionHolds(view, 'teeth and jaw', day)) return READY;
  const entries = view.of('dental');
  const healed = entries.findLastIndex(({ body }) => body.answer === 'seen: nothing left to heal');
  const open = entries.slice(healed + 1).map(({ body }) => body.answer);
  if (open.includes('work pending') || open.includes('socket not healed')) return NOT_READY;
  if (open.includes('jaw pain or loose tooth') || open.includes('sore or loose denture')) return CANNOT_SAY;
  if (view.world.sheet.dentalCheck === 'demanded') {
    const checks = entries
      .flatMap(({ body }) => (body.checkedOn === undefined ? [] : [view.day(body.checkedOn)]))
      .filter((on) => on <= view.today);
    if (day > Math.max(-Infinity, ...checks) + view.world.count('dentalValidDays')) return CANNOT_SAY;
  }
  const newest = last(entries);
  return newest !== undefined && day <= newest.on + view.world.count('teethAnswerDays') ? READY : CANNOT_SAY;
}

// R14
export function secondaryCauses(view: View): Answer {
  if (view.of('dose').some(({ body }) => body.medicine.startsWith('zoledronic acid'))) return READY;
  const answer = last(view.of('secondary-causes'))?.body.answer;
  return answer === 'none found' || answer === 'found, dealt with' ? READY : CANNOT_SAY;
}
