/** The look at the cannula's site while the medicine runs: when it is due by the protocol, and what was found. */
import { type Protocol, type Visit, entryText } from '@twelvemonth/clinical';
import type { VisitView } from '@twelvemonth/exchange';

export function siteViewOf(
  visit: Visit | undefined,
  protocol: Protocol | undefined,
  nameOf: (staff: string) => string,
): VisitView['site'] {
  if (visit?.infusion === undefined) return undefined;
  const { siteCheck, siteWell } = visit.infusion;
  return {
    ...(protocol === undefined ? {} : { afterMinutes: protocol.number.siteCheckMinutes }),
    well: siteWell,
    ...(siteCheck === undefined
      ? {}
      : {
          last: {
            at: siteCheck.at ?? siteCheck.recordedAt,
            by: nameOf(siteCheck.author.staff),
            says: entryText(siteCheck),
          },
        }),
  };
}
