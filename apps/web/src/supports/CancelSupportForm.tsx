import type { SupportsView } from '@twelvemonth/exchange';
import { AnswerForm } from './AnswerForm.tsx';

export const CancelSupportForm = ({
  data,
  booking,
  done,
}: {
  data: SupportsView;
  booking: string;
  done: () => void;
}) => (
  <AnswerForm
    data={data}
    label="With whom it was cancelled"
    at="line.body.toldWhom"
    act="It is cancelled: write it down"
    body={(text) => ({ answer: 'cancelled', booking, toldWhom: text })}
    done={done}
  />
);
