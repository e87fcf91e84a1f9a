import { peopleField } from '@twelvemonth/charts';
import { type Choice, type Sheet, type ToldRisk, choices, sourceText } from '@twelvemonth/counselling';
import { Picture } from '../drawing/Picture.tsx';
import { Why } from '../paper/Why.tsx';
import css from './Deciding.module.css';
import { spokenRisk } from './spoken-risk.ts';

/** Every choice beside the others, none of them first by size: what it is, and what would change, both ways. */
export function Choices({ sheet }: { sheet: Sheet }) {
  const told = new Set(
    sheet.risks.flatMap(({ under }) => under.flatMap((one) => (one.told ? [one.benefit.treatment] : []))),
  ).size;
  return (
    <section aria-labelledby="choices">
      <h2 id="choices">Your choices</h2>
      {sheet.lead !== undefined && (
        <p className={css['lead']}>
          {sheet.lead} {sheet.risks.map(({ says }) => says).join(' ')}
        </p>
      )}
      {told > 1 && (
        <p>These numbers come from different trials. They do not show that one treatment is better than another.</p>
      )}
      <div className={css['choices']}>
        {choices.map((choice) => (
          <article key={choice.choice} className={css['choice']} aria-label={choice.title}>
            <h3>{choice.title}</h3>
            {choice.medicine !== undefined && <p className="quiet small">{choice.medicine}</p>}
            {choice.says.map((says) => (
              <p key={says}>{says}</p>
            ))}
            {sheet.risks.map((risk) => (
              <UnderRisk key={risk.of} choice={choice} risk={risk} sheet={sheet} />
            ))}
          </article>
        ))}
      </div>
    </section>
  );
}

function UnderRisk({ choice, risk, sheet }: { choice: Choice; risk: ToldRisk; sheet: Sheet }) {
  const words = spokenRisk[risk.of];
  const caption = `${words.title}, of ${sheet.outOf} people over ${sheet.years} years, ${choice.title.toLowerCase()}`;
  if (choice.choice === 'not now') return null;
  if (choice.choice === 'no treatment')
    return (
      <>
        <h4>{words.title}</h4>
        <p>{risk.says}</p>
        <Picture
          draw={(width) =>
            peopleField(
              {
                caption,
                of: sheet.outOf,
                groups: [
                  { look: 'has it', count: risk.without.have, says: `${risk.without.have} ${words.do}` },
                  { look: 'does not', count: risk.without.haveNot, says: `${risk.without.haveNot} do not` },
                ],
              },
              { width },
            )
          }
        />
      </>
    );
  const under = risk.under.find((one) => (one.told ? one.benefit.treatment : one.treatment) === choice.choice);
  if (under === undefined) return null;
  if (!under.told)
    return (
      <>
        <h4>{words.title}</h4>
        <p>No number of yours here. {under.says}</p>
      </>
    );
  const { counts, benefit } = under;
  const more = counts.spared < 0;
  return (
    <>
      <h4>{words.title}</h4>
      {under.sentences.map((says) => (
        <p key={says}>{says}</p>
      ))}
      <Picture
        draw={(width) =>
          peopleField(
            {
              caption,
              of: sheet.outOf,
              groups: [
                {
                  look: 'has it',
                  count: more ? counts.without.have : counts.withTreatment.have,
                  says: `${more ? counts.without.have : counts.withTreatment.have} ${words.do} either way`,
                },
                more
                  ? { look: 'because of it', count: -counts.spared, says: `${-counts.spared} more ${words.do} with it` }
                  : { look: 'spared', count: counts.spared, says: `${counts.spared} are spared by it` },
                {
                  look: 'does not',
                  count: more ? counts.withTreatment.haveNot : counts.without.haveNot,
                  says: `${more ? counts.withTreatment.haveNot : counts.without.haveNot} do not, either way`,
                },
              ],
            },
            { width },
          )
        }
      />
      {benefit.stretched.length > 0 && (
        <ul className={css['stretched']} aria-label="Where this goes further than the trial">
          {benefit.stretched.map((says) => (
            <li key={says}>{says}</li>
          ))}
        </ul>
      )}
      <Why about={`the numbers for ${choice.title.toLowerCase()} come from`} word="where these numbers come from">
        <p>
          {benefit.trial.title}: {benefit.trial.tookPart}; {benefit.trial.people.treated} with it,{' '}
          {benefit.trial.people.untreated} with {benefit.trial.comparedWith}; {benefit.trial.years} years.
        </p>
        {benefit.effect.relative !== undefined && (
          <p>
            {benefit.effect.outcome}: {benefit.effect.relative.measure} {benefit.effect.relative.value}
            {typeof benefit.effect.relative.interval === 'string'
              ? ''
              : ` (${benefit.effect.relative.interval.from} to ${benefit.effect.relative.interval.to}, 95 %)`}
            , put to this person's own risk: {(benefit.estimate.without * 100).toFixed(1)} % without,{' '}
            {(benefit.estimate.withTreatment * 100).toFixed(1)} % with, {(benefit.estimate.spared * 100).toFixed(1)} %
            spared ({(benefit.estimate.sparedRange.from * 100).toFixed(1)} to{' '}
            {(benefit.estimate.sparedRange.to * 100).toFixed(1)}). {sourceText(benefit.effect.relative.source)}
          </p>
        )}
        <p>The risk is spread evenly over the years (constant hazard): an assumption.</p>
      </Why>
    </>
  );
}
