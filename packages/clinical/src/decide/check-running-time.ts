/**
 * A drip that ran faster than the protocol lets it, by times that a person typed, or by the clock in a part of the bag. It may
 * have happened: it is asked about, and written with what happened and who was told, never in silence (EU product text 4.2: not under 15 minutes).
 */
import { protocolInForceOn } from '../protocol/in-force.ts';
import type { Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';
import type { Surroundings } from './surroundings.ts';

/** The whole dose: 5 mg in 100 mL. */
export const WHOLE_DOSE_MILLILITERS = 100;

type Ran = {
  readonly milliliters: number;
  readonly minutes: number;
  /** The time in words. */
  readonly says: string;
  readonly incident: string | undefined;
  /** Whose word the time is: somebody typed it, or the clock measured it. */
  readonly by: 'the times given' | 'the clock';
};

/** Of a part of the bag the same part of the minutes: the rate is what harms. */
export function checkRunningTime(ran: Ran, field: string, now: Surroundings): readonly Refusal[] {
  if (ran.incident !== undefined || ran.milliliters === 0) return [];
  const protocol = now.context === undefined ? undefined : protocolInForceOn(now.context.protocols, now.today);
  if (protocol === undefined)
    return [
      refusal('cannot-say', 'Without a protocol in force the shortest running time is not known.', {
        remedy: 'adopt a protocol',
      }),
    ];
  const whole = protocol.number.runningMinutesLeast;
  const least = (whole * ran.milliliters) / WHOLE_DOSE_MILLILITERS;
  if (ran.minutes >= least) return [];
  return [
    refusal(
      'ran-too-fast',
      `By ${ran.by} ${ran.milliliters} mL ran in ${ran.says}; the whole bag takes at least ${whole} minutes.`,
      {
        field,
        remedy: `${ran.by === 'the clock' ? 'look again how much is left in the bag' : 'correct the times'}; if it is right, write under "incident" what happened and whom you told, and the nurse in charge looks at it`,
      },
    ),
  ];
}
