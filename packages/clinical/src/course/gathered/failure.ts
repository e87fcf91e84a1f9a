/**
 * Whether the treatment has failed, as the IOF working group of 2012 has it (Diez-Perez, Osteoporos Int 23:2769): two or more
 * new fragility fractures; one and a marker not suppressed or a significant loss of density; or both of these without a
 * fracture (the exact combination `from memory`). Only after a year of treatment that was really given. It is a reason to look
 * for secondary causes and to ask, never an order.
 */
import { type Day, addMonths, shortDate } from '../../calendar/day.ts';
import type { Scaled } from '../../exact/decimal.ts';
import { exactValue, quantityText } from '../../exact/quantity.ts';
import {
  type Ratio,
  compareRatio,
  compareRatios,
  minus,
  ratio,
  ratioOf,
  ratioText,
  ratioTextBeside,
  times,
} from '../../exact/ratio.ts';
import { counted, plural } from '../../kinds-texts/words.ts';
import type { Protocol } from '../../protocol/protocol.ts';
import type { CourseFacts } from '../course-facts.ts';
import type { Course } from '../course.ts';
import { changeInWords } from './change-in-words.ts';
import { type Answer, type Criterion, answer, both, either } from './criterion.ts';
import { type DensityThen, densitiesThen } from './density.ts';
import { dosesGiven } from './doses-given.ts';
import { fracturesThen, untoldSpineFractures } from './fractures.ts';
import { type MarkerThen, markersThen } from './markers-then.ts';

export type Failure = { readonly is: Answer; readonly says: string; readonly criteria: readonly Criterion[] };

const IOF = 'IOF 2012, Diez-Perez, Osteoporos Int 23:2769';

export function failureOf(facts: CourseFacts, course: Course, protocol: Protocol, today: Day): Failure {
  const firstDose = course.doses[0]?.on;
  const treated = treatedLongEnough(course, protocol, today);
  const fractures = fractureCriterion(facts, course, protocol);
  const marker = markerCriterion(markersThen(facts, firstDose), protocol);
  const loss = lossCriterion(densitiesThen(facts, firstDose, protocol), protocol);
  const one = atLeastOne(fractures.sure, fractures.possible);
  const criteria: readonly Criterion[] = [
    treated,
    fractures.criterion,
    marker,
    loss,
    {
      asks: 'one new fracture, and a marker not suppressed or a significant loss of density',
      is: both(one, either(marker.is, loss.is)),
      says: `one or more new fractures: ${one}; marker: ${marker.is}; loss: ${loss.is}`,
      entries: [],
      source: `${IOF} (combination from memory)`,
    },
    {
      asks: 'a marker not suppressed and a significant loss of density',
      is: both(marker.is, loss.is),
      says: `marker: ${marker.is}; loss: ${loss.is}`,
      entries: [],
      source: `${IOF} (combination from memory)`,
    },
  ];
  const is = both(
    treated.is,
    either(fractures.criterion.is, both(one, either(marker.is, loss.is)), both(marker.is, loss.is)),
  );
  return { is, says: saysOf(is), criteria };
}

function saysOf(is: Answer): string {
  switch (is) {
    case 'met':
      return 'Meets the rule for treatment failure: look for secondary causes, and ask whether another treatment is better.';
    case 'not met':
      return 'Does not meet the rule for treatment failure.';
    case 'cannot say':
      return 'Whether the treatment has failed cannot be said: see what is missing.';
  }
}

/** A year of treatment, and no dose so late that the course was interrupted. */
function treatedLongEnough(course: Course, protocol: Protocol, today: Day): Criterion {
  const { failureTreatmentMonths: months, overdueAfterDays } = protocol.number;
  const first = course.doses[0];
  const late = dosesGiven(course).filter(({ daysLate }) => daysLate !== undefined && daysLate > overdueAfterDays);
  const longEnough = first !== undefined && addMonths(first.on, months) <= today;
  const says =
    first === undefined
      ? 'no dose of this course'
      : `first dose ${shortDate(first.on)}${
          late.length === 0
            ? ', none more than '
            : `; ${plural(
                late.map(({ number, daysLate }) => `dose ${number} ${counted(daysLate ?? 0, 'day')} late`),
                'and',
              )}, more than `
        }${overdueAfterDays} days late`;
  return {
    asks: `treated for ${months} months or more, with the doses given`,
    is: answer(longEnough && late.length === 0),
    says,
    entries: course.doses.map(({ id }) => id),
    source: `${IOF}: at least a year of treatment, taken (from memory)`,
  };
}

