const names = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

/** "Monday to Friday"; "Monday, Thursday". ISO weekdays. */
export function weekdaysInWords(days: readonly number[]): string {
  const sorted = [...days].toSorted((a, b) => a - b);
  const named = sorted.map((day) => names[day - 1] ?? '');
  const runs = sorted.every((day, index) => index === 0 || day === (sorted[index - 1] ?? 0) + 1);
  return runs && named.length > 2 ? `${named[0]} to ${named[named.length - 1]}` : named.join(', ');
}
