import { type NumberKey, emptyNumbers, inUsUnits, numberGroups, numberKeys, parseScaled } from '@twelvemonth/clinical';
import { use, useState } from 'react';
import fieldCss from '../../fields/Field.module.css';
import { Field } from '../../fields/Field.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { FieldTroubles } from '../../fields/field-trouble.ts';
import { Button } from '../../paper/Button.tsx';
import { counted, dotted, sentence } from '../../words/texts.ts';
import { type Draft, setNumber } from './draft.ts';
import css from './Editor.module.css';

/** Every number of the sheet, grouped by what it decides. */
export function NumberFields({ draft }: { draft: Draft }) {
  const empty = new Set(emptyNumbers(draft.sheet).map(({ key }) => key));
  return (
    <>
      {numberGroups.map(({ title, keys }, index) => (
        <Group key={title} title={title} draft={draft} keys={keys} first={index === 0} empty={empty} />
      ))}
    </>
  );
}

/** Folded unless something in it is to be decided: the sheet is long. */
function Group({
  title,
  draft,
  keys,
  first,
  empty,
}: {
  title: string;
  draft: Draft;
  keys: readonly NumberKey[];
  first: boolean;
  empty: ReadonlySet<NumberKey>;
}) {
  const open = keys.filter((key) => empty.has(key)).length;
  const changed = keys.filter((key) => draft.sheet.numbers[key].value !== draft.base.numbers[key].value).length;
  const [opensWith] = useState(first || open > 0);
  return (
    <details className={css['group']} open={opensWith}>
      <summary>
        {title}{' '}
        <span className="quiet small">
          {dotted(counted(keys.length, 'number'), changed > 0 && `${changed} changed`)}
        </span>
        {open > 0 && <span className={css['todo']}> {counted(open, 'number')} to be decided</span>}
      </summary>
      <fieldset className={css['inside']}>
        <legend className="unseen">{title}</legend>
        {keys.map((key) => (
          <OneNumber key={key} draft={draft} at={key} />
        ))}
      </fieldset>
    </details>
  );
}

function OneNumber({ draft, at }: { draft: Draft; at: NumberKey }) {
  const refusals = use(FieldTroubles);
  const { unit, means } = numberKeys[at];
  const base = draft.base.numbers[at];
  const { value, source } = draft.sheet.numbers[at];
  const typed = value ?? '';
  const changed = value !== base.value;
  const taken = base.value === null && value === base.suggestion;
  const refused = refusals.find(({ field }) => field === `numbers.${at}`)?.says;
  const unreadable =
    typed !== '' && parseScaled(typed) === undefined ? 'Figures, with at most four decimals.' : undefined;
  const american = inUsUnits(at, typed);
  const set = (text: string): void => {
    const plain = text.trim().replace(',', '.');
    const back = plain === base.value || (base.value === null && (plain === '' || plain === base.suggestion));
    setNumber(draft, at, {
      value: plain === '' ? null : plain,
      ...(back ? { source: base.source } : source === base.source ? { source: '' } : {}),
    });
  };
  return (
    <div className={css['number']}>
      <Field label={sentence(means)} trouble={unreadable ?? refused}>
        {(wired) => (
          <div className={fieldCss['row']}>
            <input
              {...wired}
              className={`${fieldCss['input']} ${css['value']}`}
              inputMode="decimal"
              autoComplete="off"
              value={typed}
              onChange={(event) => set(event.target.value)}
            />
            <span>
              {unit}
              {american !== undefined && <span className="quiet small"> ({american})</span>}
            </span>
            {value === null && base.suggestion !== undefined && (
              <Button size="slim" onClick={() => set(base.suggestion ?? '')}>
                take the suggested {base.suggestion}
                <span className="unseen"> for {means}</span>
              </Button>
            )}
            {changed && (
              <Button
                size="slim"
                tone="plain"
                onClick={() => setNumber(draft, at, { value: base.value, source: base.source })}
              >
                back to {base.value ?? 'empty'}
                <span className="unseen"> for {means}</span>
              </Button>
            )}
          </div>
        )}
      </Field>
      <p className="quiet small">
        {value === null ? (
          <strong className={css['todo']}>to be decided. </strong>
        ) : (
          changed && <strong>changed. </strong>
        )}
        {base.source} ({base.status})
      </p>
      {changed && !taken && value !== null && (
        <TextField
          label={`Where ${typed} ${unit} comes from`}
          at={`numbers.${at}.source`}
          value={source}
          onChange={(text) => setNumber(draft, at, { source: text })}
        />
      )}
    </div>
  );
}
