import { type Regimen, starterProtocols } from '@twelvemonth/clinical';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { NumberField } from '../../fields/NumberField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { Button } from '../../paper/Button.tsx';
import { RegimenDetails } from './RegimenDetails.tsx';
import { ReasonField } from './ReasonField.tsx';
import { StruckOut } from './StruckOut.tsx';
import { FoldedPart } from './FoldedPart.tsx';
import { partOf } from './parts.ts';
import { type Draft, changedPaths, movedUp, replaced } from './draft.ts';
import css from './Editor.module.css';

/** Regimens the unit gives: how often, how many doses before a review. The first is meant where nothing is prescribed. */
export function RegimenFields({ draft }: { draft: Draft }) {
  const { sheet, base, set } = draft;
  const changed = changedPaths(draft);
  const known = [...base.regimens, ...starterProtocols.flatMap(({ regimens }) => regimens)];
  const absent = known.filter(
    ({ id }, index) =>
      !sheet.regimens.some((one) => one.id === id) && known.findIndex((one) => one.id === id) === index,
  );
  return (
    <FoldedPart part={partOf.regimens}>
      <p className="quiet">The first is meant where nothing is prescribed. Strike out what the unit does not give.</p>
      {sheet.regimens.map((regimen, index) => (
        <OneRegimen
          key={regimen.id}
          regimen={regimen}
          changed={changed.has(`regimens.${regimen.id}`)}
          set={(fields) => set({ regimens: replaced(sheet.regimens, regimen.id, fields) })}
        >
          {index > 0 && (
            <Button size="slim" onClick={() => set({ regimens: movedUp(sheet.regimens, index) })}>
              earlier<span className="unseen">: {regimen.title}</span>
            </Button>
          )}
          {sheet.regimens.length > 1 && (
            <Button size="slim" onClick={() => set({ regimens: sheet.regimens.filter(({ id }) => id !== regimen.id) })}>
              strike out<span className="unseen">: {regimen.title}</span>
            </Button>
          )}
        </OneRegimen>
      ))}
      <StruckOut draft={draft} list="regimens" items={base.regimens.map(({ id, title }) => ({ id, says: title }))} />
      <ReasonField draft={draft} path="regimenOrder" changed={changed.has('regimenOrder')} />
      {absent.length > 0 && (
        <ChoiceField
          label="Put in another regimen"
          value={undefined}
          onChange={(id) => {
            const found = absent.find((one) => one.id === id);
            if (found !== undefined) set({ regimens: [...sheet.regimens, found] });
          }}
          options={absent.map(({ id, title }) => ({ value: id, says: title }))}
          openUpTo={0}
        />
      )}
    </FoldedPart>
  );
}

function OneRegimen({
  regimen,
  changed,
  set,
  children,
}: {
  regimen: Regimen;
  changed: boolean;
  set: (fields: Partial<Regimen>) => void;
  children: React.ReactNode;
}) {
  const at = `regimens.${regimen.id}`;
  return (
    <fieldset className={css['item']}>
      <legend className={css['itemTitle']}>{regimen.title}</legend>
      <p className="quiet">{regimen.medicine}</p>
      <div className={css['side']}>
        <NumberField
          label="From one dose to the next"
          unit="months"
          at={`${at}.intervalMonths`}
          value={regimen.intervalMonths}
          onChange={(months) => set({ intervalMonths: months ?? 0 })}
        />
        <NumberField
          label="Before a review"
          unit="doses"
          at={`${at}.plannedDoses`}
          value={regimen.plannedDoses}
          onChange={(doses) => set({ plannedDoses: doses ?? 0 })}
        />
      </div>
      <RegimenDetails regimen={regimen} set={set} />
      {regimen.given === 'injection' && (
        <ChoiceField
          label="Before it is injected it is checked by"
          at={`${at}.secondCheck`}
          value={regimen.secondCheck ?? 'another person'}
          onChange={(secondCheck) => set({ secondCheck })}
          options={[{ value: 'another person' }, { value: 'not asked for', says: 'nobody else' }]}
        />
      )}
      {changed ? (
        <TextField
          label="Where this comes from"
          at={`${at}.source`}
          value={regimen.source}
          onChange={(source) => set({ source, status: 'local decision' })}
        />
      ) : (
        <p className="quiet small">
          {regimen.source} ({regimen.status})
        </p>
      )}
      <p>{children}</p>
    </fieldset>
  );
}
