/**
 * NEWS2 of a set of observations (formulas/news2). An early sign that somebody is becoming ill; it decides nothing: what puts a dose
 * off is the protocol's. A parameter missing, somebody under 16, pregnant or of unknown age: no total. The second scale of saturation
 * only after a prescriber's decision, from its day on.
 */
import { type Day, ageOn, shortDate } from '../calendar/day.ts';
import { parsePartialDate } from '../calendar/partial-date.ts';
import { type News2, type Observation, type Parameter, news2, news2FromYears } from '../formulas/news2.ts';
import type { BodyOfKind } from '../kinds/index.ts';
import { plural } from '../kinds-texts/words.ts';
import { type SubjectRecord, factsOf, latest } from '../record/patient-record.ts';

type Observed = BodyOfKind<'observations'>;

/** Who the score was made for, and on which scale saturation is read. */
export type EarlyWarningFor =
  | { readonly scale: 1 | 2; readonly decidedOn: Day | undefined }
  | { readonly notFor: string };

export function earlyWarningFor(record: SubjectRecord, on: Day): EarlyWarningFor {
  const born = parsePartialDate(latest(record, 'identity')?.body.born ?? '');
  if (born?.precision !== 'day') return { notFor: 'the birth date is not known' };
  if (ageOn(born.day, on) < news2FromYears) return { notFor: `it is not for people under ${news2FromYears}` };
  const pregnancy = factsOf(record, 'pregnancy').findLast((fact) => fact.on <= on);
  if (pregnancy?.body.answer === 'pregnant') return { notFor: 'it is not for pregnancy' };
  const decided = factsOf(record, 'prescriber-decision').findLast(
    (fact) => fact.on <= on && fact.body.question === 'saturation on scale 2',
  );
  return { scale: decided === undefined ? 1 : 2, decidedOn: decided?.on };
}

const letters: Readonly<Record<NonNullable<Observed['consciousness']>, Observation['consciousness']>> = {
  alert: 'A',
  'newly confused': 'C',
  'responds to voice': 'V',
  'responds to pain': 'P',
  unresponsive: 'U',
};

function earlyWarningOf(observed: Partial<Observed>, scale: 1 | 2): News2 {
  const { consciousness, ...measured } = observed;
  return news2({
    ...measured,
    saturationScale: scale,
    ...(consciousness === undefined ? {} : { consciousness: letters[consciousness] }),
  });
}

const parameterWords: Readonly<Record<Parameter, string>> = {
  breathsPerMinute: 'breaths',
  saturationPercent: 'saturation',
  onOxygen: 'air or oxygen',
  systolicMmHg: 'systolic pressure',
  pulsePerMinute: 'pulse',
  consciousness: 'consciousness',
  temperatureCelsius: 'temperature',
};
const parameters = Object.keys(parameterWords) as readonly Parameter[];

/** "3, low to medium risk, a 3 in one parameter: saturation 3 (saturation on scale 1)"; "no total: breaths and consciousness missing". */
export function earlyWarningSays(observed: Partial<Observed>, whom: EarlyWarningFor): string {
  if ('notFor' in whom) return `no total: ${whom.notFor}`;
  const found = earlyWarningOf(observed, whom.scale);
  if (!found.complete) {
    const missing = found.missing.map((parameter) => parameterWords[parameter]);
    return `no total: ${plural(missing, 'and')} missing`;
  }
  const parts = parameters.filter((parameter) => found.parts[parameter] > 0);
  const scored = parts.map((parameter) => `${parameterWords[parameter]} ${found.parts[parameter]}`).join(', ');
  const scale =
    whom.decidedOn === undefined ? 'scale 1' : `scale 2, as a prescriber decided on ${shortDate(whom.decidedOn)}`;
  return `${found.total}, ${found.risk} risk${found.singleThree ? ', a 3 in one parameter' : ''}${scored === '' ? '' : `: ${scored}`} (saturation on ${scale})`;
}
