import { Link } from '@tanstack/react-router';
import type { BatchRow, BatchStopView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { useMay } from '../frame/may.ts';
import { Button } from '../paper/Button.tsx';
import { shortDay } from '../words/dates.ts';
import { counted, dotted } from '../words/texts.ts';
import { CountPacks } from './CountPacks.tsx';
import { ReleaseBatch } from './ReleaseBatch.tsx';
import css from './Stock.module.css';
import { TakeOutPacks } from './TakeOutPacks.tsx';
import { WithdrawReceipt } from './WithdrawReceipt.tsx';

type Open = 'count' | 'take out' | 'wrong receipt' | { readonly release: string };

/** One batch: whether it may be used, how many packs lie here, who had it. */
export function BatchCard({ unit, row }: { unit: string; row: BatchRow }) {
  const may = useMay();
  const [open, setOpen] = useState<Open>();
  const close = (): void => setOpen(undefined);
  const toggle = (what: Exclude<Open, object>): void => setOpen(open === what ? undefined : what);
  const releasing = typeof open === 'object' ? open.release : undefined;
  return (
    <li className={css['card']}>
      <h3>
        Batch {row.batch}
        <span className={css['state']}>{stateOf(row)}</span>
      </h3>
      <p>{dotted(row.product, row.expiresOn !== undefined && `may be used until ${shortDay(row.expiresOn)}`)}</p>
      {row.stops.map((stop) => (
        <div key={stop.entry} className={css['stopped']}>
          <StopWords stop={stop} />
          {may('release batch') && (
            <Button
              size="big"
              aria-expanded={releasing === stop.entry}
              onClick={() => setOpen(releasing === stop.entry ? undefined : { release: stop.entry })}
            >
              {row.stops.length === 1 ? 'May be used again' : `Lift this ${stop.why}`}
              <span className="unseen"> batch {row.batch}</span>
            </Button>
          )}
          {releasing === stop.entry && (
            <ReleaseBatch batch={row.batch} stop={stop} others={row.stops.length - 1} close={close} />
          )}
        </div>
      ))}
      {row.stops.length > 0 && <ToldWords row={row} />}
      <p>
        <strong>{row.packs < 0 ? `${-row.packs} more opened than came in` : counted(row.packs, 'pack')}</strong> by the
        sum, {row.opened} opened here. {countWords(row)}
      </p>
      <div className={css['acts']}>
        <Link to="/stock/trace" search={{ batch: row.batch }} className={css['link']}>
          Who had it: {counted(row.people, 'person', 'people')}
        </Link>
        {may('count packs') && (
          <>
            <Button size="big" aria-expanded={open === 'count'} onClick={() => toggle('count')}>
              Count<span className="unseen"> batch {row.batch}</span>
            </Button>
            <Button size="big" aria-expanded={open === 'take out'} onClick={() => toggle('take out')}>
              Take out<span className="unseen"> packs of batch {row.batch}</span>
            </Button>
          </>
        )}
        {may('withdraw receipt') && row.receipts.length > 0 && (
          <Button size="big" aria-expanded={open === 'wrong receipt'} onClick={() => toggle('wrong receipt')}>
            Received wrongly<span className="unseen"> batch {row.batch}</span>
          </Button>
        )}
      </div>
      {open === 'count' && <CountPacks unit={unit} row={row} close={close} />}
      {open === 'take out' && <TakeOutPacks unit={unit} row={row} close={close} />}
      {open === 'wrong receipt' && <WithdrawReceipt unit={unit} row={row} close={close} />}
    </li>
  );
}

const stateOf = ({ stops, expired, packs, expiresOn }: BatchRow): string =>
  stops.length > 0
    ? `do not use: ${[...new Set(stops.map(({ why }) => why))].join(', ')}`
    : expired
      ? 'do not use: past its date'
      : expiresOn === undefined
        ? 'none received'
        : packs > 0
          ? 'may be used'
          : 'none left';

function countWords({ counted: count }: BatchRow): string {
  if (count === undefined) return 'Never counted.';
  const differs = count.packs - count.saidThen;
  const agrees = differs === 0 ? 'as the sum said' : `the sum said ${count.saidThen}`;
  return `Counted ${shortDay(count.on)}: ${counted(count.packs, 'pack')}, ${agrees}.`;
}

function StopWords({ stop }: { stop: BatchStopView }) {
  const soon =
    stop.actWithin === undefined || stop.actWithin === 'at once' ? stop.actWithin : `within ${stop.actWithin}`;
  return (
    <>
      <p>
        <strong>
          {stop.why}: {stop.reason}
        </strong>
      </p>
      <p>
        {dotted(
          `since ${shortDay(stop.since)}`,
          soon !== undefined && `act ${soon}`,
          stop.by,
          stop.toldBy,
          stop.productNumber !== undefined && `only packs with product number ${stop.productNumber}`,
        )}
      </p>
    </>
  );
}

/** Who is still to be told, and whether a pack of it is in use this minute. */
function ToldWords({ row }: { row: BatchRow }) {
  const still = row.people - row.told - row.diedUntold;
  return (
    <>
      {row.inUse > 0 && (
        <p>
          <strong>{counted(row.inUse, 'pack')} of it prepared or running now</strong>: Today and the visit say where.
        </p>
      )}
      {row.people > 0 && (
        <p>
          {row.told} of {counted(row.people, 'person', 'people')} who had it told since it was stopped
          {row.diedUntold > 0 && `, ${row.diedUntold} died before that`}
          {still > 0 ? `, ${still} still to tell.` : '.'}
        </p>
      )}
    </>
  );
}
