/** When two medicine entries are about the same medicine: their names differ only in capitals and spaces (docs/readiness.md R1). */
export const nameKey = (name: string): string => name.trim().toLowerCase().replace(/\s+/g, ' ');
export const sameName = (one: string, other: string): boolean => nameKey(one) === nameKey(other);
