import type { VisitView } from '@twelvemonth/exchange';
import css from '../Visit.module.css';

/** What a dose is read against: who, the order, allergies. Nothing else stands on this screen. */
export function Order({ data }: { data: VisitView }) {
  return (
    <div className={css['order']}>
      <dl>
        <dt>patient</dt>
        <dd>
          {data.name}, born {data.bornInWords}, {data.number}
        </dd>
        <dt>order</dt>
        <dd>{data.prescription ?? 'no prescription in the notes'}</dd>
        <dt>allergies</dt>
        <dd>{data.allergies}</dd>
        {data.injection === undefined && (
          <>
            <dt>not faster than</dt>
            <dd>{data.leastMinutes} minutes</dd>
          </>
        )}
      </dl>
    </div>
  );
}
