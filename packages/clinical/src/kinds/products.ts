/** What a pack in the hand may say: the one product the drip is for, and what looks like it. */
export const dripProduct = 'zoledronic acid 5 mg in 100 mL';

/** Bottles and bags of a day unit that have been taken for one another; generic names. Common practice, no source. */
export const packProducts = [
  dripProduct,
  'zoledronic acid 4 mg in 100 mL',
  'zoledronic acid 4 mg',
  'ibandronic acid 3 mg',
  'pamidronic acid 90 mg',
  'paracetamol 1 g in 100 mL',
  'another product',
] as const;
export type PackProduct = (typeof packProducts)[number];
