import { Link } from '@tanstack/react-router';
import { day } from '@twelvemonth/clinical';
import type { FillView } from '@twelvemonth/exchange';
import { useMemo, useState } from 'react';
import { NoUnitYet } from '../frame/NoUnitYet.tsx';
import { useMay } from '../frame/may.ts';
import { useUnit } from '../frame/unit.ts';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Page } from '../paper/Page.tsx';
import { Trouble } from '../paper/Trouble.tsx';
import { dayInWords, longDay } from '../words/dates.ts';
import { counted } from '../words/texts.ts';
import { Fairness, OneMoreWould, Tiers } from './AboutProposal.tsx';
import css from './Fill.module.css';
import { ProposalTable, WhyNotEarlier } from './ProposalTable.tsx';
import type { Proposed } from './fill.worker.ts';
import { linesOf, withoutPlaceOf } from './lines.ts';
import { useAccepting } from './use-accepting.ts';
import { type Proposal, useProposal } from './use-proposal.ts';
import { InUnitWords } from '../words/InUnitWords.tsx';

/** Places suggested for those who wait and fall due. Nothing is booked until a person accepts a line. */
export function FillScreen() {
  const { unit } = useUnit();
  const [round, setRound] = useState(0);
  return unit === undefined ? (
    <Page title="Suggest places">
      <NoUnitYet />
    </Page>
  ) : (
    <OfUnit
      key={`${unit.unit} ${round}`}
      unit={unit.unit}
      name={unit.name}
      again={() => setRound((before) => before + 1)}
    />
  );
}

function OfUnit({ unit, name, again }: { unit: string; name: string; again: () => void }) {
  const proposal = useProposal(unit);
  const { state, stop } = proposal;
  return (
    <Page
      title="Suggest places"
      sub={`${name}: a proposal. Nothing is booked until you accept it, line by line or the ticked ones.`}
      acts={
        <>
          <Button onClick={() => window.print()}>Print</Button>
          {state.is !== 'working' && <Button onClick={again}>Suggest again</Button>}
          <Link to="/sessions">all sessions</Link>
        </>
      }
    >
      {state.is === 'working' && (
        <p aria-live="polite" className={css['working']}>
          {state.doing} … {state.share !== undefined && <progress aria-label="How far" value={state.share} max={1} />}{' '}
          <Button size="slim" onClick={stop}>
            Stop
          </Button>
        </p>
      )}
      {state.is === 'stopped' && (
        <output>
          Stopped. Nothing was suggested and nothing has changed: everybody keeps the place they have been told.
        </output>
      )}
      {state.is === 'failed' && <Trouble error={state.error} again={again} />}
      {state.is === 'nothing' && (
        <>
          {state.says.map((says) => (
            <Note key={says}>{says}</Note>
          ))}
          <LeftOut view={state.view} />
        </>
      )}
      {state.is === 'there' && <Sheet view={state.view} proposed={state.proposed} proposal={proposal} />}
    </Page>
  );
}

type SheetProps = { readonly view: FillView; readonly proposed: Proposed; readonly proposal: Proposal };

function Sheet({ view, proposed, proposal: { earlier, askWhy } }: SheetProps) {
  const may = useMay();
  const accepting = useAccepting();
  const { unit } = useUnit();
  const lines = useMemo(() => {
    const { sessionWeekdays = [], bloodWeekdays = [], closedDays = [] } = unit ?? {};
    const calendar = { sessionWeekdays, bloodWeekdays, closedDays: closedDays.map((date) => day(date)) };
    return linesOf(view, proposed, { calendar, validDays: view.bloodsValidDays });
  }, [view, proposed, unit]);
  const without = useMemo(() => withoutPlaceOf(view, proposed), [view, proposed]);
  const people = proposed.request.people.length;
  const tables = { accepting, mayBook: may('book'), earlier, askWhy };
  return (
    <>
      {view.hasUsualSettings && (
        <Note tone="caution">
          The unit has not written its own minutes and staff for planning: starting values stand in (common practice, no
          source). They are written under Settings.
        </Note>
      )}
      <p>
        <strong>
          From the notes of {longDay(view.today)}: {counted(people, 'person has', 'people have')} a window in{' '}
          {counted(view.sessions.length, 'session')}; {people - without.length} would have a place, {without.length}{' '}
          none.
        </strong>{' '}
        {lines.length === 0 && 'Nothing changes: everybody keeps what they have been told.'}
      </p>
      <ProposalTable
        {...tables}
        id="fill-moves"
        title="Moved from a place they have been told"
        says="Only for a stated gain, or where the place cannot stay. They have to be told again. Accepted first, they make room on full lists."
        lines={lines.filter(({ from }) => from !== undefined)}
      />
      <ProposalTable
        {...tables}
        id="fill-new"
        title="New places"
        says="Each is asked again, requirement by requirement, when it is booked."
        lines={lines.filter(({ from }) => from === undefined)}
      />
      {without.length > 0 && (
        <section aria-labelledby="fill-without">
          <h2 id="fill-without">No place found ({without.length})</h2>
          <ul className={css['without']}>
            {without.map((one) => (
              <li key={one.person}>
                <Link to="/people/$patient" params={{ patient: one.patient }}>
                  {one.name}
                </Link>{' '}
                <span className="quiet">{one.tier === 'other' ? one.kind : `${one.kind}, ${one.tier}`}</span>
                {one.told !== undefined && (
                  <p>
                    Told {dayInWords(one.told.on)}. It stays theirs: look whether it can hold, or give it up with them.
                  </p>
                )}
                <p>
                  <InUnitWords>{one.why}</InUnitWords>
                </p>
                <details
                  onToggle={(event) => {
                    if (event.currentTarget.open && !earlier.has(one.person)) askWhy(one.person);
                  }}
                >
                  <summary>
                    why in no session?<span className="unseen"> {one.name}</span>
                  </summary>
                  <WhyNotEarlier earlier={earlier.get(one.person)} />
                </details>
              </li>
            ))}
          </ul>
        </section>
      )}
      <Tiers proposed={proposed} />
      <OneMoreWould proposed={proposed} view={view} />
      <Fairness proposed={proposed} view={view} />
      <LeftOut view={view} />
    </>
  );
}

/** Who waits and has no window: what they need comes before any place. */
function LeftOut({ view: { leftOut } }: { view: FillView }) {
  if (leftOut.length === 0) return null;
  return (
    <section aria-labelledby="fill-left-out">
      <h2 id="fill-left-out">No window yet, so no place is looked for ({leftOut.length})</h2>
      <ul className={css['without']}>
        {leftOut.map(({ patient, name, because }) => (
          <li key={patient}>
            <Link to="/people/$patient" params={{ patient }}>
              {name}
            </Link>
            : {because}
          </li>
        ))}
      </ul>
    </section>
  );
}
