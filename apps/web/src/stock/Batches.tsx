import { Link } from '@tanstack/react-router';
import type { BatchRow, StockView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { useMay } from '../frame/may.ts';
import { Button } from '../paper/Button.tsx';
import { Empty } from '../paper/Empty.tsx';
import { shortDay } from '../words/dates.ts';
import { counted, dotted } from '../words/texts.ts';
import { CountPacks } from './CountPacks.tsx';
import { ReceivePacks } from './ReceivePacks.tsx';
import { ReleaseBatch } from './ReleaseBatch.tsx';
import css from './Stock.module.css';
import { StopBatch } from './StopBatch.tsx';
import { TakeOutPacks } from './TakeOutPacks.tsx';

type Open = { readonly what: 'receive' | 'count' | 'take out' | 'stop' | 'release'; readonly batch: string };

/** Every batch something was said about: how many packs lie here, how long they may be used, and whether at all. */
export function Batches({ data }: { data: StockView }) {
  const may = useMay();
  const [open, setOpen] = useState<Open>();
  const close = (): void => setOpen(undefined);
  const toggle = (what: Open['what'], batch: string): void =>
    setOpen(open?.what === what && open.batch === batch ? undefined : { what, batch });
  return (
    <section aria-labelledby="batches">
      <h2 id="batches">Batches</h2>
      {may('receive packs') && (
        <div className={css['acts']} style={{ marginBottom: '0.8rem' }}>
          <Button tone="act" size="big" aria-expanded={open?.what === 'receive'} onClick={() => toggle('receive', '')}>
            Packs have come
          </Button>
          <Button size="big" aria-expanded={open?.what === 'stop'} onClick={() => toggle('stop', '')}>
            Stop a batch
          </Button>
        </div>
      )}
      {open?.what === 'receive' && <ReceivePacks data={data} close={close} />}
      {open?.what === 'stop' && <StopBatch close={close} />}
      {data.batches.length === 0 ? (
        <Empty says="No packs have been received yet." />
      ) : (
        <ul className={css['batches']}>
          {data.batches.map((row) => (
            <li key={row.batch} className={css['card']}>
              <h3>
                Batch {row.batch}
                <span className={css['state']}>{stateOf(row)}</span>
              </h3>
              <p>
                {dotted(row.product, row.expiresOn !== undefined && `may be used until ${shortDay(row.expiresOn)}`)}
              </p>
              {row.stopped !== undefined && <StopWords stopped={row.stopped} people={row.people} />}
              <p>
                <strong>{row.packs < 0 ? `${-row.packs} more opened than came in` : counted(row.packs, 'pack')}</strong>{' '}
                by the sum, {row.opened} opened here. {countWords(row)}
              </p>
              <div className={css['acts']}>
                <Link to="/stock/trace" search={{ batch: row.batch }} className={css['link']}>
                  Who had it: {counted(row.people, 'person', 'people')}
                </Link>
                {may('count packs') && (
                  <>
                    <Button onClick={() => toggle('count', row.batch)}>
                      Count<span className="unseen"> batch {row.batch}</span>
                    </Button>
                    <Button onClick={() => toggle('take out', row.batch)}>
                      Take out<span className="unseen"> packs of batch {row.batch}</span>
                    </Button>
                  </>
                )}
                {row.stopped !== undefined && may('release batch') && (
                  <Button onClick={() => toggle('release', row.batch)}>
                    May be used again<span className="unseen"> batch {row.batch}</span>
                  </Button>
                )}
              </div>
              {open?.batch === row.batch && open.what === 'count' && (
                <CountPacks unit={data.unit} row={row} close={close} />
              )}
              {open?.batch === row.batch && open.what === 'take out' && (
                <TakeOutPacks unit={data.unit} row={row} close={close} />
              )}
              {open?.batch === row.batch && open.what === 'release' && <ReleaseBatch batch={row.batch} close={close} />}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

const stateOf = ({ stopped, expired, packs }: BatchRow): string =>
  stopped !== undefined
    ? `do not use: ${stopped.why}`
    : expired
      ? 'do not use: past its date'
      : packs > 0
        ? 'may be used'
        : 'none left';

function countWords({ counted: count }: BatchRow): string {
  if (count === undefined) return 'Never counted.';
  const differs = count.packs - count.saidThen;
  const agrees = differs === 0 ? 'as the sum said' : `the sum said ${count.saidThen}`;
  return `Counted ${shortDay(count.on)}: ${count.packs}, ${agrees}.`;
}

function StopWords({ stopped, people }: { stopped: NonNullable<BatchRow['stopped']>; people: number }) {
  const soon =
    stopped.actWithin === undefined || stopped.actWithin === 'at once'
      ? stopped.actWithin
      : `within ${stopped.actWithin}`;
  return (
    <div className={css['stopped']}>
      <p>
        <strong>{stopped.reason}</strong>
      </p>
      <p>
        {dotted(
          `since ${shortDay(stopped.since)}`,
          soon !== undefined && `act ${soon}`,
          stopped.by,
          stopped.toldBy,
          stopped.productNumber !== undefined && `only product ${stopped.productNumber}`,
        )}
      </p>
      {people > 0 && (
        <p>
          {stopped.told} of {counted(people, 'person', 'people')} who had it told.
        </p>
      )}
    </div>
  );
}
