/** R5, R6, R8 - R12 of docs/readiness.md: hip repair, interval, course, the rest, and exceptions, each asked for one day. */
import { type Answer, CANNOT_SAY, NOT_READY, READY, decided, exceptionHolds } from './answer.ts';
import { monthsLater } from './dates.ts';
import { above, below, exactly } from './fraction.ts';
import type { OracleFact } from './facts.ts';
import type { View } from './view.ts';

const last = <Item>(items: readonly Item[]): Item | undefined => items[items.length - 1];

// R5
export function hipRepair(view: View, day: number): Answer {
  if (exceptionHolds(view, 'hip repair', day)) return READY;
  const repairs = view.of('surgery').filter((fact) => fact.body.what !== 'other operation');
  for (const fracture of view.of('fracture')) {
    if (fracture.body.site !== 'hip' || repairs.some((repair) => repair.on >= fracture.on)) continue;
    if (!fracture.body.dateKnown || day <= fracture.on + view.world.count('hipLookbackDays')) return CANNOT_SAY;
  }
  const repair = last(repairs);
  return repair !== undefined && day < repair.on + view.world.count('hipRepairDays') ? NOT_READY : READY;
}

// R6
type Dose = OracleFact<'dose'>;
const isFive = (dose: Dose): boolean => dose.body.medicine === 'zoledronic acid 5 mg';

const counts = (view: View, dose: Dose): boolean | undefined => {
  if (dose.body.partMilliliters === undefined) return true;
  const decision = last(
    view
      .of('prescriber-decision')
      .filter((fact) => fact.body.question.startsWith('part dose') && dose.ids.includes(fact.body.about)),
  );
  return decision === undefined ? undefined : decision.body.question === 'part dose counts';
};

export const countingDoses = (view: View): readonly Dose[] =>
  view.of('dose').filter((dose) => isFive(dose) && counts(view, dose) === true);

export function regimenOf(view: View): { readonly intervalMonths: number; readonly plannedDoses: number } {
  const named = last(view.of('prescription'))?.body.regimen;
  const regimens = view.world.sheet.regimens;
  const regimen = regimens.find((candidate) => candidate.id === named) ?? regimens[0];
  if (regimen === undefined) throw new RangeError('a rule sheet without a regimen');
  return regimen;
}

export const undecidedPart = (view: View): boolean =>
  view.of('dose').some((dose) => isFive(dose) && counts(view, dose) === undefined);

