/** Bone markers on treatment against the value before it: signed results of one marker, in one unit. */
import type { Day } from '../../calendar/day.ts';
import { type Ratio, compareRatio, dividedBy, minus, ratio, times } from '../../exact/ratio.ts';
import { type BoneMarker, responseFallPercent } from '../../formulas/bone-marker-response.ts';
import type { Fact } from '../../record/patient-record.ts';
import type { CourseFacts } from '../course-facts.ts';
import { markerNgPerL } from '../markers.ts';

export type MarkerThen = {
  readonly marker: BoneMarker;
  readonly newest: Fact<'result'>;
  /** The newest value up to the first dose of this course; undefined: none, so nothing can be compared. */
  readonly before: Fact<'result'> | undefined;
  /** Below nought: it rose. */
  readonly fallPercent: Ratio | undefined;
  /** More than chance (IOF-ECTS 2017). */
  readonly fell: boolean | undefined;
};

const boneMarkers = ['CTX', 'P1NP'] as const satisfies readonly BoneMarker[];

export function markersThen(facts: CourseFacts, firstDose: Day | undefined): readonly MarkerThen[] {
  return boneMarkers.flatMap((marker): MarkerThen[] => {
    const usable = facts.markers.filter((one) => one.body.analyte === marker && markerNgPerL(one) !== undefined);
    const newest = usable[usable.length - 1];
    if (newest === undefined) return [];
    const before =
      firstDose === undefined || newest.on <= firstDose ? undefined : usable.findLast(({ on }) => on <= firstDose);
    const was = before === undefined ? undefined : markerNgPerL(before);
    const is = markerNgPerL(newest);
    if (was === undefined || is === undefined || was.top <= 0)
      return [{ marker, newest, before: undefined, fallPercent: undefined, fell: undefined }];
    const fallPercent = times(ratio(100n, 1n), dividedBy(minus(was, is), was));
    return [{ marker, newest, before, fallPercent, fell: compareRatio(fallPercent, responseFallPercent[marker]) > 0 }];
  });
}
