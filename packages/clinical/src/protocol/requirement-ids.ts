/** What must hold for a dose, by name. */
export const requirementIds = [
  'identity',
  'hypersensitivity',
  'pregnancy',
  'illness',
  'symptoms',
  'kidney-function',
  'calcium',
  'vitamin-d',
  'mineral-metabolism',
  'teeth-and-jaw',
  'hip-repair',
  'interval',
  'other-bone-medicines',
  'course',
  'prescription',
  'secondary-causes',
  'consent',
] as const;
export type RequirementId = (typeof requirementIds)[number];
