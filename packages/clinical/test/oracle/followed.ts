/**
 * Rules that stand on the page and that the engine does not follow yet. The checker has them all; while one is `false` here it
 * is left out of the comparison, and the ledgers hold nothing that it is about.
 */
export const followed = {
  oncologyPlan: true,
  conditions: true,
  unsignedMineral: true,
  unsignedLevel: true,
  maintenance: true,
  weightThatDecides: true,
  ownInterval: true,
  otherRegimens: true,
} as const satisfies Readonly<Record<string, boolean>> as Readonly<Record<string, boolean>>;
