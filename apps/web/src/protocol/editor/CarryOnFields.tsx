import { type CarryOn, carryOnAsks, isAnsweredFromNotes, starterProtocols } from '@twelvemonth/clinical';
import { useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { Button } from '../../paper/Button.tsx';
import { StruckOut } from './StruckOut.tsx';
import { FoldedPart } from './FoldedPart.tsx';
import { partOf } from './parts.ts';
import { type Draft, changedPaths, idFrom, replaced } from './draft.ts';
import css from './Editor.module.css';

/** What a review looks at before it lets the treatment go on after the planned doses. Guidelines differ: the unit decides. */
export function CarryOnFields({ draft }: { draft: Draft }) {
  const { sheet, base, set } = draft;
  const changed = changedPaths(draft);
  const asks = (criterion: CarryOn): string => carryOnAsks(criterion, (key) => sheet.numbers[key].value ?? '…');
  const known = [...base.carryOn, ...starterProtocols.flatMap(({ carryOn }) => carryOn)].filter(
    ({ id }, index, all) => all.findIndex((one) => one.id === id) === index,
  );
  const absent = known.filter(({ id }) => !sheet.carryOn.some((one) => one.id === id));
  const putIn = (criterion: CarryOn) => set({ carryOn: [...sheet.carryOn, criterion] });
  const putInKnown = (id: string | undefined): void => {
    const found = known.find((one) => one.id === id);
    if (found !== undefined) putIn(found);
  };
  return (
    <FoldedPart part={partOf.carryOn}>
      <p className="quiet">
        A review has each answered from the notes, or asks the prescriber. It decides nothing: the prescriber does.
      </p>
      {sheet.carryOn.map((criterion) => (
        <OneCriterion
          key={criterion.id}
          criterion={criterion}
          asks={asks(criterion)}
          changed={changed.has(`carryOn.${criterion.id}`)}
          set={(fields) => set({ carryOn: replaced(sheet.carryOn, criterion.id, fields) })}
          strikeOut={() => set({ carryOn: sheet.carryOn.filter(({ id }) => id !== criterion.id) })}
        />
      ))}
      <StruckOut
        draft={draft}
        list="carryOn"
        items={base.carryOn.map((one) => ({ id: one.id, says: asks(one) }))}
        putBack={putInKnown}
      />
      {absent.length > 0 && (
        <ChoiceField
          label="Put in one that is known"
          value={undefined}
          onChange={putInKnown}
          options={absent.map((one) => ({ value: one.id, says: asks(one) }))}
          openUpTo={0}
        />
      )}
      <InOwnWords taken={known.map(({ id }) => id)} putIn={putIn} />
    </FoldedPart>
  );
}

function InOwnWords({ taken, putIn }: { taken: readonly string[]; putIn: (criterion: CarryOn) => void }) {
  const [words, setWords] = useState('');
  const id = idFrom(words);
  const isTaken = taken.includes(id) || isAnsweredFromNotes(words.trim());
  return (
    <>
      <TextField
        label="Another, asked of the prescriber"
        optional
        value={words}
        onChange={setWords}
        trouble={isTaken ? 'There is one of this name: word it otherwise.' : undefined}
      />
      <Button
        disabled={id === '' || isTaken}
        onClick={() => {
          putIn({ id, asks: words.trim(), source: '', status: 'local decision' });
          setWords('');
        }}
      >
        Let it speak for carrying on
      </Button>
    </>
  );
}

function OneCriterion({
  criterion,
  asks,
  changed,
  set,
  strikeOut,
}: {
  criterion: CarryOn;
  asks: string;
  changed: boolean;
  set: (fields: Partial<CarryOn>) => void;
  strikeOut: () => void;
}) {
  const at = `carryOn.${criterion.id}`;
  return (
    <fieldset className={css['item']}>
      <legend className={css['itemTitle']}>{asks}</legend>
      {criterion.asks !== undefined && (
        <TextField label="In words" at={`${at}.asks`} value={criterion.asks} onChange={(text) => set({ asks: text })} />
      )}
      {changed ? (
        <TextField
          label="Where this comes from"
          at={`${at}.source`}
          value={criterion.source}
          onChange={(source) => set({ source, status: 'local decision' })}
        />
      ) : (
        <p className="quiet small">
          {criterion.source} ({criterion.status})
        </p>
      )}
      <p>
        <Button size="slim" onClick={strikeOut}>
          strike out<span className="unseen">: {asks}</span>
        </Button>
      </p>
    </fieldset>
  );
}
