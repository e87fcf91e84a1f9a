/**
 * A site that was not well, so that the medicine goes on only through another cannula: swelling or pain is infiltration until
 * shown otherwise (safety page, "The day"), and from a phlebitis score of 2 on the cannula is resited (Jackson 1998).
 */
import { type PhlebitisScore, isToBeResited, phlebitisScore } from '../formulas/phlebitis-score.ts';
import { plural } from '../kinds-texts/words.ts';
import type { siteSignNames } from '../kinds/site-check.ts';
import type { Fact } from '../record/patient-record.ts';

type Seen = readonly (typeof siteSignNames)[number][];

export type Resite = {
  /** The cannula that is not used any more. */
  readonly old: Fact<'cannula'>;
  /** "swelling and pain, left forearm" */
  readonly says: string;
};

export function siteScore(seen: Seen): PhlebitisScore {
  return phlebitisScore({
    pain: seen.includes('pain'),
    painAlongCannula: seen.includes('pain along the cannula'),
    redness: seen.includes('redness'),
    swelling: seen.includes('swelling'),
    induration: seen.includes('hardening'),
    venousCord: seen.includes('a cord along the vein'),
    fever: seen.includes('fever'),
  });
}

export const isInfiltration = (seen: Seen): boolean =>
  seen.some((sign) => sign === 'swelling' || sign === 'pain' || sign === 'pain along the cannula');

/**
 * Undefined: no look through this cannula found it unfit. A later "looks well" does not take such a look back: swelling settles
 * while it stands still. Another cannula does, or a withdrawal that says why the look was wrong.
 */
export function resiteOf(looks: readonly Fact<'site-check'>[], old: Fact<'cannula'> | undefined): Resite | undefined {
  if (old === undefined) return undefined;
  const unfit = looks.findLast(
    ({ seq, body }) =>
      seq > old.seq && body.looks === 'not well' && (isInfiltration(body.seen) || isToBeResited(siteScore(body.seen))),
  );
  return unfit?.body.looks === 'not well'
    ? { old, says: `${plural(unfit.body.seen, 'and')}, ${old.body.site}` }
    : undefined;
}