export function interval(view: View, day: number): Answer {
  if (undecidedPart(view)) return CANNOT_SAY;
  const regimens = regimenOf(view).intervalMonths;
  const own = last(view.of('prescription'))?.body.interval?.months ?? regimens;
  const denosumab = last(view.of('dose').filter(({ body }) => body.medicine.startsWith('denosumab')));
  const given = countingDoses(view);
  const isSecond = denosumab !== undefined && given.filter(({ on }) => on > denosumab.on).length === 1;
  const months = own < regimens && !isSecond ? regimens : own;
  const previous = last(given);
  if (previous !== undefined && day < monthsLater(previous.on, months)) return NOT_READY;
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
export function identity(view: View): Answer {
  const body = last(view.of('identity'))?.body;
  return body !== undefined && /^\d{4}-\d{2}-\d{2}$/.test(body.born) && body.number.trim() !== '' ? READY : CANNOT_SAY;
}

export function hypersensitivity(view: View): Answer {
  const answers = view.of('allergy');
  if (answers.some((fact) => fact.body.answer === 'bisphosphonate')) return NOT_READY;
  return answers.length > 0 ? READY : CANNOT_SAY;
}

export function pregnancy(view: View, day: number): Answer {
  const fact = last(view.of('pregnancy'));
  if (fact === undefined) return CANNOT_SAY;
  if (fact.body.answer === 'does not apply') return { verdict: 'does not apply' };
  if (fact.body.answer !== 'no') return NOT_READY;
  return day <= fact.on + view.world.count('pregnancyAnswerDays') ? READY : CANNOT_SAY;
}

export function illness(view: View): Answer {
  const well = Math.max(-Infinity, ...view.of('well-since').map((fact) => fact.on));
  return view.of('illness').some((ill) => ill.on > well) ? NOT_READY : READY;
}

export function prescription(view: View, day: number): Answer {
  const body = last(view.of('prescription'))?.body;
  if (body === undefined || !view.world.sheet.regimens.some((regimen) => regimen.id === body.regimen))
    return CANNOT_SAY;
  if (day < view.day(body.validFrom)) return NOT_READY;
  return day <= view.day(body.validUntil) ? READY : CANNOT_SAY;
}

export function consent(view: View): Answer {
  const body = last(view.of('consent'))?.body;
  if (body === undefined) return CANNOT_SAY;
  return body.decision === 'not given' ? NOT_READY : READY;
}

// R10
export const isCleared = (view: View, fact: OracleFact): boolean =>
  view.of('symptom-cleared').some((cleared) => fact.ids.includes(cleared.body.entry));

export function symptoms(view: View, day: number): Answer {
  const teethPassed = exceptionHolds(view, 'teeth and jaw', day);
  const found: string[] = [];
  for (const fact of view.of('symptom')) {
    if (isCleared(view, fact)) continue;
    const { what } = fact.body;
    if (what === 'thigh, hip or groin pain') found.push('not ready');
    if (what === 'eye pain or redness' || what === 'tingling or cramps') found.push('cannot say');
    if (what === 'jaw pain' && !teethPassed) found.push('cannot say');
  }
  for (const fact of view.of('checklist')) {
    if (isCleared(view, fact)) continue;
    for (const question of view.world.sheet.dayQuestions) {
      if (question.staysUntilCleared !== true || fact.body.answers[question.id]?.answer !== question.holdsOn) continue;
      if (question.exception === 'teeth and jaw' && teethPassed) continue;
      found.push(question.then);
    }
  }
  return found.includes('not ready') ? NOT_READY : found.length > 0 ? CANNOT_SAY : READY;
}

// R11
export function otherBoneMedicines(view: View, day: number): Answer {
  const denosumab = view.of('dose').filter((dose) => dose.body.medicine.startsWith('denosumab'));
  if (denosumab.some((dose) => day < monthsLater(dose.on, view.world.count('denosumabIntervalMonths'))))
    return NOT_READY;
  const bone = view
    .of('medicine')
    .filter(({ body }) => body.sort === 'bisphosphonate tablet' || body.sort === 'other bone medicine');
  const named = (fact: OracleFact<'medicine'>): string => `${fact.body.sort}/${fact.body.name.trim().toLowerCase()}`;
  return bone.some((fact, index) => {
    if (bone.slice(index + 1).some((later) => named(later) === named(fact))) return false;
    return fact.body.stoppedOn === undefined || day < view.day(fact.body.stoppedOn);
  })
    ? CANNOT_SAY
    : READY;
}

// R12
export function mineralMetabolism(view: View): Answer {
  const signed = view
    .of('result')
    .filter(({ ids }) => view.of('results-signed').some(({ body }) => body.results.some((id) => ids.includes(id))));
  const newest = (analyte: string) => last(signed.filter(({ body }) => body.analyte === analyte));
  const looked = (fact: OracleFact<'result'>): boolean => decided(view, 'mineral metabolism looked into', fact.ids);
  for (const analyte of ['alkaline phosphatase', 'parathyroid hormone']) {
    const fact = newest(analyte);
    if (fact?.body.referenceHigh === undefined || looked(fact)) continue;
    const { comparator, value } = fact.body.quantity;
    if (comparator.startsWith('>') || above(exactly(value), exactly(fact.body.referenceHigh))) return CANNOT_SAY;
  }
  for (const analyte of ['phosphate', 'magnesium']) {
    const fact = newest(analyte);
    if (fact?.body.referenceLow === undefined || looked(fact)) continue;
    const { comparator, value } = fact.body.quantity;
    if (comparator.startsWith('<') || below(exactly(value), exactly(fact.body.referenceLow))) return CANNOT_SAY;
  }
  return READY;
}
