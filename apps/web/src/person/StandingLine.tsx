import { Link } from '@tanstack/react-router';
import type { PersonView } from '@twelvemonth/exchange';
import { useActingRole } from '../frame/acting-role.ts';
import { useServiceToday } from '../frame/unit.ts';
import { buttonLook } from '../paper/button-look.ts';
import { SupportWords } from '../supports/SupportWords.tsx';
import { Verdict } from '../verdict/Verdict.tsx';
import { useUnitWords } from '../words/american.ts';
import { dayInWords } from '../words/dates.ts';
import { dotted, sentence } from '../words/texts.ts';
import { type Doable, doableNow } from './doable.ts';
import css from './Person.module.css';

function MainAct({ patient, act }: { patient: string; act: Doable }) {
  const look = buttonLook('act');
  if ('record' in act.to) {
    return (
      <Link to="/people/$patient" params={{ patient }} search={act.to} className={look}>
        {act.says}
      </Link>
    );
  }
  return (
    <Link to={`/people/$patient/${act.to.screen}`} params={{ patient }} className={look}>
      {act.says}
    </Link>
  );
}

/** Where the person is, the verdict in one line, and what can be done now. */
export function StandingLine({ data }: { data: PersonView }) {
  const today = useServiceToday();
  const { roles } = useActingRole();
  const act = useUnitWords()(doableNow(data, today, roles));
  const { standing, readiness, place, patient } = data;
  const given = (data.course?.doses.length ?? 0) > 0;
  const bookable = readiness?.window !== undefined || place !== undefined;
  return (
    <>
      <p className="quiet">
        {dotted(
          sentence(standing.says),
          standing.on !== undefined && `${standing.owner} by ${dayInWords(standing.on)}`,
          place !== undefined && standing.standing !== 'booked' && `booked ${dayInWords(place.on)}, ${place.arriveAt}`,
        )}
      </p>
      <SupportWords patient={patient} supports={data.supports} />
      <div className={css['verdictLine']}>
        {readiness !== undefined && (
          <span>
            <Verdict is={readiness.verdict} large>
              {sentence(readiness.headline)}{' '}
              <a className="screenOnly finger" href="#what-must-hold">
                why?
              </a>
            </Verdict>
          </span>
        )}
        <span className={`${css['acts']} screenOnly`}>
          {act.says !== 'Write in the notes' && (
            <Link
              className={buttonLook('quiet')}
              to="/people/$patient"
              params={{ patient }}
              search={{ record: 'menu' }}
            >
              Write in the notes
            </Link>
          )}
          <Link className={buttonLook('quiet')} to="/people/$patient/deciding" params={{ patient }}>
            Decide together
          </Link>
          <Link className={buttonLook('quiet')} to="/people/$patient/pack" params={{ patient }}>
            Patient pack
          </Link>
          <Link className={buttonLook('quiet')} to="/people/$patient/own-page" params={{ patient }}>
            Own page
          </Link>
          <Link className={buttonLook('quiet')} to="/people/$patient/letters" params={{ patient }}>
            Letters
          </Link>
          {given && (
            <>
              <Link className={buttonLook('quiet')} to="/people/$patient/aftercare" params={{ patient }}>
                After the dose
              </Link>
              <Link className={buttonLook('quiet')} to="/people/$patient/coming-back" params={{ patient }}>
                Coming back
              </Link>
            </>
          )}
          {bookable && !('screen' in act.to && act.to.screen === 'book') && (
            <Link className={buttonLook('quiet')} to="/people/$patient/book" params={{ patient }}>
              {place === undefined ? 'Book a place' : 'Move the place'}
            </Link>
          )}
          {place !== undefined && (
            <Link className={buttonLook('quiet')} to="/people/$patient/bookings" params={{ patient }}>
              Transport and the like
            </Link>
          )}
          <MainAct patient={patient} act={act} />
        </span>
      </div>
    </>
  );
}
