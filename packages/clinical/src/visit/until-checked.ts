/**
 * How soon after the preparation its second check was signed, by the server's times of writing: a check that came in seconds can hardly
 * have been a reading of its own. Undefined: not known, because either was typed in from paper or written later than it was made.
 */
import { MILLISECONDS_A_MINUTE } from '../kinds-texts/words.ts';
import type { Fact } from '../record/patient-record.ts';
import { TYPED_IN_LATER } from './running-time.ts';

/** Clocks of a device and the server differ by less. */
const writtenAsMade = ({ at, recordedAt }: Fact): boolean =>
  at !== undefined && Math.abs(Date.parse(recordedAt) - Date.parse(at)) < MILLISECONDS_A_MINUTE;

export function untilChecked(preparation: Fact<'preparation'>, check: Fact<'second-check'>): number | undefined {
  const fromPaper = check.body.signedOnPaperBy !== undefined || check.body.clock?.boot === TYPED_IN_LATER;
  if (fromPaper || !writtenAsMade(preparation) || !writtenAsMade(check)) return undefined;
  const milliseconds = Date.parse(check.recordedAt) - Date.parse(preparation.recordedAt);
  return milliseconds < 0 ? undefined : milliseconds;
}
