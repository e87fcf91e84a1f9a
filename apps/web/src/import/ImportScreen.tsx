import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { type RegisterMapping, registerMapping } from '@twelvemonth/exchange';
import { useState } from 'react';
import { NoUnitYet } from '../frame/NoUnitYet.tsx';
import { useUnit } from '../frame/unit.ts';
import { buttonLook } from '../paper/button-look.ts';
import { Note } from '../paper/Note.tsx';
import { Page } from '../paper/Page.tsx';
import { Trouble } from '../paper/Trouble.tsx';
import { waitingRows } from '../server/queries.ts';
import { usePosting } from '../server/use-posting.ts';
import { counted } from '../words/texts.ts';
import { Draft } from './Draft.tsx';
import css from './Import.module.css';
import { fileText } from './file-text.ts';

type Chosen = { readonly file: string; readonly text: string };

/** Brings in a register kept elsewhere: choose the file, say what its columns mean, look at the trouble, take it in. */
export function ImportScreen() {
  const { unit } = useUnit();
  const [chosen, setChosen] = useState<Chosen>();
  const [misread, setMisread] = useState<string>();
  const dryRun = usePosting('dryRun');
  const accept = usePosting('accept');
  const waiting = useQuery(waitingRows()).data?.rows.length ?? 0;
  if (unit === undefined)
    return (
      <Page title="Import">
        <NoUnitYet />
      </Page>
    );
  const tryOut = (next: Chosen, mapping?: RegisterMapping): void =>
    void dryRun.send(
      { ...next, unit: unit.unit, ...(mapping === undefined ? {} : { mapping }) },
      {},
      { refresh: false },
    );
  const choose = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return;
    const next = { file: file.name, text: await fileText(file) };
    setChosen(next);
    setMisread(undefined);
    tryOut(next);
  };
  const load = async (file: File | undefined): Promise<void> => {
    if (file === undefined || chosen === undefined) return;
    const read = registerMapping.safeParse(safelyParsed(await file.text()));
    setMisread(read.success ? undefined : `${file.name} is not a mapping saved here.`);
    if (read.success) tryOut(chosen, read.data);
  };
  return (
    <Page
      title="Import"
      sub="A register you keep elsewhere, as a text file with columns (CSV). Nothing is written before you accept."
      acts={
        waiting > 0 && (
          <Link to="/import/waiting" className={buttonLook('quiet')}>
            {counted(waiting, 'row waits', 'rows wait')}
          </Link>
        )
      }
    >
      <div className={css['acts']}>
        <FileButton
          label={chosen === undefined ? 'Choose the file' : 'Choose another file'}
          main={chosen === undefined}
          take={choose}
        />
        {chosen !== undefined && <FileButton label="Load a saved mapping" take={load} accept=".json" />}
        {chosen !== undefined && <span className="quiet">{chosen.file}</span>}
      </div>
      {misread !== undefined && (
        <Note tone="stop" speaks="at once">
          {misread}
        </Note>
      )}
      {dryRun.busy && <output>reading the file …</output>}
      {dryRun.error !== undefined && <Trouble error={dryRun.error} />}
      {accept.error !== undefined && <Trouble error={accept.error} />}
      {accept.answer !== undefined && (
        <Note tone="done" speaks="politely">
          Taken in: {counted(accept.answer.taken, 'row')}, {counted(accept.answer.people, 'new person', 'new people')},{' '}
          {counted(accept.answer.facts, 'fact')}; {accept.answer.alreadyHere} were here already.{' '}
          {accept.answer.waiting > 0 && (
            <Link to="/import/waiting">{counted(accept.answer.waiting, 'row waits', 'rows wait')} for a decision.</Link>
          )}{' '}
          Results brought in count once someone has signed them.
        </Note>
      )}
      {chosen !== undefined && dryRun.answer !== undefined && (
        <Draft
          key={`${dryRun.answer.fingerprint} ${JSON.stringify(dryRun.answer.mapping)}`}
          answer={dryRun.answer}
          checking={dryRun.busy}
          taking={accept.busy}
          check={(mapping) => tryOut(chosen, mapping)}
          take={(mapping) =>
            void accept
              .send({ ...chosen, unit: unit.unit, mapping, fingerprint: dryRun.answer?.fingerprint ?? '' })
              .then((answer) => answer !== undefined && setChosen(undefined))
          }
        />
      )}
    </Page>
  );
}

function safelyParsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function FileButton({
  label,
  take,
  main = false,
  accept = '.csv,.tsv,.txt,text/csv,text/plain',
}: {
  label: string;
  take: (file: File | undefined) => Promise<void>;
  main?: boolean;
  accept?: string;
}) {
  return (
    <label className={buttonLook(main ? 'act' : 'quiet')} style={{ position: 'relative' }}>
      {label}
      <input
        type="file"
        accept={accept}
        style={{ position: 'absolute', inset: 0, opacity: 0, cursor: 'pointer', width: '100%' }}
        onChange={(event) => {
          void take(event.target.files?.[0]);
          event.target.value = '';
        }}
      />
    </label>
  );
}
