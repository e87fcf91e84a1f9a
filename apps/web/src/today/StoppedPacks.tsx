import { Link } from '@tanstack/react-router';
import type { TodayView } from '@twelvemonth/exchange';
import { Note } from '../paper/Note.tsx';
import { stoppedWords } from '../visit/StoppedPack.tsx';
import { sentence } from '../words/texts.ts';

/** Packs in use now whose batch was stopped: before anything else of the day. */
export function StoppedPacks({ packs }: { packs: TodayView['stoppedPacks'] }) {
  return (
    <section aria-label="Stopped batches in use" style={{ marginBottom: '1rem' }}>
      <Note tone="stop" speaks="at once">
        {packs.map((pack) => (
          <div key={pack.patient}>
            <p>
              <Link to="/people/$patient/visit" params={{ patient: pack.patient }} className="finger">
                {pack.who}
              </Link>
              : <strong>{stoppedWords[pack.state]}</strong> {sentence(pack.says)}.
            </p>
            <p>{pack.whatNow}</p>
          </div>
        ))}
      </Note>
    </section>
  );
}
