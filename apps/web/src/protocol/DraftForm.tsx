import type { ProtocolView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { DateField } from '../fields/DateField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { FieldTroubles } from '../fields/field-trouble.ts';
import { Button } from '../paper/Button.tsx';
import { Trouble } from '../paper/Trouble.tsx';
import { ServerProblem } from '../server/server-problem.ts';
import { usePosting } from '../server/use-posting.ts';
import { sentence } from '../words/texts.ts';
import css from './Protocol.module.css';
import { numbersOf } from './numbers-of.ts';

/** A version begun from a starter or another version. A number that is filled in here is a local decision, with its author's name. */
export function DraftForm({ data, done }: { data: ProtocolView; done: (version: string) => void }) {
  const [from, setFrom] = useState<string>();
  const [version, setVersion] = useState('');
  const [title, setTitle] = useState('');
  const [reviewBy, setReviewBy] = useState<string>();
  const [numbers, setNumbers] = useState<Readonly<Record<string, string>>>({});
  const draft = usePosting('protocolDraft');
  const sources = [
    ...data.versions.map((each) => ({ value: each.version, says: `${each.version}: ${each.title}` })),
    ...data.starters.map((each) => ({ value: each.version, says: `starter: ${each.title}` })),
  ];
  const known = from === undefined ? [] : numbersOf(from, data);
  const send = async (): Promise<void> => {
    if (from === undefined) return;
    const filled = Object.fromEntries(
      Object.entries(numbers)
        .filter(([, value]) => value.trim() !== '')
        .map(([key, value]) => [key, value.trim().replace(',', '.')]),
    );
    const answer = await draft.send(
      { from, version, title, reviewBy: reviewBy ?? '', numbers: filled },
      { unit: data.unit },
    );
    if (answer !== undefined) done(version);
  };
  return (
    <FieldTroubles value={draft.error instanceof ServerProblem ? (draft.error.problem.refusals ?? []) : []}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void send();
        }}
      >
        <h2>Begin a version</h2>
        <ChoiceField
          label="From"
          at="from"
          value={from}
          onChange={(value) => {
            setFrom(value);
            setNumbers({});
          }}
          options={sources}
        />
        <TextField
          label="Name of the new version"
          help="For example thornbeck-4."
          at="version"
          value={version}
          onChange={setVersion}
        />
        <TextField label="Title" at="title" value={title} onChange={setTitle} />
        <DateField label="To be reviewed by" at="reviewBy" value={reviewBy} onChange={setReviewBy} />
        {known.length > 0 && <h3>Numbers: change what your unit decides otherwise</h3>}
        {known.map((number) => (
          <div key={number.key} className={css['row']}>
            <label htmlFor={`n-${number.key}`}>
              {sentence(number.means)}
              <span className="quiet small">
                {' '}
                {number.value === undefined ? (
                  <strong className={css['empty']}>
                    empty{number.suggestion === undefined ? '' : `, suggested ${number.suggestion}`}
                  </strong>
                ) : (
                  `now ${number.value}`
                )}
              </span>
            </label>
            <span>
              <input
                id={`n-${number.key}`}
                inputMode="decimal"
                autoComplete="off"
                placeholder={number.value ?? ''}
                value={numbers[number.key] ?? ''}
                onChange={(event) => setNumbers((before) => ({ ...before, [number.key]: event.target.value }))}
              />{' '}
              {number.unit}
            </span>
          </div>
        ))}
        {draft.error !== undefined && <Trouble error={draft.error} />}
        <p style={{ marginTop: '1rem' }}>
          <Button type="submit" tone="act" busy={draft.busy} disabled={from === undefined}>
            Write this version
          </Button>
        </p>
      </form>
    </FieldTroubles>
  );
}
