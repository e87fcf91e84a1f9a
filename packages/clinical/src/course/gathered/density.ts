/**
 * Bone density on treatment: each site of each scanner against the scan before treatment. A change is called one only from the
 * least significant change on (ISCD: 2.77 x precision error); scans of another scanner, site or side are not compared.
 */
import type { Day } from '../../calendar/day.ts';
import { exactValue } from '../../exact/quantity.ts';
import type { Protocol } from '../../protocol/protocol.ts';
import type { Fact } from '../../record/patient-record.ts';
import { areComparable, isMoreThanNoise, leastChangeText } from '../course-events.ts';
import type { CourseFacts } from '../course-facts.ts';

/** The least change that counts, as the later report prints it or the protocol has it: "0.0277 g/cm2", "5.0 %". */
export type Noise = { readonly leastChange: string; readonly isExceeded: boolean };

export type DensityThen = {
  readonly newest: Fact<'bone-density'>;
  /** The newest comparable scan up to the first dose of this course, else the earliest comparable one. */
  readonly first: Fact<'bone-density'> | undefined;
  readonly percent: number | undefined;
  readonly percentPerYear: number | undefined;
  /** Undefined: nothing to compare, or no protocol to say what is noise. */
  readonly noise: Noise | undefined;
  /** Scans of this site that are not comparable with the newest. */
  readonly notComparable: readonly Fact<'bone-density'>[];
};

const DAYS_A_YEAR = 365.25;

const noiseOf = (first: Fact<'bone-density'>, newest: Fact<'bone-density'>, protocol: Protocol): Noise => ({
  leastChange: leastChangeText(newest, protocol),
  isExceeded: isMoreThanNoise(first, newest, protocol),
});

/** One line for each site and side that was ever scanned, by its newest scan. */
export function densitiesThen(
  facts: CourseFacts,
  firstDose: Day | undefined,
  protocol: Protocol | undefined,
): readonly DensityThen[] {
  const newest = new Map<string, Fact<'bone-density'>>();
  for (const scan of facts.scans) newest.set(`${scan.body.site}/${scan.body.side ?? ''}`, scan);
  return [...newest.values()].map((scan) => densityThen(facts, scan, firstDose, protocol));
}

function densityThen(
  facts: CourseFacts,
  newest: Fact<'bone-density'>,
  firstDose: Day | undefined,
  protocol: Protocol | undefined,
): DensityThen {
  const earlier = facts.scans.filter(({ on, body }) => on < newest.on && body.site === newest.body.site);
  const comparable = earlier.filter((one) => areComparable(one, newest) && exactValue(one.body.density) > 0);
  const first =
    (firstDose === undefined ? undefined : comparable.findLast(({ on }) => on <= firstDose)) ?? comparable[0];
  const notComparable = earlier.filter((one) => !areComparable(one, newest));
  if (first === undefined)
    return {
      newest,
      first,
      percent: undefined,
      percentPerYear: undefined,
      noise: undefined,
      notComparable,
    };
  const was = exactValue(first.body.density);
  const percent = (100 * (exactValue(newest.body.density) - was)) / was;
  return {
    newest,
    first,
    percent,
    percentPerYear: (percent * DAYS_A_YEAR) / (newest.on - first.on),
    noise: protocol === undefined ? undefined : noiseOf(first, newest, protocol),
    notComparable,
  };
}
