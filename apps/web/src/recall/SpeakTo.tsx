import { entryKinds } from '@twelvemonth/clinical';
import type { ActBody, ComingBackView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { DateField } from '../fields/DateField.tsx';
import { present } from '../fields/present.ts';
import { TextField } from '../fields/TextField.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';
import css from './ComingBack.module.css';

const { relation, mayBeTold } = entryKinds['contact-person'].body.unwrap().shape;

/** Care homes, carers, relatives, proxies: each a contact of its own, with what may be said to them. */
export function SpeakTo({ data }: { data: ComingBackView }) {
  const [open, setOpen] = useState(false);
  return (
    <section aria-labelledby="speak-to">
      <h2 id="speak-to">Whom we speak to</h2>
      {data.speakTo.length === 0 ? (
        <p>The person. Nobody else is named in the notes.</p>
      ) : (
        <ul className={css['list']}>
          {data.speakTo.map(({ entry, says }) => (
            <li key={entry}>{says}</li>
          ))}
        </ul>
      )}
      <p className="screenOnly">
        <Button size="slim" aria-expanded={open} onClick={() => setOpen(!open)}>
          Somebody else to speak to
        </Button>
      </p>
      {open && <SpeakToForm data={data} done={() => setOpen(false)} />}
    </section>
  );
}

type Entered = {
  readonly who: string;
  readonly telephone: string;
  readonly relation?: (typeof relation.options)[number] | undefined;
  readonly mayBeTold?: (typeof mayBeTold.options)[number] | undefined;
  readonly first?: 'yes' | 'no' | undefined;
  readonly document: string;
  readonly seenOn?: string | undefined;
};
const said = (text: string): string | undefined => (text.trim() === '' ? undefined : text.trim());
const options = <Value extends string>(values: readonly Value[]) => values.map((value) => ({ value }));

function SpeakToForm({ data, done }: { data: ComingBackView; done: () => void }) {
  const [entered, setEntered] = useState<Entered>({ who: '', telephone: '', document: '' });
  const set = (change: Partial<Entered>): void => setEntered((before) => ({ ...before, ...change }));
  const attempt = useAct(done);
  const send = (): void => {
    const body = {
      who: entered.who,
      relation: entered.relation,
      telephone: said(entered.telephone),
      mayBeTold: entered.mayBeTold,
      speakToFirst: entered.first === undefined ? undefined : entered.first === 'yes',
      document: said(entered.document),
      documentSeenOn: entered.seenOn,
    };
    const line = { kind: 'contact-person', body: present(body), effectiveAt: data.today };
    void attempt.send({ name: 'record', patient: data.patient, line } as ActBody['act']);
  };
  return (
    <ActForm refusals={attempt.refusals} send={send} className={css['form']}>
      <TextField
        label="Who"
        help="Name, and of which home or office."
        at="who"
        value={entered.who}
        onChange={(who) => set({ who })}
      />
      <ChoiceField
        label="What are they to the person?"
        at="relation"
        value={entered.relation}
        onChange={(value) => set({ relation: value })}
        options={options(relation.options)}
      />
      <TextField
        label="Their telephone"
        at="telephone"
        optional
        value={entered.telephone}
        onChange={(telephone) => set({ telephone })}
      />
      <ChoiceField
        label="Did the person agree that we speak with them?"
        at="mayBeTold"
        value={entered.mayBeTold}
        onChange={(value) => set({ mayBeTold: value })}
        options={options(mayBeTold.options)}
      />
      <ChoiceField
        label="Do we ring them first?"
        at="speakToFirst"
        value={entered.first}
        onChange={(first) => set({ first })}
        options={options(['yes', 'no'] as const)}
      />
      {entered.relation === 'legal proxy' && (
        <>
          <TextField
            label="Which document"
            at="document"
            optional
            value={entered.document}
            onChange={(document) => set({ document })}
          />
          <DateField
            label="Seen on"
            help="Until it was seen nothing is told to them."
            at="documentSeenOn"
            optional
            value={entered.seenOn}
            onChange={(seenOn) => set({ seenOn })}
          />
        </>
      )}
      <Outcome of={attempt} />
      <Button type="submit" tone="act" busy={attempt.busy}>
        Write it down
      </Button>
    </ActForm>
  );
}
