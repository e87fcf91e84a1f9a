/**
 * Body surface in m2, and what it is for here: turning an indexed filtration rate (per 1.73 m2) into the person's own. Shown
 * beside the clearance; never passes anyone.
 *
 * Mosteller 1987, NEJM 317:1098: the root of cm x kg / 3600. Du Bois 1916, Arch Intern Med 17:863: 0.007184 x cm^0.725 x
 * kg^0.425. Both from memory; Du Bois underestimates in obesity by up to 20 % (Livingston and Lee 2001, Am J Physiol, read).
 * De-indexing: eGFR x surface / 1.73 (KDIGO 2011 drug-dosing update, read), for drug decisions in people of unusual size.
 */
export const bodySurfaceSources = {
  mosteller: 'Mosteller 1987, NEJM 317:1098 (from memory); de-indexed: KDIGO 2011 drug-dosing update',
  duBois: 'Du Bois 1916, Arch Intern Med 17:863 (from memory); too low in obesity',
} as const;

export const bodySurfaceMosteller = (heightCm: number, weightKg: number): number =>
  Math.sqrt((heightCm * weightKg) / 3600);

export const bodySurfaceDuBois = (heightCm: number, weightKg: number): number =>
  0.007184 * heightCm ** 0.725 * weightKg ** 0.425;

/** mL/min for this person from mL/min/1.73 m2. */
export const deindexed = (perStandardSurface: number, surfaceM2: number): number =>
  (perStandardSurface * surfaceM2) / 1.73;
