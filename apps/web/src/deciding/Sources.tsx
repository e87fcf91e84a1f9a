import {
  type Sheet,
  hipsSparedBeside,
  otherSchedules,
  rareHarms,
  reactionByDose,
  reactionCountedWidely,
  sourceText,
  whatLowersIt,
} from '@twelvemonth/counselling';
import { TableOf } from '../drawing/TableOf.tsx';
import { usePrinting } from '../paper/use-printing.ts';
import { Why } from '../paper/Why.tsx';

/** For the professional: the trials behind the sheet, and those of other schedules, as a table. */
export function Sources({ sheet }: { sheet: Sheet }) {
  const printing = usePrinting();
  const own = Object.values(sheet.fits).flatMap(({ trial }) => (trial === undefined ? [] : [trial]));
  const trials = [...new Set([...own, ...otherSchedules])];
  const ofHarms = new Set(
    [
      ...reactionByDose.flatMap(({ treated, untreated }) => [treated.source, untreated.source]),
      reactionCountedWidely.firstDose.treated.source,
      ...whatLowersIt.map(({ withIt }) => withIt.source),
      ...rareHarms.flatMap(({ sources }) => sources),
      hipsSparedBeside.source,
    ].map(sourceText),
  );
  return (
    <section aria-labelledby="sources">
      <h2 id="sources">For the professional: the trials behind this</h2>
      <Why about="behind this sheet" word="the trials" key={String(printing)} open={printing}>
        <TableOf
          table={{
            caption: 'Trials behind this sheet',
            head: ['trial', 'who took part', 'years', 'what it found, treated and not', 'source'],
            rows: trials.map((trial) => [
              trial.title,
              `${trial.tookPart} (${trial.people.treated} and ${trial.people.untreated})`,
              String(trial.years),
              trial.effects
                .map(
                  ({ outcome, treated, untreated, found }) =>
                    `${outcome}: ${treated === undefined || untreated === undefined ? 'rates not seen' : `${treated.percent} and ${untreated.percent} %`}${found === 'fewer' ? '' : ' (no clear difference)'}`,
                )
                .join('; ') || 'no count of fractures',
              sourceText(trial.source),
            ]),
          }}
        />
      </Why>
      <div className="paperOnly small">
        <p>How one may feel, and rare harms:</p>
        <ul>
          {[...ofHarms].map((says) => (
            <li key={says}>{says}</li>
          ))}
        </ul>
      </div>
    </section>
  );
}