function fractureCriterion(facts: CourseFacts, course: Course, protocol: Protocol) {
  const needed = protocol.number.failureFractures;
  const then = fracturesThen(facts, course);
  const sure = then.filter(({ onTreatment }) => onTreatment === 'counts');
  const unsure = then.filter(({ onTreatment }) => onTreatment === 'may count');
  const untold = untoldSpineFractures(facts, course.doses[0]?.on);
  const possible = sure.length + unsure.length + untold.length;
  const is: Answer = sure.length >= needed ? 'met' : possible < needed ? 'not met' : 'cannot say';
  const parts = [
    `${counted(sure.length, 'fracture')} since the first dose`,
    unsure.length === 0 ? undefined : `${counted(unsure.length, 'more', 'more')} of another site or on a day not known`,
    untold.length === 0 ? undefined : 'imaging found a new spine fracture that no fracture entry tells of',
  ];
  const criterion: Criterion = {
    asks: `${needed} or more new fragility fractures`,
    is,
    says: parts.filter((part) => part !== undefined).join('; '),
    entries: [...sure, ...unsure].map(({ fracture }) => fracture.id).concat(untold.map(({ id }) => id)),
    source: `${IOF}: hands, feet, skull and ankles do not count`,
  };
  return { criterion, sure: sure.length, possible };
}

const atLeastOne = (sure: number, possible: number): Answer =>
  sure >= 1 ? 'met' : possible >= 1 ? 'cannot say' : 'not met';

/** Not suppressed: fallen by less than the protocol's per cent from the value before treatment. */
function markerCriterion(markers: readonly MarkerThen[], protocol: Protocol): Criterion {
  const least = protocol.exact.failureMarkerFallPercent;
  const each = markers.map((one): Answer =>
    one.fallPercent === undefined ? 'cannot say' : answer(compareRatio(one.fallPercent, least) < 0),
  );
  return {
    asks: `a bone marker that fell by less than ${protocol.number.failureMarkerFallPercent} %`,
    is: each.length === 0 ? 'cannot say' : either(...each),
    says:
      markers.length === 0
        ? 'no marker was measured'
        : markers
            .map(({ marker, newest, fallPercent }) =>
              fallPercent === undefined
                ? `${marker} ${quantityText(newest.body.quantity)}, not measured both before and on treatment`
                : `${marker} ${changeOf(fallPercent, least)}`,
            )
            .join('; '),
    entries: markers.flatMap(({ newest, before }) => (before === undefined ? [newest.id] : [before.id, newest.id])),
    source: `${IOF}: less than 25 % (from memory)`,
  };
}

/** With as many decimals as it takes to see on which side of the limit it lies. */
const changeOf = (fallPercent: Ratio, least: Scaled): string =>
  fallPercent.top < 0
    ? `rose by ${ratioText({ ...fallPercent, top: -fallPercent.top }, 0)} %`
    : `fell by ${ratioTextBeside(fallPercent, 0, [least])} %`;

/** A loss from the limit on that is also more than noise. Both spine and a hip must have been compared to deny one. */
function lossCriterion(densities: readonly DensityThen[], protocol: Protocol): Criterion {
  const { failureSpineLossPercent, failureHipLossPercent } = protocol.exact;
  const of = (spine: boolean): readonly DensityThen[] =>
    densities.filter(({ newest }) => (newest.body.site === 'lumbar spine') === spine);
  const lost = (some: readonly DensityThen[], limit: Scaled): Answer =>
    some.length === 0
      ? 'cannot say'
      : either(...some.map((one) => (one.first === undefined ? 'cannot say' : answer(isLoss(one, limit)))));
  return {
    asks: `a loss of ${protocol.number.failureSpineLossPercent} % or more at the spine or ${protocol.number.failureHipLossPercent} % at the hip`,
    is: either(lost(of(true), failureSpineLossPercent), lost(of(false), failureHipLossPercent)),
    says:
      densities.length === 0
        ? 'never scanned'
        : densities.map((one) => `${one.newest.body.site} ${changeInWords(one)}`).join('; '),
    entries: densities.flatMap(({ newest, first }) => (first === undefined ? [newest.id] : [first.id, newest.id])),
    source: `${IOF} (from memory); ISCD: only from the least significant change on`,
  };
}

function isLoss({ first, newest, noise }: DensityThen, limit: Scaled): boolean {
  if (first === undefined || noise?.isExceeded !== true) return false;
  const was = ratioOf(exactValue(first.body.density));
  const lost = minus(was, ratioOf(exactValue(newest.body.density)));
  return compareRatios(times(ratio(100n, 1n), lost), times(ratioOf(limit), was)) >= 0;
}
