import { useQuery } from '@tanstack/react-query';
import type { NamedNurseView, TodayView } from '@twelvemonth/exchange';
import { useMay } from '../frame/may.ts';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { me } from '../server/queries.ts';
import { useAct } from '../server/use-act.ts';

/** One tap: from now on whoever is at the desk looks after this person. Offered to nurses who are here. */
export function TakeOver({
  session,
  patient,
  name,
  nurse,
  nurses,
}: {
  session: string;
  patient: string;
  name: string;
  nurse: NamedNurseView | undefined;
  nurses: TodayView['nurses'];
}) {
  const attempt = useAct();
  const may = useMay();
  const mine = useQuery(me).data?.staff;
  const isHere = nurses.some(({ staff }) => staff === mine);
  if (mine === undefined || !isHere || nurse?.staff === mine || !may('name nurse')) return null;
  return (
    <>
      <Button
        tone="plain"
        className="screenOnly"
        style={{ textAlign: 'start' }}
        busy={attempt.busy}
        onClick={() => void attempt.send({ name: 'name nurse', session, patients: [patient], nurse: mine })}
      >
        {nurse === undefined ? 'I look after them' : 'I take over'}
        <span className="unseen">: {name}</span>
      </Button>
      <Outcome of={attempt} />
    </>
  );
}
