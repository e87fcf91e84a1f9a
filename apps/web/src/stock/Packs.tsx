import type { StockView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { useMay } from '../frame/may.ts';
import { Button } from '../paper/Button.tsx';
import { Empty } from '../paper/Empty.tsx';
import { PacksForm } from './PacksForm.tsx';

/** Which packs are scanned here, by the product number in their code. Look-alikes are listed too: they are named when scanned. */
export function Packs({ data }: { data: StockView }) {
  const may = useMay();
  const [open, setOpen] = useState(false);
  const { packs, packsCarrySerial, separatorSentAs } = data.formulary;
  if (open) return <PacksForm data={data} close={() => setOpen(false)} />;
  return (
    <section aria-labelledby="packs">
      <h2 id="packs">Packs of {data.unitName}</h2>
      {packs.length === 0 ? (
        <Empty says="No packs are listed: none can be scanned.">
          <p>The first step is the pharmacist's: list each pack with the product number in its code.</p>
        </Empty>
      ) : (
        <>
          <table className="stacks">
            <thead>
              <tr>
                <th scope="col">product number</th>
                <th scope="col">product</th>
              </tr>
            </thead>
            <tbody>
              {packs.map((pack) => (
                <tr key={pack.productNumber}>
                  <th scope="row">{pack.productNumber}</th>
                  <td>{pack.product}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <p className="quiet">
            {packsCarrySerial ? 'Packs carry a serial number.' : 'Packs carry no serial number.'}{' '}
            {separatorSentAs === undefined
              ? 'The scanners send the separator itself.'
              : `The scanners type ${separatorSentAs} for the separator.`}
          </p>
        </>
      )}
      {may('set formulary') && (
        <p style={{ marginTop: '0.8rem' }}>
          <Button size="big" onClick={() => setOpen(true)}>
            {packs.length === 0 ? 'List the packs' : 'Change the list'}
          </Button>
        </p>
      )}
    </section>
  );
}
