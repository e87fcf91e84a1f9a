/** When something was true, as text: `3 Mar 2026`, or `28 Jan 2027 10:51` in the zone of the notes. */
import { parseDay, shortDate } from '../calendar/day.ts';
import { type LineScanner, quoted, take, takeDate, takeQuoted, want } from './line-scanner.ts';

const formats = new Map<string, Intl.DateTimeFormat>();

/** Minutes by which a zone's clocks are ahead of UTC at a moment; undefined if there is no such zone. */
function offsetMinutes(zone: string, at: number): number | undefined {
  try {
    const format =
      formats.get(zone) ?? new Intl.DateTimeFormat('en-GB', { timeZone: zone, timeZoneName: 'longOffset' });
    formats.set(zone, format);
    const name = format.formatToParts(at).find((part) => part.type === 'timeZoneName')?.value ?? '';
    const match = /([+-])(\d{2}):(\d{2})/.exec(name);
    if (match === null) return 0;
    return (match[1] === '-' ? -1 : 1) * (Number(match[2]) * 60 + Number(match[3]));
  } catch {
    return undefined;
  }
}

const two = (value: number): string => String(value).padStart(2, '0');
const offsetText = (minutes: number): string =>
  `${minutes < 0 ? '-' : '+'}${two(Math.floor(Math.abs(minutes) / 60))}:${two(Math.abs(minutes) % 60)}`;

/** The offset that a wall time has in a zone; of an hour that comes twice, the first. */
function usualOffset(zone: string, wall: string): string {
  const asUtc = Date.parse(`${wall}Z`);
  const before = offsetMinutes(zone, asUtc - 86_400_000) ?? 0;
  const after = offsetMinutes(zone, asUtc + 86_400_000) ?? 0;
  const fits = [before, after].find((minutes) => offsetMinutes(zone, asUtc - minutes * 60_000) === minutes);
  return offsetText(fits ?? before);
}

export function momentText(effectiveAt: string, zone: string): string {
  const day = parseDay(effectiveAt.slice(0, 10));
  if (day === undefined) return quoted(effectiveAt);
  if (effectiveAt.length === 10) return shortDate(day);
  const match = /^(\d{4}-\d{2}-\d{2}T(\d{2}:\d{2}):00\.000)([+-]\d{2}:\d{2})$/.exec(effectiveAt);
  if (match === null) return quoted(effectiveAt);
  const [, wall = '', time = '', offset = ''] = match;
  return `${shortDate(day)} ${time}${usualOffset(zone, wall) === offset ? '' : ` ${offset}`}`;
}

export function takeMoment(scanner: LineScanner, zone: string): string | undefined {
  const start = scanner.at;
  const exactly = take(scanner, /"/y, 'a date such as 3 Mar 2026');
  if (exactly !== undefined) {
    scanner.at = start;
    return takeQuoted(scanner)?.value;
  }
  const date = takeDate(scanner)?.value;
  if (date === undefined) return undefined;
  const time = take(scanner, /(?:[01]\d|2[0-3]):[0-5]\d(?!\d)/y, 'a time such as 10:51');
  if (time === undefined) return date;
  const wall = `${date}T${time}:00.000`;
  if (offsetMinutes(zone, 0) === undefined) return want(scanner, `a time zone that exists (${zone} does not)`);
  return `${wall}${take(scanner, /[+-]\d{2}:\d{2}/y, 'an offset') ?? usualOffset(zone, wall)}`;
}
