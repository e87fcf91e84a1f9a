import { type NumberKey, inUsUnits, numberGroups, numberKeys, parseScaled } from '@twelvemonth/clinical';
import { use } from 'react';
import fieldCss from '../../fields/Field.module.css';
import { Field } from '../../fields/Field.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { FieldTroubles } from '../../fields/field-trouble.ts';
import { Button } from '../../paper/Button.tsx';
import { sentence } from '../../words/texts.ts';
import { FoldedPart } from './FoldedPart.tsx';
import { numberParts } from './parts.ts';
import { type Draft, setNumber } from './draft.ts';
import css from './Editor.module.css';

/** Every number of the sheet, grouped by what it decides. */
export function NumberFields({ draft }: { draft: Draft }) {
  return numberParts.map((part, index) => (
    <FoldedPart key={part.title} part={part}>
      {numberGroups[index]?.keys.map((key) => (
        <OneNumber key={key} draft={draft} at={key} />
      ))}
    </FoldedPart>
  ));
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
