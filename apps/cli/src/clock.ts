/** The only clock of the commands. */
import { type Day, type Instant, day } from '@twelvemonth/clinical';

export const now = (): Instant => Temporal.Now.instant().toString({ smallestUnit: 'millisecond' });

/** The demo's clock as its server left it: so much ahead of the wall while it runs, or the moment at which it stopped. */
export type DemoTime = { readonly aheadMilliseconds: number } | { readonly stoppedAt: string };

/** The date in a zone; in the demo its own. */
export function todayIn(zone: string, demo?: DemoTime): Day {
  if (demo === undefined) return day(Temporal.Now.plainDateISO(zone).toString());
  if ('stoppedAt' in demo) return day(demo.stoppedAt.slice(0, 10));
  const there = Temporal.Now.instant().add({ milliseconds: demo.aheadMilliseconds });
  return day(there.toZonedDateTimeISO(zone).toPlainDate().toString());
}

/** A moment as it is compared with when entries were written: UTC, milliseconds; undefined if the text is none. */
export function instantOf(text: string): Instant | undefined {
  try {
    return Temporal.Instant.from(text).toString({ smallestUnit: 'millisecond' });
  } catch {
    return undefined;
  }
}
