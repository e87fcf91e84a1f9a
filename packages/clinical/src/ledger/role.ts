/** What a person at the unit may be. One person may hold several; an act is signed in one of them. */
export const roles = [
  'nurse in charge',
  'nurse',
  'assistant',
  'prescriber',
  'pharmacist',
  'clerk',
  'service lead',
  'auditor',
  'administrator',
] as const;
export type Role = (typeof roles)[number];

/** Registered practitioners: they may check a dose, sign results and give medicines. */
export const registrants: readonly Role[] = ['nurse in charge', 'nurse', 'prescriber', 'pharmacist'];
/** Those who decide at the chair. */
export const infusionNurses: readonly Role[] = ['nurse in charge', 'nurse'];
export const clinicalRoles: readonly Role[] = [...registrants, 'assistant'];
export const careRoles: readonly Role[] = [...clinicalRoles, 'clerk'];
