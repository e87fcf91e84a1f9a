import { type ParacetamolRow, paracetamolSays, starterProtocols } from '@twelvemonth/clinical';
import { NumberField } from '../../fields/NumberField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { Button } from '../../paper/Button.tsx';
import { StruckOut } from './StruckOut.tsx';
import { FoldedPart } from './FoldedPart.tsx';
import { partOf } from './parts.ts';
import { type Draft, changedPaths, replaced } from './draft.ts';
import css from './Editor.module.css';

/** The table a patient pack takes its amount from. Guidelines differ: without rows a pack names none. */
export function ParacetamolFields({ draft }: { draft: Draft }) {
  const { sheet, base, set } = draft;
  const changed = changedPaths(draft);
  const known = [...base.paracetamol, ...starterProtocols.flatMap(({ paracetamol }) => paracetamol)];
  const absent = known.filter(
    ({ id }, index) =>
      !sheet.paracetamol.some((row) => row.id === id) && known.findIndex((row) => row.id === id) === index,
  );
  const putIn = (row: ParacetamolRow): void => set({ paracetamol: [...sheet.paracetamol, row] });
  return (
    <FoldedPart part={partOf.paracetamol}>
      <p className="quiet">
        By weight, for a healthy liver. The patient pack names an amount only from these rows. It decides nothing about
        a dose.
      </p>
      {sheet.paracetamol.map((row) => (
        <OneRow
          key={row.id}
          row={row}
          changed={changed.has(`paracetamol.${row.id}`)}
          set={(fields) => set({ paracetamol: replaced(sheet.paracetamol, row.id, fields) })}
          strikeOut={() => set({ paracetamol: sheet.paracetamol.filter(({ id }) => id !== row.id) })}
        />
      ))}
      <StruckOut
        draft={draft}
        list="paracetamol"
        items={base.paracetamol.map((row) => ({ id: row.id, says: paracetamolSays(row) }))}
      />
      {absent.map((row) => (
        <p key={row.id}>
          {paracetamolSays(row)}.{' '}
          <span className="quiet">
            {row.source} ({row.status})
          </span>{' '}
          <Button size="slim" onClick={() => putIn(row)}>
            put in<span className="unseen">: {row.id}</span>
          </Button>
        </p>
      ))}
    </FoldedPart>
  );
}

const numbers = [
  { key: 'leastMilligrams', label: 'least of a dose', unit: 'mg' },
  { key: 'mostMilligrams', label: 'most of a dose', unit: 'mg' },
  { key: 'timesADay', label: 'times a day', unit: 'times' },
  { key: 'mostGramsADay', label: 'most in 24 hours', unit: 'g' },
] as const;

function OneRow({
  row,
  changed,
  set,
  strikeOut,
}: {
  row: ParacetamolRow;
  changed: boolean;
  set: (fields: Partial<ParacetamolRow>) => void;
  strikeOut: () => void;
}) {
  const at = `paracetamol.${row.id}`;
  return (
    <fieldset className={css['item']}>
      <legend className={css['itemTitle']}>{row.id}</legend>
      {numbers.map(({ key, label, unit }) => (
        <NumberField
          key={key}
          label={`${row.id}: ${label}`}
          at={`${at}.${key}`}
          unit={unit}
          value={row[key]}
          onChange={(value) => set({ [key]: value ?? 0 })}
        />
      ))}
      {changed ? (
        <TextField
          label="Where this comes from"
          at={`${at}.source`}
          value={row.source}
          onChange={(source) => set({ source, status: 'local decision' })}
        />
      ) : (
        <p className="quiet small">
          {row.source} ({row.status})
        </p>
      )}
      <p>
        <Button size="slim" onClick={strikeOut}>
          strike out<span className="unseen">: {row.id}</span>
        </Button>
      </p>
    </fieldset>
  );
}
