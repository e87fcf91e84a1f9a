/** What was seen at the site, in words, with the phlebitis score of it where something was. */
import { phlebitisScale, phlebitisScore } from '../formulas/phlebitis-score.ts';
import type { BodyOfKind } from '../kinds/index.ts';
import { plural } from './words.ts';

export function siteCheckText(body: BodyOfKind<'site-check'>): string {
  if (body.looks === 'well') return 'site looks well while it runs';
  const has = (name: (typeof body.seen)[number]): boolean => body.seen.includes(name);
  const { score, says } = phlebitisScore({
    pain: has('pain'),
    painAlongCannula: has('pain along the cannula'),
    redness: has('redness'),
    swelling: has('swelling'),
    induration: has('hardening'),
    venousCord: has('a cord along the vein'),
    fever: has('fever'),
  });
  const note = body.note === undefined ? '' : ` (${body.note})`;
  const infiltration =
    has('swelling') || has('pain') || has('pain along the cannula') ? '; infiltration until shown otherwise' : '';
  return `site not well: ${plural(body.seen, 'and')}${note}${infiltration}; ${phlebitisScale}: ${score}, ${says}`;
}
