/** A rehearsal as pictures: when the last has left, and how many people are there through the day. */
import { type Drawing, barsDrawing } from '@twelvemonth/charts';
import { type Day, type Rehearsal, clockAt } from '@twelvemonth/planning';

const binMinutes = 15;
const halfHour = 30;
const percent = 100;

const clockOfMinute = (day: Day, minute: number): string => clockAt({ ...day, minutesPerTick: 1 }, minute);

export function finishPicture(day: Day, { finishes, finish, onTime, days }: Rehearsal, width: number): Drawing {
  const binOf = (minute: number): number => Math.floor(minute / binMinutes);
  const first = binOf(finishes[0] ?? 0);
  const closes = day.closes * day.minutesPerTick;
  const last = Math.max(binOf(finishes.at(-1) ?? 0), Math.ceil(closes / binMinutes));
  const counts = Array.from({ length: last - first + 1 }, () => 0);
  for (const minute of finishes) counts[binOf(minute) - first]! += 1;
  return barsDrawing(
    {
      caption: 'When the last has left',
      sentence: `The last has left by ${clockOfMinute(day, Math.round(finish.median))} on half of ${days.toLocaleString('en-GB')} days played, by ${clockOfMinute(day, Math.round(finish.ninthDecile))} on nine in ten; by closing at ${clockAt(day, day.closes)} on ${Math.round(onTime * percent)} of 100.`,
      head: ['from', 'of 100 days'],
      bars: counts.map((count, index) => ({
        label: clockOfMinute(day, (first + index) * binMinutes),
        value: count,
        says: ((count / days) * percent).toFixed(1),
      })),
      mark: { before: Math.ceil(closes / binMinutes) - first, says: `closes ${clockAt(day, day.closes)}` },
    },
    width,
  );
}

export function presentPicture(day: Day, { present }: Rehearsal, width: number): Drawing {
  const shown = present.slice(0, (present.findLastIndex((people) => people > 0) ?? 0) + 1);
  const most = Math.max(...shown, 0);
  const fullest = shown.indexOf(most);
  return barsDrawing(
    {
      caption: 'People in the unit',
      sentence: `On average most people are in the unit at ${clockOfMinute(day, fullest * halfHour)}: ${most.toFixed(1)}.`,
      head: ['at', 'people, on average'],
      bars: shown.map((people, index) => ({
        label: clockOfMinute(day, index * halfHour),
        value: people,
        says: people.toFixed(1),
      })),
    },
    width,
  );
}
