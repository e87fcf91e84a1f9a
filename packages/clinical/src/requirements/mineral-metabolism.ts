/**
 * Bone and mineral tests outside their laboratory's limits or printed without one, and what is known to bear on minerals, are for
 * a prescriber before a dose (docs/readiness.md R12). A bad result nobody has signed is not passed over.
 */
import { shortDate } from '../calendar/day.ts';
import { parseScaled } from '../exact/decimal.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Fact } from '../record/patient-record.ts';
import type { Working } from '../readiness/working.ts';
import { mineralTests } from './deciding-minerals.ts';
import type { Evidence } from './evidence.ts';
import { type Judge, type Requirement, always, judgement, readyPath } from './requirement.ts';
import { isSevereLack, levelText } from './vitamin-d-level.ts';

/** The printed limit each is compared with: a raised alkaline phosphatase or parathyroid hormone, a low phosphate or magnesium. */
export const mineralLimits = {
  'alkaline phosphatase': 'referenceHigh',
  phosphate: 'referenceLow',
  magnesium: 'referenceLow',
  'parathyroid hormone': 'referenceHigh',
} as const satisfies Readonly<Record<(typeof mineralTests)[number], 'referenceLow' | 'referenceHigh'>>;
const ceilingTests: ReadonlySet<string> = new Set(
  mineralTests.filter((test) => mineralLimits[test] === 'referenceHigh'),
);

/** "raised", "low", that a "<" or ">" cannot be told from its limit, or that there is no limit to tell by; undefined: within. */
function trouble({ body }: Fact<'result'>): string | undefined {
  const { analyte, quantity, referenceLow, referenceHigh } = body;
  const isCeiling = ceilingTests.has(analyte);
  const limit = parseScaled((isCeiling ? referenceHigh : referenceLow) ?? '');
  const value = parseScaled(quantity.value);
  if (limit === undefined || value === undefined) return 'without a laboratory limit';
  const word = isCeiling ? 'raised' : 'low';
  const passes = isCeiling ? value <= limit : value >= limit;
  if (quantity.comparator === '') return passes ? undefined : word;
  // "<" only ever shows that a value is below a ceiling, ">" that it is above a floor.
  const tells = quantity.comparator.startsWith('<') === isCeiling;
  return tells && passes ? undefined : `not known to be other than ${word}`;
}

const valueText = ({ body: { quantity } }: Fact<'result'>): string =>
  `${quantity.comparator}${quantity.value} ${quantity.unit}`;

const reads = ['minerals', 'conditions', 'mineralsLookedInto', 'vitaminD', 'finishedLoadings'] as const;
type Read = Pick<Evidence, (typeof reads)[number]>;

/** A severe lack of vitamin D that no loading has ended since. */
const isLacking = ({ vitaminD, finishedLoadings }: Read, protocol: Protocol): boolean =>
  vitaminD !== undefined &&
  isSevereLack(vitaminD, protocol) &&
  !finishedLoadings.some(({ state }) => state.is === 'finished' && state.on >= vitaminD.on);

type Found = { readonly what: string; readonly says: string };

function foundIn(evidence: Read, protocol: Protocol): readonly Found[] {
  if (evidence.mineralsLookedInto) return [];
  const results = evidence.minerals.flatMap(({ result, signed, lookedInto }): Found[] => {
    const what = lookedInto ? undefined : trouble(result);
    if (what === undefined) return [];
    const unread = signed ? '' : ', not signed';
    return [
      {
        what: `${result.body.analyte} ${what}${unread}`,
        says: `${result.body.analyte} ${what}${unread}: ${valueText(result)} on ${shortDate(result.on)}`,
      },
    ];
  });
  const conditions = evidence.conditions
    .filter(({ body }) => body.what !== 'bone pain' || isLacking(evidence, protocol))
    .map(({ body, on }): Found => {
      const what = body.what === 'bone pain' ? 'bone pain with a severe lack of vitamin D' : body.what;
      return { what, says: `${what}, known since ${shortDate(on)}` };
    });
  return conditions.length === 0 ? results : [...results, ...conditions];
}

const hasBonePain = ({ conditions }: Read): boolean => conditions.some(({ body }) => body.what === 'bone pain');

function inputsOf(evidence: Read): Working['inputs'] {
  const { minerals, conditions, vitaminD } = evidence;
  return [
    ...minerals.map(({ result }) => ({
      label: result.body.analyte,
      text: valueText(result),
      on: result.on,
      entry: result.id,
    })),
    ...conditions.map(({ body, on, id }) => ({ label: 'condition', text: body.what, on, entry: id })),
    ...(hasBonePain(evidence) && vitaminD !== undefined
      ? [{ label: 'vitamin D', text: levelText(vitaminD), on: vitaminD.on }]
      : []),
  ];
}

const neverMeasured = (tests: readonly string[]): string =>
  `Never measured: ${tests.join(', ')}. Looked for before a first dose.`;
const noneMeasured: readonly string[] = [neverMeasured(mineralTests)];

function cautionsOf(minerals: Evidence['minerals']): readonly string[] {
  if (minerals.length === 0) return noneMeasured;
  const never = mineralTests.filter((test) => !minerals.some(({ result }) => result.body.analyte === test));
  return never.length === 0 ? [] : [neverMeasured(never)];
}

const nothingFound =
  'No mineral test is outside its limits or without one, and nothing that bears on minerals is known, without a prescriber having looked into it.';
const sayNothing = () => ({ says: nothingFound, cautions: noneMeasured });

function judge(evidence: Read, protocol: Protocol): Judge {
  if (evidence.minerals.length === 0 && evidence.conditions.length === 0)
    return always(judgement('ready', 'mineral metabolism', sayNothing), readyPath);
  const working = (says: string) => ({
    says,
    inputs: inputsOf(evidence),
    thresholds: hasBonePain(evidence) ? ([{ key: 'vitaminDSevere' }, { key: 'vitaminDSevereNgPerMl' }] as const) : [],
    cautions: cautionsOf(evidence.minerals),
  });
  const found = foundIn(evidence, protocol);
  if (found.length === 0)
    return always(
      judgement('ready', 'mineral metabolism', () => working(nothingFound)),
      readyPath,
    );
  const says = found.map(({ what }) => what).join(', ');
  return always(
    judgement('cannot say', says, () =>
      working(
        `${found.map((one) => one.says).join('; ')}. Correct first, or a prescriber records that it has been looked into.`,
      ),
    ),
    {
      is: 'blocked',
      by: {
        what: `a prescriber: ${says}`,
        who: 'prescriber',
        step: 'prescriber decides',
        settled: () => ({ mineralsLookedInto: true }),
      },
    },
  );
}

export const mineralMetabolism: Requirement<(typeof reads)[number]> = {
  id: 'mineral-metabolism',
  title: 'Mineral metabolism',
  clearedBy: 'a prescriber who has looked into the result, or a newer result within its printed limit. No exception',
  exceptionPossible: false,
  reads,
  judge,
};
