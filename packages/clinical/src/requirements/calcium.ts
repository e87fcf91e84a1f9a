/** Adjusted calcium from a sample in date, within its limits, and after a loading from a sample late enough (docs/readiness.md R3). */
import { type Day, addDays, shortDate } from '../calendar/day.ts';
import { scaledText } from '../exact/decimal.ts';
import { adjustedCalciumSource } from '../formulas/adjusted-calcium.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Threshold, Working } from '../readiness/working.ts';
import {
  type CalciumOutcome,
  type CalciumValue,
  albuminOf,
  calciumConflict,
  calciumInputs,
  calciumOutcome,
  calciumPutIn,
  calciumText,
  calciumValueOf,
} from './calcium-value.ts';
import type { Evidence } from './evidence.ts';
import {
  type Blocker,
  type Judge,
  type Judgement,
  type Path,
  type Requirement,
  byException,
  judgement,
  readyPath,
} from './requirement.ts';
import { bloodsException, carryingEnds } from './exceptions.ts';
import { isOutOfDate, isVoided, samplesCount, samplesCountFor, samplesRead, whyVoided } from './samples.ts';

const repeat: NonNullable<Blocker['settled']> = () => ({ calcium: undefined });

const reads = [...samplesRead, 'calcium', 'calciumLowering', 'finishedLoadings', 'exceptions'] as const;
type Read = Pick<Evidence, (typeof reads)[number]>;

function thresholdsOf(value: CalciumValue | undefined, isLoaded: boolean): readonly Threshold[] {
  const thresholds: Threshold[] = value === undefined ? [] : value.limits.slice();
  thresholds.push({ key: 'bloodsValidDays' });
  if (isLoaded) thresholds.push({ key: 'calciumAfterLoadingDays' });
  return thresholds;
}

