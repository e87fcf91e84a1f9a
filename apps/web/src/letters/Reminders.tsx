import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import type { ReminderRow } from '@twelvemonth/exchange';
import { useActingRole } from '../frame/acting-role.ts';
import { useMay } from '../frame/may.ts';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { reminders } from '../server/queries.ts';
import { post } from '../server/request.ts';
import { dayInWords } from '../words/dates.ts';
import { counted, unbroken } from '../words/texts.ts';
import { Came } from './Came.tsx';
import css from './Letters.module.css';
import { RemindersPlanned } from './RemindersPlanned.tsx';
import { type One, useMany } from './use-many.ts';

/** Reminders whose day has come; one press sends those that can go, and says of each that did not why. */
export function Reminders({ unit }: { unit: string }) {
  const { data } = useQuery(reminders(unit));
  const { role } = useActingRole();
  const may = useMay();
  const many = useMany();
  const rows = data?.rows ?? [];
  if (data === undefined) return null;
  const ready = rows.filter(({ notNow, byItself }) => notNow === undefined && !byItself);
  const send = ({ patient, name, place, daysBefore }: ReminderRow): One => ({
    who: name,
    act: async () => {
      const body = { patient, place, daysBefore, ...(role === undefined ? {} : { role }) };
      const { outcome, because } = await post('sendReminder', body);
      return outcome === 'accepted' ? 'done' : { because: `${outcome}: ${because ?? 'no reason given'}` };
    },
  });
  return (
    <>
      {data.returnedNotTaken > 0 && (
        <Note tone="caution">
          <p>
            {counted(data.returnedNotTaken, 'returned message')} could not be matched with one that went out from here.
            Whoever runs this server finds them in the folder “not-taken”: somebody reads them, and removes them there.
          </p>
        </Note>
      )}
      {(rows.length > 0 || many.progress !== undefined) && (
        <section aria-labelledby="reminders">
          <h2 id="reminders">Reminders due ({rows.length})</h2>
          {may('sendReminder') && (
            <div className={`${css['acts']} screenOnly`}>
              <Button
                tone="act"
                busy={many.busy}
                busyWords={`${many.progress?.done ?? 0} of ${ready.length} …`}
                disabled={ready.length === 0}
                onClick={() => void many.run(ready.map(send))}
              >
                Send {counted(ready.length, 'reminder')}
              </Button>
              {many.busy && <Button onClick={many.stop}>Stop</Button>}
            </div>
          )}
          <Came of={many.progress} busy={many.busy} />
          <ul className={css['plain']}>
            {rows.map((row) => (
              <li key={`${row.place}/${row.daysBefore}`}>
                <Link to="/people/$patient" params={{ patient: row.patient }}>
                  {row.name}
                </Link>{' '}
                <span className={css['detail']}>{unbroken(row.number)}</span>, place on {dayInWords(row.on)},{' '}
                {row.arriveAt}: {counted(row.daysBefore, 'day')} before
                {row.channel !== undefined && `, by ${row.channel} to ${row.to ?? ''}`}
                <div className={css['detail']}>{row.text}</div>
                {row.byItself && <div className={css['detail']}>goes by itself in the unit’s hours, as approved</div>}
                {row.notNow !== undefined && (
                  <div>
                    <strong>Not now:</strong> {row.notNow}
                  </div>
                )}
              </li>
            ))}
          </ul>
        </section>
      )}
      {data.plans !== undefined && <RemindersPlanned plans={data.plans} today={data.today} />}
    </>
  );
}
