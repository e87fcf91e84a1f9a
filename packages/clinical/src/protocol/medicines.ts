/** The bone medicines this product tells apart, by generic name and strength. */
export const boneMedicines = [
  'zoledronic acid 5 mg',
  'zoledronic acid 4 mg',
  'denosumab 60 mg',
  'denosumab 120 mg',
  'ibandronate 3 mg',
  'pamidronate',
  'romosozumab 210 mg',
  'teriparatide',
] as const;
export type BoneMedicine = (typeof boneMedicines)[number];

/** What a regimen may be of: the oncology strength of zoledronic acid is never booked as this service's. */
export const regimenMedicines = [
  'zoledronic acid 5 mg',
  'denosumab 60 mg',
  'denosumab 120 mg',
  'ibandronate 3 mg',
  'pamidronate',
  'romosozumab 210 mg',
  'teriparatide',
] as const satisfies readonly BoneMedicine[];
export type RegimenMedicine = (typeof regimenMedicines)[number];

const bisphosphonates: ReadonlySet<BoneMedicine> = new Set([
  'zoledronic acid 5 mg',
  'zoledronic acid 4 mg',
  'ibandronate 3 mg',
  'pamidronate',
]);
export const isBisphosphonate = (medicine: BoneMedicine): boolean => bisphosphonates.has(medicine);

/** No product text refuses it below a clearance: low calcium is what is feared there, and a prescriber weighs it. */
export const isGivenBelowAnyClearance = (medicine: BoneMedicine): boolean =>
  isDenosumab(medicine) || medicine === 'romosozumab 210 mg';

/** Injected at home every day: a dose in the notes is its first day. */
export const isTakenDaily = (medicine: BoneMedicine): boolean => medicine === 'teriparatide';

/** Its effect ends when nothing follows, at either strength. */
export const isDenosumab = (medicine: BoneMedicine): boolean =>
  medicine === 'denosumab 60 mg' || medicine === 'denosumab 120 mg';
