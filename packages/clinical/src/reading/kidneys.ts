/** The kidneys at a glance: the working of the clearance as it stands today, line by line. What decides is the requirement. */
import { type Day, shortDate } from '../calendar/day.ts';
import { withOurUnit } from '../kinds-texts/converted-text.ts';
import { bodyMassIndexSource } from '../formulas/body-mass-index.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Evidence } from '../requirements/evidence.ts';
import { KidneyFacts } from '../requirements/kidney-facts.ts';
import { kidneyWorking } from '../requirements/kidney-working.ts';
import type { ReadingLine, ReadingPart } from './reading.ts';

export function kidneyReading(evidence: Evidence, protocol: Protocol, today: Day): ReadingPart {
  const { creatinine, weight } = evidence;
  const facts = new KidneyFacts(evidence, protocol);
  const age = facts.birth === undefined ? undefined : facts.ageAt(today);
  const clearance = age === undefined ? undefined : facts.clearanceAt(age);
  const working = kidneyWorking(
    facts,
    undefined,
    age === undefined || clearance === undefined ? undefined : { age, clearance },
  );
  const entries = [creatinine?.entry, weight?.entry].filter((id) => id !== undefined);
  // The body mass index stands with the body.
  const formulas = working.formulas.filter(({ source }) => source !== bodyMassIndexSource);
  const lines: ReadingLine[] = formulas.map(({ name, put, gives, source }) => ({
    what: name,
    is: gives,
    of: dayOfBoth(evidence),
    put,
    source,
    entries,
  }));
  const days = protocol.number.bloodsValidDays;
  const isOld = creatinine !== undefined && today - creatinine.on > days;
  const old = isOld ? [`The creatinine is older than ${days} days, as long as one counts here.`] : [];
  if (creatinine !== undefined)
    lines.unshift({
      what: 'creatinine',
      is: typeof creatinine.value === 'string' ? creatinine.value : withOurUnit('creatinine', creatinine.value),
      of: `sample of ${shortDate(creatinine.on)}${creatinine.signed ? '' : ', not signed yet'}${creatinine.acute ? ', acutely ill in hospital' : ''}`,
      put: undefined,
      source: undefined,
      entries: creatinine.entry === undefined ? [] : [creatinine.entry],
    });
  return { title: 'Kidneys', lines, cautions: [...missing(evidence, facts.birth), ...old, ...working.cautions] };
}

/** "creatinine of 9 Oct 2026, weight of 9 Oct 2026" */
const dayOfBoth = ({ creatinine, weight }: Evidence): string =>
  [
    creatinine === undefined ? undefined : `creatinine of ${shortDate(creatinine.on)}`,
    weight === undefined ? undefined : `weight of ${shortDate(weight.on)}`,
  ]
    .filter((part) => part !== undefined)
    .join(', ');

function missing({ creatinine, weight, sex }: Evidence, birth: Day | undefined): string[] {
  const lacks = [
    creatinine === undefined && 'a creatinine',
    weight === undefined && 'a weight',
    sex === undefined && 'sex',
    birth === undefined && 'a whole birth date',
  ].filter((part) => part !== false);
  const cautions = lacks.length === 0 ? [] : [`Clearance cannot be said without ${lacks.join(', ')}.`];
  if (creatinine?.contradicted === true) cautions.push('Two creatinines of one day differ: neither is used.');
  return cautions;
}
