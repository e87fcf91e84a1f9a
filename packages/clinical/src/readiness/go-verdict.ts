/**
 * The verdict for the day of the visit: everything settled ahead as it stands today, plus what only the day can settle: the
 * questions of the day, the observations before the dose, a weight of today (docs/readiness.md, "One requirement"). Unanswered is never a yes.
 */
import { type Day } from '../calendar/day.ts';
import { type Scaled, scaledText } from '../exact/decimal.ts';
import { ratio, compareRatio } from '../exact/ratio.ts';
import { counted } from '../kinds-texts/words.ts';
import type { BodyOfKind } from '../kinds/index.ts';
import type { Uuid } from '../ledger/entry.ts';
import type { DayQuestion } from '../protocol/day-question.ts';
import type { Protocol } from '../protocol/protocol.ts';
import { inUsUnits } from '../protocol/us-units.ts';
import { type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { type Evidence, evidenceOf } from '../requirements/evidence.ts';
import { exceptionFor, lastsOn } from '../requirements/exceptions.ts';
import type { DecisionContext } from './context.ts';
import { headlineOf } from './headline.ts';
import type { RequirementOn, VerdictOn } from './readiness.ts';
import { type Verdict, together } from './verdict.ts';
import { judgeOn, protocolOn, worldOf } from './world.ts';

/** One thing only the day can settle: a question by its id, or `observations`, `temperature`, `systolic`, `pulse`, `weight`. */
export type DayItem = {
  readonly id: string;
  readonly verdict: Exclude<Verdict, 'does not apply'>;
  readonly says: string;
  readonly entry: Uuid | undefined;
  /** The prescriber's exception that passes it over. */
  readonly exception: Uuid | undefined;
  /** A question nobody has answered today. */
  readonly unanswered: boolean;
};

export type GoVerdict = VerdictOn & { readonly items: readonly DayItem[] };

export function goVerdict(record: SubjectRecord, context: DecisionContext, today: Day): GoVerdict {
  const evidence = evidenceOf(record, today);
  const world = worldOf(evidence, context);
  const requirements = world.order.map((requirement): RequirementOn => {
    const { verdict, cause, nearLimit, exception } = judgeOn(world, requirement, today).on(today);
    return { requirement, verdict, cause, nearLimit, exception };
  });
  const protocol = protocolOn(world, today);
  const items = [
    ...(protocol === undefined ? [] : questionItems(record, protocol, evidence)),
    ...(protocol === undefined ? [] : observationItems(record, protocol, today)),
    ...(protocol?.leavesOut.has('kidney-function') === true ? [] : [weightItem(evidence)]),
  ];
  const causes = itemCauses(items);
  return {
    on: today,
    verdict: together([...requirements, ...items].map(({ verdict }) => verdict)),
    nearLimit: requirements.some(({ nearLimit }) => nearLimit),
    requirements,
    headline: headlineOf([...requirements, ...causes]),
    items,
  };
}

const item = (id: string, verdict: DayItem['verdict'], says: string, entry?: Uuid, exception?: Uuid): DayItem => ({
  id,
  verdict,
  says,
  entry,
  exception,
  unanswered: false,
});

/** The items as causes of a headline; questions not yet answered are counted, not listed. */
function itemCauses(items: readonly DayItem[]): Omit<RequirementOn, 'requirement'>[] {
  const open = items.filter(({ unanswered }) => unanswered).length;
  const told = items
    .filter(({ unanswered }) => !unanswered)
    .map(({ verdict, says, exception }) => ({ verdict, cause: says, nearLimit: false, exception }));
  if (open === 0) return told;
  const cause = `${counted(open, 'question')} of the day not answered`;
  return [...told, { verdict: 'cannot say', cause, nearLimit: false, exception: undefined }];
}

function questionItems(record: SubjectRecord, protocol: Protocol, evidence: Evidence): DayItem[] {
  const { today } = evidence;
  const checklists = factsOf(record, 'checklist').filter(({ on }) => on <= today);
  const newest = checklists.findLast(({ on }) => on === today);
  return protocol.sheet.dayQuestions.map((question) => {
    const passed = passedOverBy(question, evidence, protocol);
    const holds = (verdict: DayItem['verdict'], says: string, entry: Uuid): DayItem =>
      passed === undefined
        ? item(question.id, verdict, says, entry)
        : item(question.id, 'ready', `${says}: passed over by a prescriber's exception`, entry, passed);
    const answer = newest?.body.answers[question.id]?.answer;
    if (newest === undefined || answer === undefined)
      return { ...item(question.id, 'cannot say', `not answered today: ${question.asks}`), unanswered: true };
    if (answer !== question.holdsOn) return item(question.id, 'ready', `${question.asks} ${answer}`, newest.id);
    if (question.staysUntilCleared === true && evidence.isAnswerCleared(newest.id, question.id))
      return item(question.id, 'ready', `${question.says}: looked into and cleared`, newest.id);
    return holds(question.then, question.says, newest.id);
  });
}

function passedOverBy(question: DayQuestion, evidence: Evidence, protocol: Protocol): Uuid | undefined {
  const exception = question.exception === undefined ? undefined : exceptionFor(evidence, protocol, question.exception);
  return exception !== undefined && lastsOn(exception, evidence.today) ? exception.entry : undefined;
}

type Observed = BodyOfKind<'observations'>;

/** The newest of each observation taken today before the dose. */
function observedBefore(
  record: SubjectRecord,
  today: Day,
): { readonly seen: Partial<Observed>; readonly entry: Uuid | undefined } {
  let seen: Partial<Observed> = {};
  let entry: Uuid | undefined;
  for (const { on, body, id } of factsOf(record, 'observations')) {
    if (on !== today || body.when !== 'before') continue;
    const { temperatureFahrenheit: _, ...before } = seen;
    seen = { ...(body.temperatureCelsius === undefined ? seen : before), ...body };
    entry = id;
  }
  return { seen, entry };
}

const reaches = (value: number, limit: Scaled): boolean => compareRatio(ratio(Math.round(value * 10), 10), limit) >= 0;

function observationItems(record: SubjectRecord, { exact }: Protocol, today: Day): DayItem[] {
  const { seen, entry } = observedBefore(record, today);
  const { pulsePerMinute, systolicMmHg, saturationPercent, newIrregularPulse } = seen;
  const { temperatureCelsius, temperatureFahrenheit } = seen;
  const missing = [
    ...(pulsePerMinute === undefined ? ['pulse'] : []),
    ...(systolicMmHg === undefined ? ['blood pressure'] : []),
    ...(temperatureCelsius === undefined ? ['temperature'] : []),
    ...(saturationPercent === undefined ? ['oxygen saturation'] : []),
    ...(newIrregularPulse === undefined ? ['whether the pulse is newly irregular'] : []),
  ];
  const items: DayItem[] = [
    missing.length === 0
      ? item('observations', 'ready', 'observations before the dose', entry)
      : item('observations', 'cannot say', `not measured today before the dose: ${missing.join(', ')}`, entry),
  ];
  if (temperatureCelsius !== undefined) {
    const hot = reaches(temperatureCelsius, exact.putOffTemperature);
    items.push(
      item(
        'temperature',
        hot ? 'not ready' : 'ready',
        temperatureSays({ temperatureCelsius, temperatureFahrenheit }, hot ? exact.putOffTemperature : undefined),
        entry,
      ),
    );
  }
  if (systolicMmHg !== undefined) {
    const low = !reaches(systolicMmHg, exact.putOffSystolicLow);
    items.push(
      item(
        'systolic',
        low ? 'not ready' : 'ready',
        `systolic pressure ${systolicMmHg} mmHg${low ? `, put off below ${scaledText(exact.putOffSystolicLow)}` : ''}`,
        entry,
      ),
    );
  }
  if (newIrregularPulse === true) items.push(item('pulse', 'not ready', 'new irregular pulse', entry));
  return items;
}

/** As the thermometer read it, and the limit in the same degrees; where that is Fahrenheit the Celsius that decides stands beside. */
function temperatureSays(
  {
    temperatureCelsius,
    temperatureFahrenheit,
  }: { temperatureCelsius: number; temperatureFahrenheit?: number | undefined },
  putOffFrom: Scaled | undefined,
): string {
  const limit = putOffFrom === undefined ? undefined : scaledText(putOffFrom);
  if (temperatureFahrenheit === undefined)
    return `temperature ${temperatureCelsius} degrees Celsius${limit === undefined ? '' : `, put off from ${limit}`}`;
  const there = limit === undefined ? undefined : inUsUnits('putOffTemperature', limit);
  return `temperature ${temperatureFahrenheit} degrees Fahrenheit (${temperatureCelsius} Celsius)${there === undefined ? '' : `, put off from ${there} (${limit} Celsius)`}`;
}

function weightItem({ weight, today }: Evidence): DayItem {
  return weight !== undefined && weight.on === today && weight.method === 'measured'
    ? item('weight', 'ready', 'weighed today', weight.entry)
    : item('weight', 'cannot say', 'not weighed today', weight?.entry);
}
