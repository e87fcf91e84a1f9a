/** Bone and mineral tests outside their laboratory's limits are for a prescriber before a dose (docs/readiness.md R12). */
import { shortDate } from '../calendar/day.ts';
import { parseScaled } from '../exact/decimal.ts';
import type { Fact } from '../record/patient-record.ts';
import type { Working } from '../readiness/working.ts';
import { type Evidence, mineralTests } from './evidence.ts';
import { type Judge, type Requirement, always, judgement, readyPath } from './requirement.ts';

/** Which side is looked at: a raised alkaline phosphatase or parathyroid hormone, a low phosphate or magnesium. */
const ceilingTests: ReadonlySet<string> = new Set(['alkaline phosphatase', 'parathyroid hormone']);

/** "raised", "low", or that a "<" or ">" cannot be told from its limit; undefined: within, or no limit printed. */
function trouble({ body }: Fact<'result'>): string | undefined {
  const { analyte, quantity, referenceLow, referenceHigh } = body;
  const isCeiling = ceilingTests.has(analyte);
  const limit = parseScaled((isCeiling ? referenceHigh : referenceLow) ?? '');
  const value = parseScaled(quantity.value);
  if (limit === undefined || value === undefined) return undefined;
  const word = isCeiling ? 'raised' : 'low';
  const passes = isCeiling ? value <= limit : value >= limit;
  if (quantity.comparator === '') return passes ? undefined : word;
  // "<" only ever shows that a value is below a ceiling, ">" that it is above a floor.
  const tells = quantity.comparator.startsWith('<') === isCeiling;
  return tells && passes ? undefined : `not known to be other than ${word}`;
}

const valueText = ({ body: { quantity } }: Fact<'result'>): string =>
  `${quantity.comparator}${quantity.value} ${quantity.unit}`;

const inputsOf = (minerals: Evidence['minerals']): Working['inputs'] =>
  minerals.map(({ result }) => ({
    label: result.body.analyte,
    text: valueText(result),
    on: result.on,
    entry: result.id,
  }));

function cautionsOf(minerals: Evidence['minerals']): string[] {
  const never = mineralTests.filter((test) => !minerals.some(({ result }) => result.body.analyte === test));
  const unlimited = minerals.filter(
    ({ result: { body } }) => (ceilingTests.has(body.analyte) ? body.referenceHigh : body.referenceLow) === undefined,
  );
  return [
    ...(never.length === 0 ? [] : [`Never measured: ${never.join(', ')}. Looked for before a first dose.`]),
    ...unlimited.map(({ result }) => `${result.body.analyte}: no laboratory limit with it, so not compared.`),
  ];
}

function judge({ minerals, mineralsLookedInto }: Evidence): Judge {
  const working = (says: string) => ({ says, inputs: inputsOf(minerals), cautions: cautionsOf(minerals) });
  const found = mineralsLookedInto
    ? []
    : minerals.flatMap(({ result, lookedInto }) => {
        const what = lookedInto ? undefined : trouble(result);
        return what === undefined ? [] : [{ result, what }];
      });
  const first = found[0];
  if (first === undefined)
    return always(
      judgement('ready', 'mineral metabolism', () =>
        working('No mineral test is outside its limits without a prescriber having looked into it.'),
      ),
      readyPath,
    );
  const says = found.map(({ result, what }) => `${result.body.analyte} ${what}`).join(', ');
  return always(
    judgement('cannot say', says, () =>
      working(
        `${found.map(({ result, what }) => `${result.body.analyte} ${what}: ${valueText(result)} on ${shortDate(result.on)}`).join('; ')}. Correct first, or a prescriber records that it has been looked into.`,
      ),
    ),
    {
      is: 'blocked',
      by: {
        what: `a prescriber: ${says}`,
        who: 'prescriber',
        step: 'prescriber decides',
        settled: (known) => ({ ...known, mineralsLookedInto: true }),
      },
    },
  );
}

export const mineralMetabolism: Requirement = {
  id: 'mineral-metabolism',
  title: 'Mineral metabolism',
  clearedBy: 'a prescriber who has looked into the result, or a newer result within its limits. No exception',
  exceptionPossible: false,
  judge,
};
