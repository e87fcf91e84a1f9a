import { peopleField } from '@twelvemonth/charts';
import {
  type Sheet,
  alsoTried,
  bothWays,
  moreLikelyIn,
  reactionCountedWidely,
  sourceText,
  whatLowersIt,
} from '@twelvemonth/counselling';
import { Picture } from '../drawing/Picture.tsx';
import { Why } from '../paper/Why.tsx';
import css from './Deciding.module.css';
import { InUnitWords } from '../words/InUnitWords.tsx';

/** How one may feel in the three days after the drip: by the number of the dose, and what lowers it. */
export function Feeling({ sheet, hadBoneTablets }: { sheet: Sheet; hadBoneTablets: boolean }) {
  const { outOf, reactions, nextDose } = sheet;
  const firstDose = reactionCountedWidely.firstDose;
  return (
    <section aria-labelledby="feeling">
      <h2 id="feeling">How you may feel after the drip</h2>
      <p>
        Some people feel as if they had the flu: aches, fever, a sore head. It begins within a day. It is mostly gone in
        three days. It does not mean that you are allergic.
      </p>
      <p className={css['lead']}>Of {outOf.toLocaleString('en-GB')} people who have the drip:</p>
      <div className={css['reactions']}>
        {reactions.map(({ dose, treated, untreated, says }) => (
          <div key={dose} className={css['choice']}>
            <h3>
              Dose {dose}
              {dose === nextDose && <strong> (your next)</strong>}
            </h3>
            <p>{says}</p>
            <Picture
              draw={(width) =>
                peopleField(
                  {
                    caption: `Feeling ill after dose ${dose}, of ${outOf} people`,
                    of: outOf,
                    groups: [
                      {
                        look: 'has it',
                        count: untreated.have,
                        says: `${untreated.have} would feel ill without it too`,
                      },
                      {
                        look: 'because of it',
                        count: treated.have - untreated.have,
                        says: `${treated.have - untreated.have} feel ill because of it`,
                      },
                      { look: 'does not', count: treated.haveNot, says: `${treated.haveNot} do not feel ill` },
                    ],
                  },
                  { width },
                )
              }
            />
          </div>
        ))}
      </div>
      <h3>What lowers it</h3>
      <ul className={css['plain']}>
        {whatLowersIt.map(({ counted, withIt, withoutIt }) => (
          <li key={counted}>
            <InUnitWords>
              Paracetamol for three days: {bothWays(withIt.percent / 100, outOf).have} {counted}. Without it,{' '}
              {bothWays(withoutIt.percent / 100, outOf).have} did.
            </InUnitWords>
          </li>
        ))}
        <li>
          {moreLikelyIn.says}
          {hadBoneTablets && ' You have had bone tablets.'}
        </li>
        <li>
          <InUnitWords>
            Your sheet for afterwards says how much paracetamol you may take. Ask us first about other pain killers.
          </InUnitWords>
        </li>
      </ul>
      <Why about="the numbers for how one may feel come from" word="where these numbers come from">
        {reactions.map(({ dose, treatedShare, untreatedShare }) => (
          <p key={dose}>
            Dose {dose}: {treatedShare.percent} % and {untreatedShare.percent} %, any of the five commonest complaints
            within three days. {sourceText(treatedShare.source)}
          </p>
        ))}
        <p>
          Counted more widely after dose 1: {firstDose.treated.percent} % and {firstDose.untreated.percent} %.{' '}
          {sourceText(firstDose.treated.source)} Product text, doses 1 to 3:{' '}
          {reactionCountedWidely.productText.map(({ percent }) => `${percent} %`).join(', ')}.
        </p>
        {whatLowersIt.slice(0, 1).map(({ withIt }) => (
          <p key="lower">
            <InUnitWords>Paracetamol every six hours from four hours after.</InUnitWords> {sourceText(withIt.source)}
          </p>
        ))}
        {alsoTried.map(({ says, source }) => (
          <p key={says}>
            <InUnitWords>{says}</InUnitWords> {sourceText(source)}
          </p>
        ))}
        <p>No range is published where we looked.</p>
      </Why>
    </section>
  );
}
