import { type SwitchRule, regimenMedicines, switchMedicines, switchPairId, switchPairs } from '@twelvemonth/clinical';
import { useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { NumberField } from '../../fields/NumberField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { TicksField } from '../../fields/TicksField.tsx';
import { Button } from '../../paper/Button.tsx';
import { FoldedPart } from './FoldedPart.tsx';
import { partOf } from './parts.ts';
import { ReasonField } from './ReasonField.tsx';
import { type Draft, changedPaths } from './draft.ts';
import css from './Editor.module.css';

/** When one bone medicine may follow another, and by when it must. Where no row says so a prescriber is asked. */
export function SwitchFields({ draft }: { draft: Draft }) {
  const { sheet, base, set } = draft;
  const changed = changedPaths(draft);
  const kept = new Set(switchPairs(sheet).map(({ id }) => id));
  return (
    <FoldedPart part={partOf.switches}>
      <p className="quiet">
        Counted from the last dose; of what is taken daily, from its end. After denosumab the numbers above say when,
        whatever follows; a tablet is stopped, and then nothing is waited for. Where no row says so a prescriber is
        asked.
      </p>
      {sheet.switches.map((row, index) => (
        <OneSwitch
          // Rows have no name of their own, and each field of one is held by the draft.
          // oxlint-disable-next-line react/no-array-index-key
          key={index}
          row={row}
          at={index}
          changedPair={row.to.find((to) => changed.has(`switches.${switchPairId(row.from, to)}`))}
          set={(changedRow) => set({ switches: sheet.switches.with(index, changedRow) })}
          strikeOut={() => set({ switches: sheet.switches.filter((_, at) => at !== index) })}
        />
      ))}
      {switchPairs(base)
        .filter(({ id }) => !kept.has(id))
        .map(({ id, when }) => (
          <div key={id}>
            <p>
              Struck out:{' '}
              <s>
                {id}, {when}
              </s>
            </p>
            <ReasonField draft={draft} path={`switches.${id}`} changed />
          </div>
        ))}
      <AnotherSwitch taken={kept} putIn={(row) => set({ switches: [...sheet.switches, row] })} />
    </FoldedPart>
  );
}

function OneSwitch({
  row,
  at: index,
  changedPair,
  set,
  strikeOut,
}: {
  row: SwitchRule;
  at: number;
  /** One of its medicines for which it now says otherwise. */
  changedPair: SwitchRule['to'][number] | undefined;
  set: (row: SwitchRule) => void;
  strikeOut: () => void;
}) {
  const at = `switches.${index}`;
  const { latestMonths: _, ...without } = row;
  return (
    <fieldset className={css['item']}>
      <legend className={css['itemTitle']}>after {row.from}</legend>
      <TicksField
        label="May follow"
        at={`${at}.to`}
        value={row.to}
        onChange={(to) => set({ ...row, to })}
        options={regimenMedicines.map((value) => ({ value }))}
      />
      <div className={css['side']}>
        <NumberField
          label="Not before"
          unit="months"
          at={`${at}.earliestMonths`}
          value={row.earliestMonths}
          onChange={(months) => set({ ...row, earliestMonths: months ?? 0 })}
        />
        <NumberField
          label="At the latest"
          optional
          unit="months"
          at={`${at}.latestMonths`}
          value={row.latestMonths}
          onChange={(months) => set(months === undefined ? without : { ...row, latestMonths: months })}
        />
      </div>
      {changedPair === undefined ? (
        <p className="quiet small">
          {row.source} ({row.status})
        </p>
      ) : (
        <TextField
          label="Where this comes from"
          at={`switches.${switchPairId(row.from, changedPair)}.source`}
          value={row.source}
          onChange={(source) => set({ ...row, source, status: 'local decision' })}
        />
      )}
      <p>
        <Button size="slim" onClick={strikeOut}>
          strike out
          <span className="unseen">
            : {row.to.join(', ')} after {row.from}
          </span>
        </Button>
      </p>
    </fieldset>
  );
}

function AnotherSwitch({ taken, putIn }: { taken: ReadonlySet<string>; putIn: (row: SwitchRule) => void }) {
  const [from, setFrom] = useState<SwitchRule['from']>();
  const [to, setTo] = useState<SwitchRule['to'][number]>();
  const isTaken = from !== undefined && to !== undefined && taken.has(switchPairId(from, to));
  return (
    <>
      <ChoiceField
        label="Another row: after"
        value={from}
        onChange={setFrom}
        options={switchMedicines.map((value) => ({ value }))}
        openUpTo={0}
      />
      <ChoiceField
        label="May follow it"
        value={to}
        onChange={setTo}
        options={regimenMedicines.map((value) => ({ value }))}
        openUpTo={0}
        trouble={isTaken ? 'A row says so already: change that one.' : undefined}
      />
      <Button
        disabled={from === undefined || to === undefined || isTaken}
        onClick={() => {
          if (from === undefined || to === undefined) return;
          putIn({ from, to: [to], earliestMonths: 0, source: '', status: 'local decision' });
          setTo(undefined);
        }}
      >
        Put the row in
      </Button>
    </>
  );
}
