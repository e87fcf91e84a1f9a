import { useQuery } from '@tanstack/react-query';
import { Link, useNavigate, useParams } from '@tanstack/react-router';
import type { ActBody, PatientPackView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { TicksField } from '../fields/TicksField.tsx';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { Page } from '../paper/Page.tsx';
import { addressOf } from '../server/paths.ts';
import { patientPack } from '../server/queries.ts';
import { useAct } from '../server/use-act.ts';
import { useUnitWords } from '../words/american.ts';
import { dotted, unbroken } from '../words/texts.ts';
import css from './PatientPack.module.css';
import { type PackWish, languages, liverAnswers, noWish, parts, queryOf, sizes } from './pack-wish.ts';

/** The sheets a person takes home, as they will look on paper; what cannot be printed, and why. */
export function PatientPackScreen() {
  const { patient } = useParams({ from: '/people/$patient/pack' });
  const [wish, setWish] = useState<PackWish>(noWish);
  const inUnitWords = useUnitWords();
  const asked = useQuery(patientPack(patient, queryOf(wish)));
  const set = (change: Partial<PackWish>): void => setWish((before) => ({ ...before, ...change }));
  return (
    <Awaited query={asked} what="the pack">
      {(data) => (
        <Page
          title="Patient pack"
          sub={dotted(data.name, `born ${data.born}`, unbroken(data.number))}
          acts={
            <>
              <Link to="/people/$patient/own-page" params={{ patient }}>
                own page and questions
              </Link>
              <Link to="/people/$patient" params={{ patient }}>
                back to the person
              </Link>
            </>
          }
        >
          <div className={css['columns']}>
            <section aria-label="What to print" className={css['wish']}>
              <ChoiceField
                label="How large"
                value={wish.size}
                onChange={(size) => set({ size: size ?? 'normal' })}
                options={sizes}
              />
              {wish.size !== 'easy' && (
                <TicksField
                  label="Which sheets"
                  value={wish.parts}
                  onChange={(value) => set({ parts: value })}
                  options={parts}
                />
              )}
              <ChoiceField
                label="Language"
                value={wish.language ?? data.language}
                onChange={(language) => set({ language })}
                options={languages}
              />
              <ChoiceField
                label="Liver trouble, a lot of alcohol, or eating too little?"
                help={inUnitWords('Ask them. Without an answer no amount of paracetamol is printed.')}
                value={wish.liver}
                onChange={(liver) => set({ liver })}
                options={liverAnswers}
              />
              <WhatIsMissing data={data} />
              <Given data={data} wish={wish} fetching={asked.isPlaceholderData} />
            </section>
            {data.parts.length > 0 && (
              <iframe
                className={css['paper']}
                title={`Pack for ${data.name}`}
                src={addressOf('patientPackDocument', { ...queryOf(wish), patient })}
                sandbox=""
              />
            )}
          </div>
        </Page>
      )}
    </Awaited>
  );
}

function WhatIsMissing({ data }: { data: PatientPackView }) {
  const inUnitWords = useUnitWords();
  if (data.leftOut.length === 0 && data.noAmount === undefined) return null;
  return (
    <Note tone="caution">
      {data.leftOut.map(({ part, because }) => (
        <p key={part}>
          <strong>Not printed, {part}:</strong> {because}.
        </p>
      ))}
      {data.noAmount !== undefined && (
        <p>
          <strong>{inUnitWords('No amount of paracetamol is printed:')}</strong> {data.noAmount}.
        </p>
      )}
    </Note>
  );
}

/** Printed from a page of its own; that it was given is written down with the very text: never with that of the wish before. */
function Given({ data, wish, fetching }: { data: PatientPackView; wish: PackWish; fetching: boolean }) {
  const { patient } = data;
  const navigate = useNavigate();
  const attempt = useAct(() => void navigate({ to: '/people/$patient', params: { patient } }), {
    [`patient/${patient}`]: data.seq,
  });
  if (data.parts.length === 0) return null;
  const record = (): void => {
    const body = {
      parts: data.parts,
      size: wish.size === 'easy' ? 'large' : wish.size,
      language: data.language,
      wording: data.wording,
      text: data.text,
    };
    const line = { kind: 'patient-pack', body, effectiveAt: data.today };
    void attempt.send({ name: 'record', patient, line } as ActBody['act']);
  };
  return (
    <>
      <p>
        <a
          href={addressOf('patientPackDocument', { ...queryOf(wish), patient })}
          target="_blank"
          rel="noreferrer"
          className="finger"
        >
          open it alone to print
        </a>
      </p>
      <Outcome of={attempt} />
      <Button
        tone="act"
        busy={attempt.busy || fetching}
        {...(fetching ? { busyWords: 'fetching it …' } : {})}
        onClick={record}
      >
        I gave it to them
      </Button>
    </>
  );
}
