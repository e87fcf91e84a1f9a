/** Arrival times of a session, evenly spread from opening. */

const minutesOf = (time: string): number => {
  const [hours = '', minutes = ''] = time.split(':');
  return Number(hours) * 60 + Number(minutes);
};
const timeOf = (minutes: number): string =>
  `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;

/** "08:40, 09:00, ..." from `first` on, every so many minutes, so many of them, none at or after `closes`. */
export function arrivalTimes(first: string, everyMinutes: number, count: number, closes: string): readonly string[] {
  const start = minutesOf(first);
  return Array.from({ length: count }, (_, index) => start + index * everyMinutes)
    .filter((at) => at < minutesOf(closes))
    .map(timeOf);
}

/** Times as someone typed them: one a line, or with commas. */
export const typedTimes = (text: string): readonly string[] =>
  text
    .split(/[\s,;]+/)
    .map((time) => time.trim())
    .filter((time) => time !== '');
