import type { StockView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { useMay } from '../frame/may.ts';
import { Button } from '../paper/Button.tsx';
import { Empty } from '../paper/Empty.tsx';
import { BatchCard } from './BatchCard.tsx';
import { ReceivePacks } from './ReceivePacks.tsx';
import css from './Stock.module.css';
import { StopBatch } from './StopBatch.tsx';

/** Every batch something was said about: what is stopped first, then what expires first. */
export function Batches({ data }: { data: StockView }) {
  const may = useMay();
  const [open, setOpen] = useState<'receive' | 'stop'>();
  const close = (): void => setOpen(undefined);
  const toggle = (what: 'receive' | 'stop'): void => setOpen(open === what ? undefined : what);
  return (
    <section aria-labelledby="batches">
      <h2 id="batches">Batches</h2>
      {may('receive packs') && (
        <div className={css['acts']} style={{ marginBottom: '0.8rem' }}>
          <Button tone="act" size="big" aria-expanded={open === 'receive'} onClick={() => toggle('receive')}>
            Packs have come
          </Button>
          <Button size="big" aria-expanded={open === 'stop'} onClick={() => toggle('stop')}>
            Stop a batch
          </Button>
        </div>
      )}
      {open === 'receive' && <ReceivePacks data={data} close={close} />}
      {open === 'stop' && <StopBatch data={data} close={close} />}
      {data.batches.length === 0 ? (
        <Empty says="No packs have been received yet." />
      ) : (
        <ul className={css['batches']}>
          {data.batches.map((row) => (
            <BatchCard key={row.batch} unit={data.unit} row={row} />
          ))}
        </ul>
      )}
    </section>
  );
}
