/** The look at the cannula's site while the medicine runs: when it is due by the protocol, and what was found. */
import { type Protocol, type Visit, entryText } from '@twelvemonth/clinical';
import type { VisitView } from '@twelvemonth/exchange';

export function siteViewOf(
  visit: Visit | undefined,
  protocol: Protocol | undefined,
  nameOf: (staff: string) => string,
): VisitView['site'] {
  if (visit?.infusion === undefined) return undefined;
  const { siteCheck, siteWell, paused } = visit.infusion;
  return {
    lookFirst: paused?.body.because === 'the site' && (siteCheck?.seq ?? 0) < paused.seq,
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

export const resiteViewOf = (visit: Visit | undefined): Pick<VisitView, 'resite'> =>
  visit?.resite === undefined
    ? {}
    : {
        resite: {
          says: visit.resite.says,
          oldSite: visit.resite.old.body.site,
          oldIsIn: visit.removed === undefined,
        },
      };
