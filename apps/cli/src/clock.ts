/** The only clock of the commands. */
import { type Day, type Instant, day } from '@twelvemonth/clinical';

export const now = (): Instant => Temporal.Now.instant().toString({ smallestUnit: 'millisecond' });

/** The date in a zone. */
export const todayIn = (zone: string): Day => day(Temporal.Now.plainDateISO(zone).toString());

/** A moment as it is compared with when entries were written: UTC, milliseconds; undefined if the text is none. */
export function instantOf(text: string): Instant | undefined {
  try {
    return Temporal.Instant.from(text).toString({ smallestUnit: 'millisecond' });
  } catch {
    return undefined;
  }
}