function judge(evidence: Read, protocol: Protocol): Judge {
  const { calcium } = evidence;
  const { bloodsValidDays, calciumAfterLoadingDays } = protocol.number;
  const count = samplesCountFor(evidence.calciumLowering, samplesCount(evidence, protocol));
  const exception = bloodsException(evidence, protocol);
  const loaded = evidence.finishedLoadings[evidence.finishedLoadings.length - 1]?.state;
  const loadedOn = loaded?.is === 'finished' ? loaded.on : undefined;
  const assumedGood = calcium?.sample.value === 'assumed good';
  const value = calcium === undefined ? undefined : calciumValueOf(calcium, protocol);
  const outcome: CalciumOutcome | undefined = assumedGood
    ? 'passing'
    : value === undefined
      ? undefined
      : calciumOutcome(value);
  const albuminMissing = calcium?.sort === 'total' && albuminOf(calcium) === undefined;
  const signed =
    calcium !== undefined &&
    calcium.sample.signed &&
    (calcium.albumin === undefined || calcium.sort === 'adjusted' || calcium.albumin.signed);
  const bloods = calcium === undefined ? '' : `bloods of ${shortDate(calcium.on)}`;

  const working = (says: () => string) => (): Working => ({
    says: says(),
    inputs: calcium === undefined ? [] : calciumInputs(calcium),
    formulas:
      calcium?.sort !== 'total' || value === undefined
        ? []
        : [
            {
              name: 'calcium adjusted for albumin',
              put: calciumPutIn(calcium, protocol),
              gives: calciumText(value),
              source: adjustedCalciumSource,
            },
          ],
    thresholds: thresholdsOf(value, loadedOn !== undefined),
    cautions: [
      ...(outcome === 'high'
        ? ['Above its limits: refer; parathyroid and malignancy are thought of first.']
        : outcome === 'low'
          ? ['Low: correct first; a dose would lower it further.']
          : []),
      ...(calcium === undefined || value === undefined ? [] : calciumConflict(calcium, value, protocol)),
    ],
  });

  const stands: Judgement = ((): Judgement => {
    if (calcium === undefined)
      return judgement(
        'cannot say',
        'calcium never measured',
        working(() => 'No calcium is in these notes.'),
      );
    if (isVoided(calcium.sample, count)) {
      return judgement(
        'cannot say',
        `${bloods} no longer count`,
        working(() => `The calcium of ${shortDate(calcium.on)} no longer counts: ${whyVoided(calcium.sample, count)}.`),
      );
    }
    if (albuminMissing)
      return judgement(
        'cannot say',
        'albumin missing, so adjusted calcium',
        working(() => 'A total calcium without a usable albumin of the same sample cannot be adjusted.'),
      );
    if (!signed)
      return judgement(
        'cannot say',
        `${bloods} not signed`,
        working(() => 'Nobody has signed that this calcium has been read and belongs to this person.'),
      );
    if (loadedOn !== undefined && calcium.on < loadedOn + calciumAfterLoadingDays) {
      return judgement(
        'cannot say',
        'calcium to be checked after loading',
        working(
          () =>
            `Vitamin D loading ended on ${shortDate(loadedOn)}: a calcium sample from ${shortDate(addDays(loadedOn, calciumAfterLoadingDays))} is needed, the last is of ${shortDate(calcium.on)}.`,
        ),
      );
    }
    if (assumedGood)
      return judgement(
        'ready',
        'calcium, if good',
        working(() => 'Assumed good: not measured yet.'),
      );
    if (value === undefined || outcome === undefined)
      return judgement(
        'cannot say',
        calcium.sample.contradicted
          ? `two calcium values of ${shortDate(calcium.on)} differ`
          : 'calcium cannot be used as reported',
        working(() =>
          calcium.sample.contradicted
            ? 'Two values of one day say otherwise and both stand: withdraw or correct the one that is wrong, or repeat.'
            : 'Its unit does not belong to calcium.',
        ),
      );
    const text = () => calciumText(value);
    const limits = () => `limits ${scaledText(value.low)} - ${scaledText(value.high)} ${value.unit}`;
    if (outcome === 'cannot be told')
      return judgement(
        'cannot say',
        `calcium ${text()} cannot be judged`,
        working(() => `${text()} may or may not lie within its ${limits()}.`),
      );
    if (outcome === 'passing')
      return judgement(
        'ready',
        'calcium',
        working(() => `Adjusted calcium ${text()}; ${limits()}.`),
      );
    return judgement(
      'not ready',
      `calcium ${text()}, ${outcome === 'low' ? `below ${scaledText(value.low)}` : `above ${scaledText(value.high)}`}`,
      working(() => `Adjusted calcium ${text()}; ${limits()}.`),
    );
  })();
  const judgedByValue =
    calcium !== undefined &&
    !isVoided(calcium.sample, count) &&
    !albuminMissing &&
    signed &&
    (loadedOn === undefined || calcium.on >= loadedOn + calciumAfterLoadingDays);
  let outOfDate: Judgement | undefined;
  const carried = exception === undefined ? stands : byException(stands, exception.entry);

  function on(day: Day): Judgement {
    if (!judgedByValue) return stands;
    if (isOutOfDate(calcium, day, bloodsValidDays, exception))
      return (outOfDate ??= judgement(
        'cannot say',
        `${bloods} out of date`,
        working(
          () =>
            `The sample counts for ${bloodsValidDays} days, up to ${shortDate(addDays(calcium.on, bloodsValidDays))}.`,
        ),
      ));
    return isOutOfDate(calcium, day, bloodsValidDays) ? carried : stands;
  }

  function path(day: Day, loadingEnds?: Day): Path {
    const blocked = (what: string, who: Blocker['who']): Path => ({
      is: 'blocked',
      by: { what, who, step: 'repeat result', settled: repeat },
    });
    const neverMeasured = calcium === undefined || (albuminMissing && !isVoided(calcium.sample, count));
    if (calcium !== undefined && isVoided(calcium.sample, count))
      return blocked(`a new calcium: that of ${shortDate(calcium.on)} no longer counts`, 'nurse');
    if (!neverMeasured && outcome !== 'passing') {
      return outcome === undefined || outcome === 'cannot be told'
        ? blocked('a calcium that can be judged', 'nurse')
        : blocked(`a prescriber: calcium is ${outcome}; correct or refer, then repeat`, 'prescriber');
    }
    const ends = loadingEnds ?? loadedOn;
    const notBefore = ends === undefined ? undefined : addDays(ends, calciumAfterLoadingDays);
    const tooEarly = notBefore !== undefined && calcium !== undefined && calcium.on < notBefore;
    if (neverMeasured || tooEarly || isOutOfDate(calcium, day, bloodsValidDays, exception)) {
      return {
        is: 'steps',
        needs: {
          draw: {
            test: 'calcium',
            validDays: bloodsValidDays,
            ...(notBefore === undefined ? {} : { notBefore }),
            neverMeasured,
            why: neverMeasured
              ? 'calcium was never measured'
              : tooEarly
                ? 'calcium is checked after loading'
                : `${bloods} count until ${shortDate(addDays(calcium.on, bloodsValidDays))}`,
          },
        },
      };
    }
    if (signed) return readyPath;
    const results = [calcium.sample.entry, calcium.albumin?.entry].filter((id) => id !== undefined);
    return { is: 'steps', needs: { sign: { results, why: `${bloods} are not signed` } } };
  }

  const changes: Day[] = [];
  if (calcium !== undefined) changes.push(addDays(calcium.on, bloodsValidDays + 1));
  changes.push(...carryingEnds(exception, calcium));
  return { changes, on, path };
}

export const calcium: Requirement<(typeof reads)[number]> = {
  id: 'calcium',
  title: 'Calcium',
  clearedBy: 'a new sample; a prescriber where it is out of its limits. No exception',
  exceptionPossible: false,
  reads,
  judge,
};
