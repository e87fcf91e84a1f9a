/** A time of day as somebody types it off a sheet: "9:05", "09.05", "0905". HH:MM; undefined where it is no time of a day. */
export function readTypedTime(typed: string): string | undefined {
  const [, hours = '', minutes = ''] = /^\s*(\d{1,2})\s*[:.h ]?\s*(\d{2})\s*$/i.exec(typed) ?? [];
  if (hours === '' || Number(hours) > 23 || Number(minutes) > 59) return undefined;
  return `${hours.padStart(2, '0')}:${minutes}`;
}
