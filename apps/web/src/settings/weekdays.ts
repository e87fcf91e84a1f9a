/** Monday is 1, as the notes count them (ISO 8601). */
export const weekdayNames = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;
export const weekdayOptions = weekdayNames.map((says, index) => ({ value: String(index + 1), says: says.slice(0, 3) }));
