/** A moment as it was on the unit's wall, with its offset: how the notes want it. */

/** "2027-01-28T10:51:00+00:00" from milliseconds of world time. */
export function localMoment(milliseconds: number, zone: string): string {
  const parts = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    hourCycle: 'h23',
    timeZoneName: 'longOffset',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
  }).formatToParts(new Date(milliseconds));
  const part = (type: string): string => parts.find((p) => p.type === type)?.value ?? '';
  const offset = part('timeZoneName').replace('GMT', '');
  return `${part('year')}-${part('month')}-${part('day')}T${part('hour')}:${part('minute')}:${part('second')}${offset === '' ? '+00:00' : offset}`;
}

/** The same moment with another time of day on the same date and with the same offset. */
export const atTime = (moment: string, time: string): string => `${moment.slice(0, 11)}${time}:00${moment.slice(19)}`;
