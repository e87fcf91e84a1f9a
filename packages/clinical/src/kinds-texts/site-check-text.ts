/** What was seen at the site, in words, with the phlebitis score of it where something was. */
import { isInfiltration, siteScore } from '../visit/resite.ts';
import { phlebitisScale } from '../formulas/phlebitis-score.ts';
import type { BodyOfKind } from '../kinds/index.ts';
import { plural } from './words.ts';

export function siteCheckText(body: BodyOfKind<'site-check'>): string {
  if (body.looks === 'well') return 'site looks well while it runs';
  const { score, says } = siteScore(body.seen);
  const note = body.note === undefined ? '' : ` (${body.note})`;
  const infiltration = isInfiltration(body.seen) ? '; infiltration until shown otherwise' : '';
  return `site not well: ${plural(body.seen, 'and')}${note}${infiltration}; ${phlebitisScale}: ${score}, ${says}`;
}
