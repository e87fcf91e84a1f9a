/** Consent to this course, or a recorded best-interest decision; asked again on the day (docs/readiness.md R8). */
import { shortDate } from '../calendar/day.ts';
import type { Evidence } from './evidence.ts';
import { type Judge, type Requirement, always, judgement, readyPath } from './requirement.ts';

function judge({ consent }: Evidence): Judge {
  if (consent === undefined) {
    return always(
      judgement('cannot say', 'consent never asked', () => ({ says: 'Nobody has recorded consent.' })),
      { is: 'steps', needs: { ask: { what: 'consent', why: 'consent was never asked' } } },
    );
  }
  const { decision, on, entry } = consent;
  const inputs = [{ label: 'consent', text: decision, on, ...(entry === undefined ? {} : { entry }) }];
  if (decision === 'not given') {
    return always(
      judgement('not ready', 'consent not given', () => ({ says: `Asked on ${shortDate(on)}: not given.`, inputs })),
      {
        is: 'blocked',
        by: {
          what: 'consent, if the person thinks otherwise',
          who: 'patient',
          step: 'ask consent',
          settled: (known) => ({ ...known, consent: { decision: 'given', on: known.today, entry: undefined } }),
        },
      },
    );
  }
  return always(
    judgement('ready', 'consent', () => ({ says: `Recorded as ${decision} on ${shortDate(on)}.`, inputs })),
    readyPath,
  );
}

export const consent: Requirement = {
  id: 'consent',
  title: 'Consent',
  clearedBy: 'the person. No exception',
  exceptionPossible: false,
  judge,
};
