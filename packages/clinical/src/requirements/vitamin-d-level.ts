/** What a vitamin D level is worth in the unit it was reported in, and how that is shown (docs/readiness.md R4). */
import { type Scaled, scaledText } from '../exact/decimal.ts';
import { exactValue, quantityText } from '../exact/quantity.ts';
import { ratioText } from '../exact/ratio.ts';
import { vitaminDNmolPerL } from '../formulas/units.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Input, Working } from '../readiness/working.ts';
import type { Evidence, Sample } from './evidence.ts';
import { reachesFloor } from './samples.ts';

export type LevelOutcome = 'passing' | 'failing' | 'cannot be told';

/** The floor in the unit reported; undefined for a unit that does not belong to vitamin D, or where two of one day differ. */
export function levelFloor(sample: Sample, protocol: Protocol): Scaled | undefined {
  if (typeof sample.value === 'string') return protocol.exact.vitaminDFloor;
  if (sample.contradicted) return undefined;
  if (sample.value.unit === 'nmol/L') return protocol.exact.vitaminDFloor;
  return sample.value.unit === 'ng/mL' ? protocol.exact.vitaminDFloorNgPerMl : undefined;
}

export function levelOutcome(sample: Sample, floor: Scaled | undefined): LevelOutcome {
  if (sample.value === 'assumed good') return 'passing';
  if (sample.value === 'assumed low') return 'failing';
  if (floor === undefined) return 'cannot be told';
  const reaches = reachesFloor(exactValue(sample.value), sample.value.comparator, floor);
  return reaches === undefined ? 'cannot be told' : reaches ? 'passing' : 'failing';
}

/** Not known to reach the level below which a lack is severe, in its own unit (docs/readiness.md R12). */
export function isSevereLack({ value, contradicted }: Sample, { exact }: Protocol): boolean {
  if (value === 'assumed good') return false;
  if (value === 'assumed low') return true;
  if (contradicted || (value.unit !== 'nmol/L' && value.unit !== 'ng/mL')) return true;
  const floor = value.unit === 'nmol/L' ? exact.vitaminDSevere : exact.vitaminDSevereNgPerMl;
  return reachesFloor(exactValue(value), value.comparator, floor) !== true;
}

/** "vitamin D <20 nmol/L" */
export const levelText = ({ value }: Sample): string =>
  typeof value === 'string' ? `vitamin D, ${value}` : `vitamin D ${quantityText(value)}`;

/** "50 nmol/L": the floor in the unit reported; empty where the unit does not belong to vitamin D. */
export const floorText = ({ value }: Sample, floor: Scaled | undefined): string =>
  floor === undefined ? '' : `${scaledText(floor)} ${typeof value === 'string' ? 'nmol/L' : value.unit}`;

export function vitaminDWorking(
  evidence: Pick<Evidence, 'vitaminD' | 'loading' | 'maintenance'>,
  says: string,
  floor: Scaled | undefined,
): Working {
  const { vitaminD: level, loading, maintenance } = evidence;
  const inputs: Input[] = [];
  if (level !== undefined) {
    inputs.push({
      label: 'vitamin D',
      text: typeof level.value === 'string' ? level.value : quantityText(level.value),
      on: level.on,
      ...(level.entry === undefined ? {} : { entry: level.entry }),
    });
  }
  if (loading !== undefined) {
    inputs.push({
      label: 'loading',
      text: `${loading.taken} of ${loading.doses} doses taken, every ${loading.everyDays} days`,
      on: loading.dated,
      ...(loading.entry === undefined ? {} : { entry: loading.entry }),
    });
  }
  if (maintenance !== undefined) {
    inputs.push({
      label: 'daily vitamin D',
      text: maintenance.taken ? 'taken' : 'not taken',
      on: maintenance.on,
      ...(maintenance.entry === undefined ? {} : { entry: maintenance.entry }),
    });
  }
  const cautions: string[] = [];
  if (level !== undefined && typeof level.value !== 'string' && level.value.unit === 'ng/mL' && floor !== undefined) {
    const nmol = vitaminDNmolPerL(level.value);
    if (nmol !== undefined)
      cautions.push(
        `About ${level.value.comparator}${ratioText(nmol, 2)} nmol/L; it was compared in the unit reported.`,
      );
  }
  const inNanograms = level !== undefined && typeof level.value !== 'string' && level.value.unit === 'ng/mL';
  return {
    says,
    inputs,
    formulas: [],
    thresholds: [
      { key: inNanograms ? 'vitaminDFloorNgPerMl' : 'vitaminDFloor' },
      { key: 'vitaminDValidDays' },
      ...(loading === undefined ? [] : ([{ key: 'maintenanceConfirmDays' }, { key: 'loadingHoldsDays' }] as const)),
    ],
    cautions,
  };
}
