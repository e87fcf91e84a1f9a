import type { SessionDayView } from '@twelvemonth/exchange';
import { useId } from 'react';
import { useMay } from '../frame/may.ts';
import { needsNurse, nurseInWords } from '../named-nurse/named-nurse-words.ts';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { type Attempt, useAct } from '../server/use-act.ts';
import { counted } from '../words/texts.ts';
import css from './LookedAfter.module.css';

type Listed = SessionDayView['lookedAfter'][number];

/** Who looks after whom, of those who have not gone home: shared out in turn by one press, changed for one person by choosing. Each naming is an entry. */
export function LookedAfter({ data }: { data: SessionDayView }) {
  const attempt = useAct();
  const may = useMay();
  const here = data.lookedAfter.filter(({ gone }) => !gone);
  if (here.length === 0 || data.state !== 'open') return null;
  const mayName = may('name nurse');
  const without = here.filter(({ nurse }) => needsNurse(nurse));
  const name = async (patients: readonly Listed[], nurse: string): Promise<boolean> => {
    const answer = await attempt.send({
      name: 'name nurse',
      session: data.session,
      patients: patients.map(({ patient }) => patient),
      nurse,
    });
    return answer !== undefined;
  };
  const shareOut = async (): Promise<void> => {
    for (const [turn, nurse] of data.nurses.entries()) {
      const theirs = without.filter((_, index) => index % data.nurses.length === turn);
      if (theirs.length > 0 && !(await name(theirs, nurse.staff))) return;
    }
  };
  return (
    <section aria-labelledby="looked-after">
      <h2 id="looked-after">Who looks after whom</h2>
      {without.length > 0 && (
        <Note tone="caution">{counted(without.length, 'person has', 'people have')} no named nurse who is here.</Note>
      )}
      {mayName && without.length > 0 && data.nurses.length > 0 && (
        <p className="screenOnly" style={{ marginTop: '0.8rem' }}>
          <Button size="big" busy={attempt.busy} onClick={() => void shareOut()}>
            Share them out in turn
          </Button>
        </p>
      )}
      <Outcome of={attempt} />
      <ul className={css['list']}>
        {here.map((one) => (
          <li key={one.patient}>
            <span className={css['time']}>{one.arriveAt}</span>
            {mayName ? (
              <ChooseNurse
                one={one}
                nurses={data.nurses}
                attempt={attempt}
                choose={(nurse) => void name([one], nurse)}
              />
            ) : (
              <>
                <span>{one.name}</span>
                <span>{nurseInWords(one.nurse)}</span>
              </>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

function ChooseNurse({
  one,
  nurses,
  attempt,
  choose,
}: {
  one: Listed;
  nurses: SessionDayView['nurses'];
  attempt: Attempt;
  choose: (nurse: string) => void;
}) {
  const id = useId();
  const here = one.nurse?.isHere === true ? one.nurse.staff : '';
  return (
    <>
      <label htmlFor={id}>{one.name}</label>
      <select
        id={id}
        value={here}
        disabled={attempt.busy}
        onChange={(event) => {
          if (event.target.value !== '') choose(event.target.value);
        }}
      >
        {here === '' && <option value="">{nurseInWords(one.nurse)}</option>}
        {nurses.map(({ staff, name }) => (
          <option key={staff} value={staff}>
            {name}
          </option>
        ))}
      </select>
    </>
  );
}
