import type { SupportLineView, SupportsView } from '@twelvemonth/exchange';
import { AnswerForm } from './AnswerForm.tsx';

export const NotNeededForm = ({
  data,
  what,
  done,
}: {
  data: SupportsView;
  what: SupportLineView['what'];
  done: () => void;
}) => (
  <AnswerForm
    data={data}
    label="Why it is not needed this time"
    help="For example: comes with a neighbour who drives."
    at="line.body.reason"
    act="Write it down"
    body={(text) => ({ answer: 'not needed', what, session: data.place?.session, reason: text })}
    done={done}
  />
);
