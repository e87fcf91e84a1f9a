import { useQuery } from '@tanstack/react-query';
import type { StockView } from '@twelvemonth/exchange';
import { NoUnitYet } from '../frame/NoUnitYet.tsx';
import { useMay } from '../frame/may.ts';
import { useUnit } from '../frame/unit.ts';
import { Awaited } from '../paper/Awaited.tsx';
import { Note } from '../paper/Note.tsx';
import { Page } from '../paper/Page.tsx';
import { stock } from '../server/queries.ts';
import { Batches } from './Batches.tsx';
import { Forecast } from './Forecast.tsx';
import { Orders } from './Orders.tsx';
import { Packs } from './Packs.tsx';

export function StockScreen() {
  const { unit } = useUnit();
  const may = useMay();
  const asked = useQuery({ ...stock(unit?.unit), enabled: unit !== undefined && may('stock') });
  return (
    <Page
      title="Stock"
      sub="How long the packs last, what is ordered, batches that are not to be used, and whom a batch went to."
    >
      {unit === undefined ? (
        <NoUnitYet />
      ) : may('stock') ? (
        <Awaited query={asked} what="the stock">
          {(data) => <Sheet data={data} />}
        </Awaited>
      ) : (
        <Note>Stock is kept by those who give and supply the medicine.</Note>
      )}
    </Page>
  );
}

function Sheet({ data }: { data: StockView }) {
  return (
    <>
      <Forecast data={data} />
      <Orders data={data} />
      <Batches data={data} />
      <Packs data={data} />
    </>
  );
}
