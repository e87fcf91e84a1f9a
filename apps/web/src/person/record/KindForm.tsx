import { useQuery } from '@tanstack/react-query';
import { type KindName, kindNamed } from '@twelvemonth/clinical';
import type { ActBody, EntryView, PersonView } from '@twelvemonth/exchange';
import { useMemo, useState } from 'react';
import { DateField } from '../../fields/DateField.tsx';
import { ActForm } from '../../fields/ActForm.tsx';
import { useServiceToday, useUnit } from '../../frame/unit.ts';
import { BodyFields } from '../../kind-form/BodyFields.tsx';
import { byHand } from '../../kind-form/by-hand.ts';
import { type FieldValue, type FormValues, bodyFrom, valuesFrom } from '../../kind-form/form-values.ts';
import { shapeOf } from '../../kind-form/shape.ts';
import { Button } from '../../paper/Button.tsx';
import { Note } from '../../paper/Note.tsx';
import { Outcome } from '../../paper/Outcome.tsx';
import { me, protocols } from '../../server/queries.ts';
import { useAct } from '../../server/use-act.ts';
import css from './RecordPanel.module.css';
import { GradeTexts } from './GradeTexts.tsx';
import { picksFor } from './picks.ts';
import { dateWord, isOfToday } from './record-menu.ts';

type Props = {
  readonly kind: KindName;
  readonly person: PersonView;
  readonly entry: EntryView | undefined;
  readonly about: string | undefined;
  readonly close: () => void;
};

/** Values a form opens with: those of the entry being corrected, or what the way here already said. Nothing else is preset. */
function openingValues(
  kind: KindName,
  person: PersonView,
  entry: EntryView | undefined,
  about: string | undefined,
  mine: string | undefined,
): FormValues {
  const whole = shapeOf(kindNamed(kind).body);
  if (whole === undefined) return {};
  const shape = byHand(kind, whole);
  if (entry !== undefined) return valuesFrom(shape, entry.body);
  if (kind === 'results-signed') return { results: person.unsigned.map((each) => each.entry) };
  if (kind === 'identity' || kind === 'contact') {
    const now = person.entries.findLast(
      (each) => each.kind === kind && each.withdrawnBy === undefined && each.amendedBy === undefined,
    );
    return now === undefined ? {} : valuesFrom(shape, now.body);
  }
  if (about === undefined) return {};
  const named = kind === 'advice-answered' ? namedIn(person, about) : undefined;
  return named === undefined || named === mine ? { about } : { about, inPlaceOf: named };
}

/** Whom a red flag of a call was passed to. */
function namedIn({ entries }: PersonView, call: string): string | undefined {
  const body = entries.find(({ id }) => id === call)?.body;
  const named = typeof body === 'object' && body !== null && 'passedTo' in body ? body.passedTo : undefined;
  return typeof named === 'string' ? named : undefined;
}

/** One entry of one kind, laid out from the kind itself. */
export function KindForm({ kind, person, entry, about, close }: Props) {
  const definition = kindNamed(kind);
  const shape = useMemo(() => {
    const whole = shapeOf(definition.body);
    return whole === undefined ? undefined : byHand(kind, whole);
  }, [kind, definition]);
  const today = useServiceToday();
  const { units } = useUnit();
  const { data: protocol, isLoading } = useQuery({
    ...protocols(person.unit),
    enabled: kind === 'prescription' || kind === 'symptom-cleared',
  });
  const mine = useQuery(me).data?.name;
  const [values, setValues] = useState(() => openingValues(kind, person, entry, about, mine));
  const [on, setOn] = useState<string | undefined>(entry?.on ?? (isOfToday(kind) ? today : undefined));
  const attempt = useAct(close, { [`patient/${person.patient}`]: person.seq });
  if (shape === undefined) return <p>This cannot be written by hand.</p>;
  // What is chosen from the protocol is not offered as an empty line to type into first.
  if (isLoading) return <p className="quiet">Fetching the protocol ...</p>;
  const change = (path: string, value: FieldValue): void => setValues((before) => ({ ...before, [path]: value }));
  const send = (): void => {
    const act = {
      name: 'record',
      patient: person.patient,
      line: { kind, body: bodyFrom(shape, values), effectiveAt: on ?? '' },
      ...(entry === undefined ? {} : { amends: entry.id }),
    } as ActBody['act'];
    void attempt.send(act);
  };
  return (
    <ActForm refusals={attempt.refusals} send={send}>
      <p className="quiet">{definition.help}</p>
      {entry !== undefined && <Note>Corrects “{entry.text}”. Both stay readable; the newer one counts.</Note>}
      {kind === 'died' && (
        <Note tone="caution">
          Everything that would be sent to this person is stopped, and a booked place is given up.
        </Note>
      )}
      <Outcome of={attempt} />
      <BodyFields
        kind={kind}
        shape={shape}
        values={values}
        onChange={change}
        picks={picksFor(kind, person, units, protocol)}
      />
      {kind === 'reaction' && <GradeTexts term={values['term']} />}
      <DateField label={dateWord(kind)} at="effectiveAt" value={on} onChange={setOn} near="past" />
      <div className={css['acts']}>
        <Button type="submit" tone="act" busy={attempt.busy}>
          {entry === undefined ? 'Record' : 'Record the correction'}
        </Button>
        <Button onClick={close}>Leave without recording</Button>
      </div>
    </ActForm>
  );
}
