import { type Day, type Drawn, lockNames } from '@twelvemonth/planning';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { Button } from '../../paper/Button.tsx';
import { WhyThisTime } from '../times/WhyThisTime.tsx';
import css from './Board.module.css';
import type { DrawingAct } from './drawing-state.ts';
import { visitWords } from './visit-words.ts';

type Props = {
  readonly day: Day;
  readonly drawn: Drawn;
  readonly visit: number;
  /** The time the person has been told. */
  readonly told: string | undefined;
  /** The person is in the unit already: nothing of theirs is moved by hand. */
  readonly isHere?: boolean;
  readonly act: (act: DrawingAct) => void;
};

const open = 'nothing';

/** The visit last touched: moved without dragging, locked, explained. */
export function ChosenVisit({ day, drawn, visit, told, isHere = false, act }: Props) {
  const words = visitWords(day, drawn, visit);
  if (words === undefined) return null;
  const { name, comes, leaves, chair } = words;
  const move = (ticks: number, chairs: number): void => act({ does: 'move', visit, ticks, chairs });
  const minutes = day.minutesPerTick;
  return (
    <section className={`${css['chosenVisit']} screenOnly`} aria-label={`Chosen: ${name}`}>
      <p>
        <strong>{name}</strong> comes {comes}
        {told === undefined || told === comes ? '' : ` (told ${told})`}, {chair}, leaves {leaves}
      </p>
      {isHere ? (
        <p>They are here: what has begun stays, and they are told nothing.</p>
      ) : (
        <>
          <div className={css['acts']}>
            <Button aria-label={`${name} ${minutes} minutes earlier`} onClick={() => move(-1, 0)}>
              {minutes} minutes earlier
            </Button>
            <Button aria-label={`${name} ${minutes} minutes later`} onClick={() => move(1, 0)}>
              {minutes} minutes later
            </Button>
            {drawn.chairs[visit] !== undefined && (
              <>
                <Button aria-label={`${name} one chair up`} onClick={() => move(0, -1)}>
                  one chair up
                </Button>
                <Button aria-label={`${name} one chair down`} onClick={() => move(0, 1)}>
                  one chair down
                </Button>
              </>
            )}
            <WhyThisTime key={`${visit} ${comes}`} day={day} plan={drawn.plan} visit={visit} name={name} />
          </div>
          <ChoiceField
            label="What stays when the rest is planned again"
            at="lock"
            value={drawn.locks[visit] ?? open}
            onChange={(value) => act({ does: 'lock', visit, lock: value === open ? undefined : value })}
            options={[{ value: open }, ...lockNames.map((value) => ({ value }))]}
          />
        </>
      )}
    </section>
  );
}
