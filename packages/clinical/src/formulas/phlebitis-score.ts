/**
 * Visual infusion phlebitis score, Jackson 1998 (read): 0 to 5 from what is seen at the cannula. From 2 on the cannula is
 * resited. Swelling alone is not defined by the score: it is given 1 and looked at again.
 *
 * Not the 0-4 scale of the infusion nurses' society: which scale was used is always told beside the number. Not for
 * infiltration: swelling or pain while the medicine runs is that until shown otherwise, whatever the score.
 */
export type SiteSigns = {
  readonly pain: boolean;
  readonly painAlongCannula: boolean;
  readonly redness: boolean;
  readonly swelling: boolean;
  readonly induration: boolean;
  readonly venousCord: boolean;
  readonly fever: boolean;
};
export type PhlebitisScore = {
  readonly score: 0 | 1 | 2 | 3 | 4 | 5;
  readonly says: string;
  readonly act: string;
};
export const phlebitisScale = 'visual infusion phlebitis score, 0 to 5 (Jackson 1998)';

export function phlebitisScore(signs: SiteSigns): PhlebitisScore {
  const all = signs.painAlongCannula && signs.redness && signs.induration;
  if (all && signs.venousCord && signs.fever)
    return { score: 5, says: 'advanced thrombophlebitis', act: 'start treatment, resite the cannula' };
  if (all && signs.venousCord)
    return {
      score: 4,
      says: 'advanced phlebitis or start of thrombophlebitis',
      act: 'resite the cannula, consider treatment',
    };
  if (all) return { score: 3, says: 'medium stage of phlebitis', act: 'resite the cannula, consider treatment' };
  const early = [signs.pain || signs.painAlongCannula, signs.redness, signs.swelling || signs.induration].filter(
    Boolean,
  ).length;
  if (early >= 2) return { score: 2, says: 'early phlebitis', act: 'resite the cannula' };
  if (early === 1 || signs.venousCord) return { score: 1, says: 'possible first signs', act: 'watch, look again' };
  return { score: 0, says: 'site looks well', act: 'watch' };
}

/** From 2 on the action of the published table is to resite. */
export const isToBeResited = ({ score }: PhlebitisScore): boolean => score >= 2;
