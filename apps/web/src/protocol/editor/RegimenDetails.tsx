import {
  type NumberKey,
  type Regimen,
  inUsUnits,
  numberKeyNames,
  numberKeys,
  parseScaled,
} from '@twelvemonth/clinical';
import { use, useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import fieldCss from '../../fields/Field.module.css';
import { Field } from '../../fields/Field.tsx';
import { FieldTroubles } from '../../fields/field-trouble.ts';
import { NumberField } from '../../fields/NumberField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { Button } from '../../paper/Button.tsx';
import { counted, dotted, sentence } from '../../words/texts.ts';
import css from './Editor.module.css';

type Props = { readonly regimen: Regimen; readonly set: (fields: Partial<Regimen>) => void };

/** What of the sheet is otherwise for one medicine: its own numbers, what must follow it, its cautions. */
export function RegimenDetails({ regimen, set }: Props) {
  const own = numberKeyNames.filter((key) => regimen.numbers[key] !== undefined);
  const [unfolded, setUnfolded] = useState(false);
  const inside = ['numbers', 'followOn', 'cautions'].map((part) => `regimens.${regimen.id}.${part}`);
  const isRefused = use(FieldTroubles).some(({ field }) => inside.some((path) => field?.startsWith(path)));
  const open = unfolded || isRefused;
  return (
    <details open={open} onToggle={({ currentTarget }) => setUnfolded(currentTarget.open)}>
      <summary>
        {dotted(
          own.length === 0
            ? 'the numbers of the sheet'
            : counted(own.length, 'number of its own', 'numbers of its own'),
          regimen.followOn !== undefined && 'another must follow',
          regimen.cautions.length > 0 && counted(regimen.cautions.length, 'caution'),
        )}
        <span className="unseen"> {regimen.title}</span>
      </summary>
      {open && <Inside own={own} regimen={regimen} set={set} />}
    </details>
  );
}

function Inside({ own, regimen, set }: Props & { own: readonly NumberKey[] }) {
  return (
    <>
      <OwnNumbers own={own} regimen={regimen} set={set} />
      {regimen.followOn !== undefined && <FollowOn followOn={regimen.followOn} regimen={regimen} set={set} />}
      <TextField
        label="Cautions beside its verdicts, one a line"
        optional
        at={`regimens.${regimen.id}.cautions`}
        lines="several"
        value={regimen.cautions.join('\n')}
        onChange={(text) => set({ cautions: text === '' ? [] : text.split('\n') })}
      />
    </>
  );
}

function OwnNumbers({ own, regimen, set }: Props & { own: readonly NumberKey[] }) {
  const put = (key: NumberKey, value: string): void =>
    set({
      numbers: {
        ...regimen.numbers,
        [key]: { source: regimen.source, status: 'local decision', ...regimen.numbers[key], value },
      },
    });
  const others = numberKeyNames.filter((key) => !own.includes(key));
  return (
    <>
      {own.map((key) => {
        const { value, source, status } = regimen.numbers[key] ?? { value: '', source: '', status: 'local decision' };
        const american = inUsUnits(key, value);
        return (
          <div key={key} className={css['number']}>
            <Field
              label={`${sentence(numberKeys[key].means)}, for ${regimen.medicine}`}
              at={`regimens.${regimen.id}.numbers.${key}`}
              trouble={parseScaled(value) === undefined ? 'Figures, with at most four decimals.' : undefined}
            >
              {(wired) => (
                <div className={fieldCss['row']}>
                  <input
                    {...wired}
                    className={`${fieldCss['input']} ${css['value']}`}
                    inputMode="decimal"
                    autoComplete="off"
                    value={value}
                    onChange={(event) => put(key, event.target.value.trim().replace(',', '.'))}
                  />
                  <span>
                    {numberKeys[key].unit}
                    {american !== undefined && <span className="quiet small"> ({american})</span>}
                  </span>
                  <Button
                    size="slim"
                    onClick={() => {
                      const { [key]: _, ...numbers } = regimen.numbers;
                      set({ numbers });
                    }}
                  >
                    as in the sheet<span className="unseen">: {numberKeys[key].means}</span>
                  </Button>
                </div>
              )}
            </Field>
            <p className="quiet small">
              {source} ({status})
            </p>
          </div>
        );
      })}
      <ChoiceField
        label="Another number of its own"
        value={undefined}
        onChange={(key) => key !== undefined && put(key, '')}
        options={others.map((value) => ({ value, says: `${numberKeys[value].means} (${numberKeys[value].unit})` }))}
        openUpTo={0}
      />
    </>
  );
}

const followOnFields = [
  ['dueMonths', 'The next is due after the last dose, or its end'],
  ['reachMonths', 'It must be reached within, from there'],
  ['listMonths', 'On the list before it is due'],
  ['firstInLineMonths', 'First in line before it is due'],
] as const;

function FollowOn({ followOn, regimen, set }: Props & { followOn: NonNullable<Regimen['followOn']> }) {
  return (
    <fieldset className={css['item']}>
      <legend className={css['itemTitle']}>Another bone medicine must follow</legend>
      <div className={css['side']}>
        {followOnFields.map(([name, label]) => (
          <NumberField
            key={name}
            label={label}
            unit="months"
            at={`regimens.${regimen.id}.followOn.${name}`}
            value={followOn[name]}
            onChange={(months) => set({ followOn: { ...followOn, [name]: months ?? 0 } })}
          />
        ))}
      </div>
      <p className="quiet small">
        {followOn.source} ({followOn.status})
      </p>
    </fieldset>
  );
}
