/** What a pack in the hand may say: the product of the drip, those that are injected, and what looks like them. */
import type { BoneMedicine } from '../protocol/medicines.ts';

export const dripProduct = 'zoledronic acid 5 mg in 100 mL';

/** Bottles and bags of a day unit that have been taken for one another; generic names. Common practice, no source. */
export const packProducts = [
  dripProduct,
  'zoledronic acid 4 mg in 100 mL',
  'zoledronic acid 4 mg',
  'ibandronic acid 3 mg',
  'denosumab 60 mg',
  'denosumab 120 mg',
  'romosozumab 105 mg',
  'pamidronic acid 90 mg',
  'paracetamol 1 g in 100 mL',
  'another product',
] as const;
export type PackProduct = (typeof packProducts)[number];

/** Where an injection may go. */
export const injectionSites = {
  'under the skin': ['abdomen', 'left thigh', 'right thigh', 'left upper arm', 'right upper arm'],
  'into a vein': ['left arm vein', 'right arm vein'],
} as const;
export const everyInjectionSite = [...injectionSites['under the skin'], ...injectionSites['into a vein']] as const;

export type Injection = {
  readonly product: PackProduct;
  /** Packs that make one dose: two of romosozumab. */
  readonly packs: number;
  readonly goes: keyof typeof injectionSites;
};

/** What is injected here, by its product text (read): ibandronate never into an artery or beside the vein; two of 105 mg. */
const injections: Partial<Record<BoneMedicine, Injection>> = {
  'denosumab 60 mg': { product: 'denosumab 60 mg', packs: 1, goes: 'under the skin' },
  'denosumab 120 mg': { product: 'denosumab 120 mg', packs: 1, goes: 'under the skin' },
  'ibandronate 3 mg': { product: 'ibandronic acid 3 mg', packs: 1, goes: 'into a vein' },
  'romosozumab 210 mg': { product: 'romosozumab 105 mg', packs: 2, goes: 'under the skin' },
};
/** The pack a medicine comes in here; undefined: it is not given out of a pack that is read. */
export const productOfMedicine = (medicine: BoneMedicine): PackProduct | undefined =>
  medicine === 'zoledronic acid 5 mg' ? dripProduct : injections[medicine]?.product;

export const injectionOf = (medicine: BoneMedicine): Injection | undefined => injections[medicine];
