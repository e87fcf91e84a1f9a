import type { SoFar } from '@twelvemonth/planning';
import { NumberField } from '../../fields/NumberField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { Why } from '../../paper/Why.tsx';
import { type ChangesTyped, isLateNow, notTimes } from './changes-state.ts';
import css from './Rest.module.css';

type Props = {
  readonly typed: ChangesTyped;
  readonly onChange: (typed: ChangesTyped) => void;
  readonly soFar: readonly SoFar[];
  readonly told: ReadonlyMap<string, string>;
  readonly time: string;
};

/** What has changed and stands in no entry: fewer hands or chairs, who comes when, whose infusion runs longer. */
export function ChangesForm({ typed, onChange, soFar, told, time }: Props) {
  const wrong = new Set(notTimes(typed));
  const expected = soFar.filter(({ state }) => state === 'expected');
  const late = expected.filter((so) => isLateNow(so, told.get(so.name), time));
  const others = expected.filter((so) => !late.includes(so));
  const running = soFar.filter(({ state, runs }) => state === 'here' && runs?.step === 'infusion');
  const comesAt = ({ name }: SoFar) => (
    <TextField
      key={name}
      label={`${name}, told ${told.get(name) ?? 'no time'}, comes at`}
      at={`comes.${name}`}
      short
      value={typed.comes[name] ?? ''}
      trouble={wrong.has(name) ? 'Write a time as 10:40.' : undefined}
      onChange={(value) => onChange({ ...typed, comes: { ...typed.comes, [name]: value } })}
    />
  );
  return (
    <>
      <div className={css['fields']}>
        <NumberField
          label={`Nurses from ${time} on`}
          at="nurses"
          value={typed.nurses}
          onChange={(nurses) => onChange({ ...typed, nurses })}
        />
        <NumberField
          label={`Chairs from ${time} on`}
          at="chairs"
          value={typed.chairs}
          onChange={(chairs) => onChange({ ...typed, chairs })}
        />
        <NumberField
          label={`Second checkers from ${time} on`}
          at="checkers"
          value={typed.checkers}
          onChange={(checkers) => onChange({ ...typed, checkers })}
        />
      </div>
      {late.length > 0 && (
        <>
          <h3>Not here yet</h3>
          <p className="quiet">Where no time is known they are planned from now on.</p>
          <div className={css['fields']}>{late.map(comesAt)}</div>
        </>
      )}
      {running.length > 0 && (
        <div className={css['fields']}>
          {running.map(({ name, runs }) => (
            <NumberField
              key={name}
              label={`${name}, infusion since ${runs?.since}: runs longer by`}
              at={`longer.${name}`}
              unit="minutes"
              value={typed.longer[name]}
              onChange={(minutes) => onChange({ ...typed, longer: { ...typed.longer, [name]: minutes } })}
            />
          ))}
        </div>
      )}
      {others.length > 0 && (
        <Why about="than they were told" word="somebody else comes later">
          <div className={css['fields']}>{others.map(comesAt)}</div>
        </Why>
      )}
    </>
  );
}
