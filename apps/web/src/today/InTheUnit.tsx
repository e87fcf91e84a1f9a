import { visitStrip } from '@twelvemonth/charts';
import { memo } from 'react';
import { Link } from '@tanstack/react-router';
import type { TodayView } from '@twelvemonth/exchange';
import { TakeOver } from '../named-nurse/TakeOver.tsx';
import { nurseInWords } from '../named-nurse/named-nurse-words.ts';
import { SupportWords } from '../supports/SupportWords.tsx';
import { Verdict } from '../verdict/Verdict.tsx';
import { WhyVerdict } from '../verdict/WhyVerdict.tsx';
import { NearNames } from '../words/NearNames.tsx';
import { dotted, unbroken, sentence } from '../words/texts.ts';
import { VisitColumns } from './VisitColumns.tsx';
import css from './Today.module.css';

type Visit = TodayView['visits'][number];
/** How much of the planned minutes it has run. */
function shareOf({ infusion }: Visit): number | undefined {
  if (infusion === undefined) return undefined;
  const [, minutes = '0'] = /ran (\d+) min/.exec(infusion.says) ?? [];
  return Number(minutes) / infusion.plannedMinutes;
}

/** Who did the newest step for them: whom to ask about them. */
function lastBy({ steps, outcome }: Visit): string | undefined {
  const by = outcome === 'not here yet' ? undefined : steps.findLast((step) => step.by !== undefined)?.by;
  return by === undefined ? undefined : `last with ${by}`;
}

/** What fits in the strip: what is left of the least running time. */
function running(visit: Visit): string | undefined {
  const { infusion } = visit;
  if (infusion === undefined) return undefined;
  if (infusion.paused) return 'paused';
  const left = /at least (.+) to go/.exec(infusion.says)?.[1];
  return left === undefined ? 'may finish' : `${left} to go`;
}

function strip(visit: Visit): { svg: string; sentence: string } {
  const share = shareOf(visit);
  return visitStrip({
    who: visit.name,
    steps: visit.steps.map((step) =>
      step.step === 'infusion' && visit.infusion !== undefined
        ? { ...step, says: running(visit), ...(share === undefined ? {} : { share }) }
        : step,
    ),
  });
}

/** Everyone on today's list, one line a person in order of their next act: steps done, running, to come. */
export function InTheUnit({ data, visits }: { data: TodayView; visits: TodayView['visits'] }) {
  return (
    <section aria-labelledby="in-the-unit">
      <h2 id="in-the-unit">In the unit</h2>
      {visits.length === 0 && <p className="quiet">You look after nobody on today’s list.</p>}
      <VisitColumns />
      <ul className={css['visits']} style={{ padding: 0, listStyle: 'none' }}>
        {visits.map((visit) => (
          <Line key={visit.patient} visit={visit} session={data.session} nurses={data.nurses} />
        ))}
      </ul>
    </section>
  );
}

type LineProps = { visit: Visit; session: TodayView['session']; nurses: TodayView['nurses'] };

/** Drawn anew only where something about this person has changed: with 60 on the list the others would hold a slow tablet up. */
const Line = memo(function Line({ visit, session, nurses }: LineProps) {
  const drawing = strip(visit);
  /** Still to come, or not gone yet: watched after the dose as well. */
  const stays = visit.steps.some(({ state }) => state === 'running' || state === 'waiting');
  const open = visit.outcome === 'not here yet' || visit.outcome === 'here';
  return (
    <li className={css['visit']}>
      <div>
        <Link to={stays ? '/people/$patient/visit' : '/people/$patient'} params={{ patient: visit.patient }}>
          {visit.name}
        </Link>
        <div className={css['detail']}>
          {dotted(visit.firstTimer ? 'first dose' : visit.dose, unbroken(visit.number), lastBy(visit), ...visit.needs)}
        </div>
        {stays && visit.nearNames.length > 0 && (
          <div className={css['detail']}>
            <NearNames names={visit.nearNames} />
          </div>
        )}
        {stays && visit.supports.length > 0 && (
          <div className={css['detail']}>
            <SupportWords patient={visit.patient} supports={visit.supports} />
          </div>
        )}
        {visit.exceptions.map((says) => (
          <div key={says} className={css['detail']}>
            {sentence(says)}
          </div>
        ))}
        {open && visit.verdict !== 'ready' && (
          <div className={css['detail']}>
            <Verdict is={visit.verdict}>{visit.headline}</Verdict>
            <WhyVerdict patient={visit.patient} about={visit.name} />
          </div>
        )}
      </div>
      <div>
        <div>{stays ? (visit.chair === undefined ? visit.arriveAt : `chair ${visit.chair}`) : visit.outcome}</div>
        {stays && session !== undefined && nurses.length > 0 && (
          <div className={css['detail']}>
            <div>{nurseInWords(visit.nurse)}</div>
            <TakeOver session={session} patient={visit.patient} name={visit.name} nurse={visit.nurse} nurses={nurses} />
          </div>
        )}
      </div>
      <div className={css['strip']}>
        <div dangerouslySetInnerHTML={{ __html: drawing.svg }} />
        <span className="unseen">{drawing.sentence}</span>
      </div>
    </li>
  );
});
