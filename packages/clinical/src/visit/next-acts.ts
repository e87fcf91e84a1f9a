/** What can be done next in a visit, and by whom. What can be done now is what the main button offers. */
import type { ActName } from '../decide/act.ts';
import type { ClockReading } from '../decide/surroundings.ts';
import { MILLISECONDS_A_MINUTE, minutesAndSeconds } from '../kinds-texts/words.ts';
import { entryKinds, type KindName } from '../kinds/index.ts';
import type { StaffId } from '../ledger/entry.ts';
import { type Role, infusionNurses, registrants } from '../ledger/role.ts';
import type { Protocol } from '../protocol/protocol.ts';
import { runningTime } from './running-time.ts';
import type { VisitStepName } from './steps.ts';
import type { Visit } from './visit.ts';

export type NextAct = {
  readonly step: VisitStepName;
  readonly act: ActName;
  /** The kind of entry, where the act is 'record'. */
  readonly kind?: KindName;
  readonly says: string;
  readonly who: readonly Role[];
  /** Who may not, though the role would allow it: the preparer may not check. */
  readonly notBy?: StaffId;
};

const recording: Partial<Record<VisitStepName, { kind: KindName; says: string }>> = {
  observations: { kind: 'observations', says: 'take observations' },
  checklist: { kind: 'checklist', says: 'ask the questions of the day' },
  cannula: { kind: 'cannula', says: 'place the cannula' },
  flush: { kind: 'flush', says: 'flush with saline' },
  preparation: { kind: 'preparation', says: 'prepare and read the pack' },
  removal: { kind: 'cannula-removed', says: 'remove the cannula' },
  observe: { kind: 'observed', says: 'watch, then record how they are' },
  leave: { kind: 'left', says: 'see them off' },
};

/** The first is what is due now; others can be done as well. Empty when the visit is over. */
export function nextActs(visit: Visit, protocol: Protocol | undefined, now: ClockReading): readonly NextAct[] {
  const turn = visit.steps.find(({ state }) => state === 'running' || state === 'waiting');
  if (turn === undefined) return [];
  const plain = recording[turn.step];
  if (plain !== undefined) {
    return [{ step: turn.step, act: 'record', kind: plain.kind, says: plain.says, who: entryKinds[plain.kind].writes }];
  }
  if (turn.step === 'second check') return [secondCheckAct(visit, turn.state === 'running')];
  if (turn.step === 'injection')
    return [{ step: turn.step, act: 'give injection', says: 'give the injection', who: infusionNurses }];
  if (turn.step === 'infusion') return infusionActs(visit, protocol, now);
  if (turn.step !== 'decision') return [];
  const says = turn.state === 'running' ? 'a prescriber is asked: then decide' : 'go, put off or ask a prescriber';
  return [{ step: 'decision', act: 'decide', says, who: infusionNurses }];
}

function secondCheckAct(visit: Visit, differed: boolean): NextAct {
  return {
    step: 'second check',
    act: 'second check',
    says: differed
      ? 'the readings differ: read the pack again together, withdraw what was misread, then check anew'
      : 'second check: waiting for someone other than the preparer',
    who: registrants,
    ...(visit.preparation === undefined ? {} : { notBy: visit.preparation.author.staff }),
  };
}

function infusionActs(visit: Visit, protocol: Protocol | undefined, now: ClockReading): readonly NextAct[] {
  const { infusion } = visit;
  const act = (name: ActName, says: string): NextAct => ({ step: 'infusion', act: name, says, who: infusionNurses });
  if (infusion === undefined) return [act('start infusion', 'start the infusion')];
  if (infusion.paused !== undefined)
    return [act('resume infusion', 'paused: resume when it runs again'), act('finish infusion', 'stop here')];
  const left = millisecondsToFinish(visit, protocol, now);
  const says =
    left === undefined
      ? 'the running time cannot be measured: time it by another clock'
      : left > 0
        ? `earliest finish in ${minutesAndSeconds(left)}; look at the site`
        : 'finish when the bag is empty';
  return [act('finish infusion', says), act('pause infusion', 'pause')];
}

/** How long the infusion must still run before it may be called finished; undefined: cannot be measured, or no protocol. */
export function millisecondsToFinish(
  visit: Visit,
  protocol: Protocol | undefined,
  now: ClockReading,
): number | undefined {
  if (visit.infusion === undefined || protocol === undefined) return undefined;
  const ran = runningTime(visit.infusion.marks, now);
  return ran.measured
    ? Math.max(0, protocol.number.runningMinutesLeast * MILLISECONDS_A_MINUTE - ran.milliseconds)
    : undefined;
}
