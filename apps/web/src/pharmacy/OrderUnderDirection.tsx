import type { DirectionToUse } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { useMay } from '../frame/may.ts';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';
import { counted, sentence } from '../words/texts.ts';
import css from './Pharmacy.module.css';

type Whose = { readonly patient: string; readonly seq: number };

/** No order stands, and a direction in force names whoever is at the desk: one press opens what it asks. */
export function OrdersUnderDirection({ of, whose }: { of: readonly DirectionToUse[]; whose: Whose }) {
  const may = useMay();
  const [open, setOpen] = useState<string>();
  if (of.length === 0 || !may('order under direction')) return null;
  const chosen = of.find(({ direction }) => direction === open);
  return (
    <section className="screenOnly" aria-label="Order under a group direction">
      {chosen === undefined ? (
        <Note>
          <p>No order stands for this person. A group direction names you:</p>
          {of.map(({ direction, title }) => (
            <Button key={direction} size="big" onClick={() => setOpen(direction)}>
              Record the order under {title}
            </Button>
          ))}
        </Note>
      ) : (
        <OrderForm direction={chosen} whose={whose} close={() => setOpen(undefined)} />
      )}
    </section>
  );
}

const answers = [{ value: 'yes' }, { value: 'no' }, { value: 'not known' }] as const;
type Answer = (typeof answers)[number]['value'];

function OrderForm({
  direction: { direction, title, regimen, conditions, orderLastsDays },
  whose,
  close,
}: {
  direction: DirectionToUse;
  whose: Whose;
  close: () => void;
}) {
  const attempt = useAct(undefined, { [`patient/${whose.patient}`]: whose.seq });
  const [given, setGiven] = useState<Readonly<Record<string, Answer | undefined>>>({});
  const open = conditions.filter((condition) => given[condition] === undefined).length;
  return (
    <ActForm
      className={css['direction']}
      refusals={attempt.refusals}
      send={() =>
        void attempt.send({
          name: 'order under direction',
          patient: whose.patient,
          direction,
          answers: conditions.flatMap((condition) => {
            const answer = given[condition];
            return answer === undefined ? [] : [{ condition, answer }];
          }),
        })
      }
    >
      <h2>Order under {title}</h2>
      <p>
        {sentence(regimen)}. It stands for {counted(orderLastsDays, 'day')}, today included. Anything but “yes”,
        anything not known, near a limit or passed over by an exception is for a prescriber. The direction as signed,
        and local policy, decide.
      </p>
      {conditions.map((condition, index) => (
        <ChoiceField
          key={condition}
          label={condition}
          at={`answers.${index}`}
          size="big"
          value={given[condition]}
          onChange={(answer) => setGiven((before) => ({ ...before, [condition]: answer }))}
          options={answers}
        />
      ))}
      <Outcome of={attempt} />
      <Button type="submit" tone="act" size="big" busy={attempt.busy} disabled={open > 0}>
        {open > 0 ? `${counted(open, 'condition')} to answer` : 'Record the order'}
      </Button>{' '}
      <Button size="big" onClick={close}>
        Leave
      </Button>
    </ActForm>
  );
}
