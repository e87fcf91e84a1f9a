import type { GroupDirectionRow, PharmacyView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { TextField } from '../fields/TextField.tsx';
import { useMay } from '../frame/may.ts';
import { Button } from '../paper/Button.tsx';
import { Empty } from '../paper/Empty.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';
import { dayInWords } from '../words/dates.ts';
import { counted, sentence } from '../words/texts.ts';
import { DirectionForm } from './DirectionForm.tsx';
import css from './Pharmacy.module.css';

/** Under which directions nurses record orders here, who signed them, and whom they name. */
export function GroupDirections({ data }: { data: PharmacyView }) {
  const may = useMay();
  const [writing, setWriting] = useState(false);
  return (
    <section aria-labelledby="group-directions">
      <h2 id="group-directions">Group directions</h2>
      {data.directions.length === 0 && (
        <Empty says="None: every order is a prescriber's own. A prescriber writes one, a pharmacist signs it." />
      )}
      <ul className={css['cards']}>
        {data.directions.map((row) => (
          <DirectionCard key={row.direction} row={row} unit={data.unit} />
        ))}
      </ul>
      {may('write direction') &&
        (writing ? (
          <DirectionForm data={data} close={() => setWriting(false)} />
        ) : (
          <Button size="big" onClick={() => setWriting(true)}>
            Write a group direction
          </Button>
        ))}
    </section>
  );
}

function DirectionCard({ row, unit }: { row: GroupDirectionRow; unit: string }) {
  const may = useMay();
  const [ending, setEnding] = useState(false);
  const sign = useAct();
  return (
    <li className={css['direction']}>
      <h3>{row.title}</h3>
      <p>
        <strong>{row.notInForce === undefined ? 'In force' : `Not in force: ${row.notInForce}`}</strong>.{' '}
        {sentence(row.regimen)}, {dayInWords(row.validFrom)} to {dayInWords(row.validUntil)}; an order lasts{' '}
        {counted(row.orderLastsDays, 'day')}.
      </p>
      <p>
        Written by {row.written.by}, {dayInWords(row.written.on)}
        {row.signed === undefined ? '' : `; signed by ${row.signed.by}, ${dayInWords(row.signed.on)}`}. Names{' '}
        {row.mayGive.join(', ')}.
      </p>
      <p>Asked of each person:</p>
      <ul>
        {row.conditions.map((condition) => (
          <li key={condition}>{sentence(condition)}</li>
        ))}
      </ul>
      <Outcome of={sign} />
      <p className="screenOnly">
        {row.signed === undefined && !row.ended && !row.own && may('sign direction') && (
          <Button
            size="big"
            tone="act"
            busy={sign.busy}
            onClick={() => void sign.send({ name: 'sign direction', unit, body: { direction: row.direction } })}
          >
            I have read it: sign as pharmacist
          </Button>
        )}{' '}
        {!row.ended && !ending && may('end direction') && (
          <Button size="big" onClick={() => setEnding(true)}>
            End it
          </Button>
        )}
      </p>
      {ending && !row.ended && <EndForm row={row} unit={unit} close={() => setEnding(false)} />}
    </li>
  );
}

function EndForm({ row, unit, close }: { row: GroupDirectionRow; unit: string; close: () => void }) {
  const attempt = useAct(close);
  const [reason, setReason] = useState('');
  return (
    <ActForm
      refusals={attempt.refusals}
      send={() =>
        void attempt.send({ name: 'end direction', unit, body: { direction: row.direction, reason: reason.trim() } })
      }
    >
      <TextField label="Why it ends now" at="reason" first value={reason} onChange={setReason} />
      <p>Nothing starts under it from then on, also under orders recorded before.</p>
      <Outcome of={attempt} />
      <Button type="submit" tone="act" size="big" busy={attempt.busy}>
        End this direction
      </Button>{' '}
      <Button size="big" onClick={close}>
        Leave
      </Button>
    </ActForm>
  );
}
