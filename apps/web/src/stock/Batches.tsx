import type { BatchRow, StockView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { useMay } from '../frame/may.ts';
import { Button } from '../paper/Button.tsx';
import { Empty } from '../paper/Empty.tsx';
import { shortDay } from '../words/dates.ts';
import { dotted } from '../words/texts.ts';
import { ReleaseBatch } from './ReleaseBatch.tsx';
import { StopBatch } from './StopBatch.tsx';

/** Every batch something was said about; what is stopped says so in words. */
export function Batches({ data }: { data: StockView }) {
  const may = useMay();
  const [open, setOpen] = useState<string>();
  const close = (): void => setOpen(undefined);
  return (
    <section aria-labelledby="batches">
      <h2 id="batches">Batches</h2>
      {data.batches.length === 0 ? (
        <Empty says="Nothing is said about any batch yet." />
      ) : (
        <table className="stacks">
          <thead>
            <tr>
              <th scope="col">batch</th>
              <th scope="col">may it be used?</th>
              <th scope="col">
                <span className="unseen">act</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {data.batches.map((row) => (
              <tr key={row.batch}>
                <th scope="row">{row.batch}</th>
                <td>
                  <StopWords row={row} />
                  {open === row.batch && <ReleaseBatch batch={row.batch} close={close} />}
                </td>
                <td>
                  {row.stopped !== undefined && may('release batch') && (
                    <Button onClick={() => setOpen(open === row.batch ? undefined : row.batch)}>
                      May be used again<span className="unseen">: {row.batch}</span>
                    </Button>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {may('stop batch') &&
        (open === 'stop' ? (
          <StopBatch close={close} />
        ) : (
          <p style={{ marginTop: '0.8rem' }}>
            <Button size="big" onClick={() => setOpen('stop')}>
              Stop a batch
            </Button>
          </p>
        ))}
    </section>
  );
}

function StopWords({ row: { stopped } }: { row: BatchRow }) {
  if (stopped === undefined) return <>may be used</>;
  return (
    <>
      <strong>Do not use: {stopped.why}</strong> since {shortDay(stopped.since)}
      {stopped.actWithin === undefined
        ? ''
        : `, act ${stopped.actWithin === 'at once' ? '' : 'within '}${stopped.actWithin}`}
      <div>{stopped.reason}</div>
      <div className="quiet small">
        {dotted(
          stopped.by,
          stopped.toldBy,
          stopped.productNumber !== undefined && `only product ${stopped.productNumber}`,
        )}
      </div>
    </>
  );
}
