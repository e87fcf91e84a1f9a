/**
 * One place as a calendar file (RFC 5545, RFC 5546): a request, a changed request of the same UID with a higher SEQUENCE, or a
 * cancellation. It names a place, a time and whom to ring; never a medicine or what it is for, for a calendar is seen by others.
 */
import type { PlainDate } from '@twelvemonth/clinical';

export type CalendarPlace = {
  /** The same for a place and whatever it is moved to. */
  readonly uid: string;
  /** How often it was changed since it was first told. */
  readonly sequence: number;
  /** When the file is made, UTC: 2026-11-25T09:00:00Z. */
  readonly madeAt: string;
  readonly cancelled: boolean;
  readonly on: PlainDate;
  /** HH:MM, local. */
  readonly at: string;
  readonly minutes: number;
  /** IANA name. */
  readonly zone: string;
  readonly summary: string;
  readonly where: string;
  readonly says: string;
};

/** RFC 5545 3.1: 75 octets, without the line's end. */
const mostOctets = 75;
const octets = new TextEncoder();

/** A line broken after at most 75 octets, never inside a character. */
function folded(line: string): string {
  const parts: string[] = [];
  let part = '';
  let used = 0;
  for (const sign of line) {
    const size = octets.encode(sign).length;
    // A line that goes on begins with a space of its own.
    if (used + size > mostOctets) {
      parts.push(part);
      part = '';
      used = 1;
    }
    part += sign;
    used += size;
  }
  return [...parts, part].join('\r\n ');
}

/** RFC 5545 3.3.11 */
const escaped = (text: string): string => text.replaceAll(/[\\;,]/g, (sign) => `\\${sign}`).replaceAll(/\r?\n/g, '\\n');

const basic = (text: string): string => text.replaceAll(/[-:]/g, '');
const localTime = (moment: Temporal.ZonedDateTime): string =>
  basic(moment.toPlainDateTime().toString({ smallestUnit: 'second' }));

/** "+0100" from "+01:00" */
const offsetOf = (moment: Temporal.ZonedDateTime): string => moment.offset.replace(':', '');

/**
 * The zone as it is around the place: what holds then and since when, and the change after it. Written out and not as a rule,
 * so that a reader without time zone data of its own reads the same instant.
 */
function zoneLines(start: Temporal.ZonedDateTime): readonly string[] {
  const changes = [
    start.add({ seconds: 1 }).getTimeZoneTransition('previous'),
    start.getTimeZoneTransition('next'),
  ].filter((change) => change !== null);
  const summer = Math.max(...[start, ...changes].map(({ offsetNanoseconds }) => offsetNanoseconds));
  const part = (from: Temporal.ZonedDateTime | undefined, holds: Temporal.ZonedDateTime): readonly string[] => {
    const before = from === undefined ? holds : from.subtract({ seconds: 1 });
    const kind = changes.length > 0 && holds.offsetNanoseconds === summer ? 'DAYLIGHT' : 'STANDARD';
    return [
      `BEGIN:${kind}`,
      // RFC 5545 3.6.5: the local time as it was before the change.
      `DTSTART:${from === undefined ? '19700101T000000' : localTime(from.withTimeZone(before.offset))}`,
      `TZOFFSETFROM:${offsetOf(before)}`,
      `TZOFFSETTO:${offsetOf(holds)}`,
      `END:${kind}`,
    ];
  };
  return [
    'BEGIN:VTIMEZONE',
    `TZID:${start.timeZoneId}`,
    ...(changes.length === 0 ? part(undefined, start) : changes.flatMap((change) => part(change, change))),
    'END:VTIMEZONE',
  ];
}

/** @throws RangeError for a zone nobody knows; an hour that the clocks leave out is read as the one after it. */
export function calendarFile(place: CalendarPlace): string {
  const start = Temporal.PlainDateTime.from(`${place.on}T${place.at}`).toZonedDateTime(place.zone);
  const time = (moment: Temporal.ZonedDateTime): string => `;TZID=${place.zone}:${localTime(moment)}`;
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Twelvemonth//places//EN',
    'CALSCALE:GREGORIAN',
    `METHOD:${place.cancelled ? 'CANCEL' : 'PUBLISH'}`,
    ...zoneLines(start),
    'BEGIN:VEVENT',
    `UID:${escaped(place.uid)}`,
    `SEQUENCE:${place.sequence}`,
    `DTSTAMP:${basic(place.madeAt.slice(0, 'YYYY-MM-DDTHH:MM:SS'.length))}Z`,
    `DTSTART${time(start)}`,
    `DTEND${time(start.add({ minutes: place.minutes }))}`,
    `SUMMARY:${escaped(place.summary)}`,
    `LOCATION:${escaped(place.where)}`,
    `DESCRIPTION:${escaped(place.says)}`,
    `STATUS:${place.cancelled ? 'CANCELLED' : 'CONFIRMED'}`,
    'CLASS:PRIVATE',
    'END:VEVENT',
    'END:VCALENDAR',
  ];
  return `${lines.map(folded).join('\r\n')}\r\n`;
}
