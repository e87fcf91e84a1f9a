import type { PackOrderRow, StockView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { TextField } from '../fields/TextField.tsx';
import { useMay } from '../frame/may.ts';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';
import { shortDay } from '../words/dates.ts';
import { counted, dotted } from '../words/texts.ts';
import { OrderPacks } from './OrderPacks.tsx';
import { ReceivePacks } from './ReceivePacks.tsx';
import css from './Stock.module.css';

type Open = { readonly what: 'order' | 'receive' | 'close'; readonly order: string };

/** What was ordered, what of it has come, and what is late. */
export function Orders({ data }: { data: StockView }) {
  const may = useMay();
  const [open, setOpen] = useState<Open>();
  const close = (): void => setOpen(undefined);
  const toggle = (what: Open['what'], order: string): void =>
    setOpen(open?.what === what && open.order === order ? undefined : { what, order });
  return (
    <section aria-labelledby="orders">
      <h2 id="orders">Orders</h2>
      <p className="quiet">
        {data.settings === undefined
          ? 'Lead time and reserve of this unit are not set: Settings, the unit, Stock.'
          : `An order takes ${counted(data.settings.leadDays, 'day')}; ${counted(data.settings.reservePacks, 'pack')} are always to lie here.`}{' '}
        An order is placed with the supplier as you always do; here it is written down.
      </p>
      {may('order packs') && (
        <Button size="big" aria-expanded={open?.what === 'order'} onClick={() => toggle('order', '')}>
          Packs are ordered
        </Button>
      )}
      {open?.what === 'order' && <OrderPacks data={data} close={close} />}
      {data.orders.length > 0 && (
        <ul className={css['batches']}>
          {data.orders.map((row) => (
            <li key={row.order} className={css['card']}>
              <h3>
                {counted(row.packs, 'pack')} of {row.product}
                <span className={css['state']}>{stateOf(row, data.today)}</span>
              </h3>
              <p>
                {dotted(
                  `ordered ${shortDay(row.on)} by ${row.by}`,
                  `expected ${shortDay(row.expectedOn)}`,
                  row.from,
                  row.reference !== undefined && `order ${row.reference}`,
                  row.closed,
                )}
              </p>
              {row.open > 0 && may('receive packs') && (
                <div className={css['acts']}>
                  <Button onClick={() => toggle('receive', row.order)}>
                    Packs of it have come<span className="unseen">: {row.product}</span>
                  </Button>
                  <Button onClick={() => toggle('close', row.order)}>
                    Nothing more comes<span className="unseen"> of {row.product}</span>
                  </Button>
                </div>
              )}
              {open?.order === row.order && open.what === 'receive' && (
                <ReceivePacks data={data} order={row} close={close} />
              )}
              {open?.order === row.order && open.what === 'close' && (
                <CloseOrder unit={data.unit} order={row.order} close={close} />
              )}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function stateOf({ received, packs, open, closed, expectedOn }: PackOrderRow, today: string): string {
  if (closed !== undefined) return received === 0 ? 'closed, none came' : `closed, ${received} of ${packs} came`;
  if (open === 0) return 'all have come';
  const late = expectedOn < today ? 'late: ' : '';
  return received === 0 ? `${late}none have come yet` : `${late}${received} of ${packs} have come`;
}

function CloseOrder({ unit, order, close }: { unit: string; order: string; close: () => void }) {
  const attempt = useAct(close);
  const [reason, setReason] = useState('');
  return (
    <ActForm
      refusals={attempt.refusals}
      send={() => void attempt.send({ name: 'close order', unit, body: { order, reason } })}
    >
      <TextField label="Why nothing more comes" at="reason" first value={reason} onChange={setReason} />
      <Outcome of={attempt} />
      <Button type="submit" tone="act" busy={attempt.busy}>
        Close the order
      </Button>
    </ActForm>
  );
}
