/** The medicine stands still, and runs again once somebody has looked along the line: after swelling or pain only through a cannula that is in and flushed. */
import { noAfterConsent } from '../record/no-after-consent.ts';
import { type SubjectRecord, latest } from '../record/patient-record.ts';
import { reactionsToDecide } from '../record/reaction-to-decide.ts';
import { type Infusion, type Visit, isFlushed } from '../visit/visit.ts';
import type { ActNamed } from './act.ts';
import { atTheChair, notRunning, stepOf } from './at-the-drip.ts';
import { checkRunsAgain } from './check-pack.ts';
import { checkLooked } from './check-looked.ts';
import { notFlushed } from './check-visit-step.ts';
import { type Refusal } from './refusal.ts';
import { decided, refusal } from './refuse.ts';
import type { Decided, Surroundings } from './surroundings.ts';

export function decidePause(act: ActNamed<'pause infusion'>, now: Surroundings): Decided {
  const { visit, refusals } = atTheChair(act, now);
  const infusion = visit?.infusion;
  if (infusion === undefined || infusion.finished !== undefined || infusion.paused !== undefined) {
    refusals.push(notRunning('Nothing is running.', 'only a running infusion is paused'));
  }
  const { reason, because } = act;
  return decided(refusals, () => [
    stepOf(act, 'infusion-paused', { reason, ...(because === undefined ? {} : { because }), clock: now.clock }, now),
  ]);
}

export function decideResume(act: ActNamed<'resume infusion'>, now: Surroundings): Decided {
  const { record, visit, refusals } = atTheChair(act, now);
  const infusion = visit?.infusion;
  if (infusion === undefined || infusion.finished !== undefined)
    refusals.push(notRunning('Nothing is paused.', 'start the infusion first'));
  else if (infusion.paused === undefined) refusals.push(refusal('already-running', 'It is running.'));
  if (visit?.infusion !== undefined)
    refusals.push(
      ...checkWayIn(visit, visit.infusion),
      ...checkReactionsDecided(record, visit),
      ...checkNotSaidNo(record),
      ...checkRunsAgain(visit, now),
      // After any pause: the line was shut, perhaps off, and a drop counted by hand runs freely where the clamp is not.
      ...checkLooked(act),
    );
  const { alongTheLine } = act;
  return decided(refusals, () => [stepOf(act, 'infusion-resumed', { alongTheLine, clock: now.clock }, now)]);
}

/** After swelling or pain it runs again only where somebody has looked, and through a cannula that is in and flushed. */
function checkWayIn(visit: Visit, infusion: Infusion): readonly Refusal[] {
  const first = (says: string, remedy: string): readonly Refusal[] => [refusal('step-out-of-order', says, { remedy })];
  const { paused, siteCheck } = infusion;
  if (paused?.body.because === 'the site' && (siteCheck?.seq ?? 0) < paused.seq)
    return first('Nobody has looked at the site since it was stopped.', 'look at the site and record what is seen');
  if (visit.resite !== undefined)
    return first(`The site was not well: ${visit.resite.says}.`, 'take that cannula out, place another and flush it');
  if (visit.removed !== undefined) return first('There is no cannula in place.', 'place one and flush it');
  // A cannula placed again during the pause is a new way in: it is flushed like the first.
  return isFlushed(visit.flush) ? [] : first(notFlushed.says, notFlushed.remedy);
}

/** A grave reaction holds every dose until a prescriber has decided about it, also the rest of this one. */
function checkReactionsDecided(record: SubjectRecord, { reactions }: Visit): readonly Refusal[] {
  const open = reactionsToDecide(record).find(({ fact }) => reactions.some(({ id }) => id === fact.id));
  return open !== undefined
    ? [
        refusal('cannot-say', `Seen: ${open.as}. No prescriber has decided about it.`, {
          remedy: 'ask a prescriber, or stop it for good and say how much was given',
        }),
      ]
    : [];
}

/** A no holds the rest of the dose too. */
function checkNotSaidNo(record: SubjectRecord): readonly Refusal[] {
  const no = noAfterConsent(latest(record, 'consent'), latest(record, 'refusal'));
  return no === undefined
    ? []
    : [
        refusal('not-ready', `They said no to ${no.body.to}.`, {
          remedy: 'stop it for good and say how much was given; or record consent, if they think otherwise',
        }),
      ];
}
