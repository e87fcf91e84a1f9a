import { entryKinds } from '@twelvemonth/clinical';
import type { DecidingView } from '@twelvemonth/exchange';
import { useActingRole } from '../frame/acting-role.ts';
import { Note } from '../paper/Note.tsx';
import { Why } from '../paper/Why.tsx';
import { shortDay } from '../words/dates.ts';
import css from './Deciding.module.css';
import { EntryForm } from './EntryForm.tsx';
import { TalkForm } from './TalkForm.tsx';

/** The talks so far, capacity and consent, and the form for this one; on paper the same with room to write. */
export function Talk({ data }: { data: DecidingView }) {
  const { roles } = useActingRole();
  const mayWrite = entryKinds.talk.writes.some((role) => roles.includes(role));
  const told = [data.capacity, data.consent].filter((one) => one !== undefined);
  return (
    <section aria-labelledby="talk">
      <h2 id="talk">What we talked about, and what you decided</h2>
      {data.talks.length + told.length === 0 ? (
        <p className="quiet">No talk is in the notes yet.</p>
      ) : (
        <ul className={css['plain']}>
          {[...told, ...data.talks].map(({ entry, on, text, by }) => (
            <li key={entry}>
              {text}{' '}
              <span className="quiet">
                ({shortDay(on)}, {by})
              </span>
            </li>
          ))}
        </ul>
      )}
      <div className="screenOnly">
        {mayWrite ? <TalkForm data={data} /> : <Note>A nurse or prescriber writes down the talk.</Note>}
        <Why about="they can decide this" word="write down if">
          <EntryForm kind="capacity" patient={data.patient} seq={data.seq} dateWord="Found on" />
        </Why>
      </div>
      <div className="paperOnly">
        <p>I have decided: the yearly drip · another treatment · no treatment · not now · more time to think</p>
        <p>You may ask me again on ____________________</p>
        <p>Because ____________________________________________________________________</p>
        <p>Name ______________________________ Date ____________ Nurse ______________________</p>
      </div>
    </section>
  );
}
