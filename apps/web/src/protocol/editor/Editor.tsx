import {
  type ProtocolSheet,
  beginningFrom,
  emptyNumbers,
  parseScaled,
  numberKeyNames,
  starterProtocols,
  unsourcedChanges,
} from '@twelvemonth/clinical';
import type { ProtocolView } from '@twelvemonth/exchange';
import { useDeferredValue, useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { DateField } from '../../fields/DateField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { ActForm } from '../../fields/ActForm.tsx';
import { Button } from '../../paper/Button.tsx';
import { Trouble } from '../../paper/Trouble.tsx';
import { ServerProblem } from '../../server/server-problem.ts';
import { usePosting } from '../../server/use-posting.ts';
import { counted } from '../../words/texts.ts';
import { Changes } from '../Changes.tsx';
import { Flips } from '../Flips.tsx';
import { FoldingOf, PartsList } from './FoldedPart.tsx';
import { CarryOnFields } from './CarryOnFields.tsx';
import { NumberFields } from './NumberFields.tsx';
import { OrderFields } from './OrderFields.tsx';
import { ParacetamolFields } from './ParacetamolFields.tsx';
import { PolicyFields } from './PolicyFields.tsx';
import { QuestionFields } from './QuestionFields.tsx';
import { RegimenFields } from './RegimenFields.tsx';
import { SwitchFields } from './SwitchFields.tsx';
import { type Draft } from './draft.ts';
import { type Part, parts, talliesOf } from './parts.ts';
import css from './Editor.module.css';

/** A version is drafted here: from a starter or another version, compared while it is typed, written whole, never changed after. */
export function Editor({ data, done }: { data: ProtocolView; done: (version: string) => void }) {
  const [from, setFrom] = useState<string>();
  const [sheet, setSheet] = useState<ProtocolSheet>();
  const draft = usePosting('protocolDraft');
  const named = (version: string | undefined): ProtocolSheet | undefined =>
    data.versions.find((one) => one.version === version)?.sheet ??
    starterProtocols.find((one) => one.version === version);
  const found = named(from);
  const base = found === undefined ? undefined : beginningFrom(found);
  const sources = [
    ...data.versions.map((each) => ({ value: each.version, says: `${each.version}: ${each.title}` })),
    ...data.starters.map((each) => ({ value: each.version, says: `starter: ${each.title}` })),
  ];
  const write = async (): Promise<void> => {
    if (from === undefined || sheet === undefined) return;
    const answer = await draft.send({ from, sheet: withoutEmptyLines(sheet) }, { unit: data.unit });
    if (answer !== undefined) done(sheet.version);
  };
  return (
    <ActForm
      refusals={draft.error instanceof ServerProblem ? (draft.error.problem.refusals ?? []) : []}
      send={() => void write()}
    >
      <h2>Begin a version</h2>
      <ChoiceField
        label="From"
        at="from"
        value={from}
        onChange={(value) => {
          setFrom(value);
          const begun = named(value);
          setSheet(begun === undefined ? undefined : { ...beginningFrom(begun), version: '', title: '' });
        }}
        options={sources}
      />
      {base !== undefined && sheet !== undefined && (
        <Drafted
          data={data}
          draft={{ base, sheet, set: (fields) => setSheet((before) => before && { ...before, ...fields }) }}
        >
          {draft.error !== undefined && <Trouble error={draft.error} />}
          <p style={{ marginTop: '1rem' }}>
            <Button type="submit" tone="act" busy={draft.busy}>
              Write this version
            </Button>
          </p>
          <p className="quiet">A version that is written is never changed: a change is another version.</p>
        </Drafted>
      )}
    </ActForm>
  );
}

const withoutEmptyLines = (sheet: ProtocolSheet): ProtocolSheet => ({
  ...sheet,
  cautions: sheet.cautions.filter((line) => line.trim() !== ''),
  regimens: sheet.regimens.map((regimen) => ({
    ...regimen,
    cautions: regimen.cautions.filter((line) => line.trim() !== ''),
  })),
});

const isReadable = (sheet: ProtocolSheet): boolean =>
  emptyNumbers(sheet).length === 0 &&
  numberKeyNames.every((key) => parseScaled(sheet.numbers[key].value ?? '') !== undefined) &&
  sheet.regimens.every(({ numbers }) =>
    Object.values(numbers).every((own) => own === undefined || parseScaled(own.value) !== undefined),
  ) &&
  sheet.switches.every(
    ({ to, earliestMonths, latestMonths }) => to.length > 0 && (latestMonths ?? earliestMonths) >= earliestMonths,
  );

function Drafted({ data, draft, children }: { data: ProtocolView; draft: Draft; children: React.ReactNode }) {
  const { sheet, base, set } = draft;
  const inForce = data.versions.find(({ state }) => state === 'in force');
  const empty = emptyNumbers(sheet).length;
  const unsourced = unsourcedChanges(base, sheet).length;
  // What the fields show goes before what is compared with it.
  const compared = useDeferredValue(sheet);
  const tallies = talliesOf(draft);
  const [open, setOpen] = useState<ReadonlySet<Part>>(
    () => new Set(parts.filter((part, index) => index === 0 || (tallies.get(part)?.undecided ?? 0) > 0)),
  );
  const fold = (part: Part, isOpen: boolean): void =>
    setOpen((before) => {
      const after = new Set(before);
      if (isOpen) after.add(part);
      else after.delete(part);
      return after;
    });
  return (
    <div className={css['apart']}>
      <div>
        <TextField
          label="Name of the new version"
          help="For example thornbeck-4."
          at="version"
          value={sheet.version}
          onChange={(version) => set({ version })}
        />
        <TextField label="Title" at="title" value={sheet.title} onChange={(title) => set({ title })} />
        <DateField
          label="To be reviewed by"
          at="reviewBy"
          value={sheet.reviewBy}
          onChange={(reviewBy) => set({ reviewBy: (reviewBy ?? '') as ProtocolSheet['reviewBy'] })}
        />
        <FoldingOf value={{ tallies, open, fold }}>
          <PartsList parts={parts} openAll={(all) => setOpen(new Set(all ? parts : []))} />
          <NumberFields draft={draft} />
          <PolicyFields draft={draft} />
          <RegimenFields draft={draft} />
          <SwitchFields draft={draft} />
          <CarryOnFields draft={draft} />
          <ParacetamolFields draft={draft} />
          <QuestionFields draft={draft} />
          <OrderFields draft={draft} />
        </FoldingOf>
      </div>
      <div className={css['compared']}>
        <Changes
          before={inForce?.sheet ?? base}
          after={compared}
          against={
            inForce === undefined
              ? 'the sheet it begins from; none is in force'
              : `the version in force, ${inForce.version}`
          }
          level="h2"
        />
        <Flips
          unit={data.unit}
          asked={isReadable(compared) ? { sheet: forComparing(compared) } : undefined}
          level="h2"
        />
        <p>
          {empty > 0 && <strong className={css['todo']}>{counted(empty, 'number')} to be decided. </strong>}
          {unsourced > 0 && (
            <strong className={css['todo']}>
              {unsourced === 1
                ? 'One change does not say where it comes from.'
                : `${unsourced} changes do not say where they come from.`}
            </strong>
          )}
        </p>
        {children}
      </div>
    </div>
  );
}

/** Names, sources and reasons flip nobody: while they are typed nothing is asked again. */
const forComparing = (sheet: ProtocolSheet): ProtocolSheet => ({
  ...withoutEmptyLines(sheet),
  version: 'draft',
  title: 'draft',
  numbers: Object.fromEntries(
    numberKeyNames.map((key) => [key, { ...sheet.numbers[key], source: 'draft' }]),
  ) as ProtocolSheet['numbers'],
  regimens: sheet.regimens.map((regimen) => ({ ...regimen, source: 'draft', cautions: [] })),
  switches: sheet.switches.map((row) => ({ ...row, source: 'draft' })),
  carryOn: [],
  paracetamol: [],
  cautions: ['draft'],
  reasons: {},
});
