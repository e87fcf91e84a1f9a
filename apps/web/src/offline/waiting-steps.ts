/**
 * The visit as this device knows it: what waits to be sent counts here as it will in the notes, and says that it is not in them
 * yet. A try that failed placed no cannula, a flush that did not run freely is none, and nobody who was put off is treated.
 */
import type { VisitStep, VisitView } from '@twelvemonth/exchange';
import type { WaitingAct } from './waiting.ts';

type StepName = VisitStep['step'];
type Line = { readonly kind: string; readonly body?: unknown };

const stepOfKind: Readonly<Partial<Record<string, StepName>>> = {
  arrived: 'arrive',
  observations: 'observations',
  checklist: 'checklist',
  cannula: 'cannula',
  flush: 'flush',
  preparation: 'preparation',
  'cannula-removed': 'removal',
  observed: 'observe',
  left: 'leave',
};

const unsent = 'Written on this device, not in the notes yet: it waits to be sent.';

export function withWaiting(data: VisitView, all: readonly WaitingAct[]): VisitView {
  const waiting = all.filter(({ patient }) => patient === data.patient);
  if (waiting.length === 0) return data;
  const written = new Map<StepName, VisitStep>();
  let putOff = false;
  const isDone = (name: StepName): boolean =>
    (written.get(name) ?? data.steps.find(({ step }) => step === name))?.state === 'done';
  const reopen = (step: StepName): void => void (isDone(step) && written.set(step, { step, state: 'to come' }));
  const write = ({ wroteAt, staffName }: WaitingAct, step: StepName, state: VisitStep['state'], says = unsent): void =>
    void written.set(step, { step, state, at: wroteAt, by: staffName, says });
  const take = (act: WaitingAct, { kind, body }: Line): void => {
    const step = stepOfKind[kind];
    const said = (body ?? {}) as Readonly<Record<string, unknown>>;
    if (step === undefined) return;
    if (kind === 'observations' && said['when'] !== 'before') return;
    if (kind === 'cannula') {
      if (said['placed'] !== true) return;
      reopen('flush');
    }
    if (kind === 'flush') {
      if (said['when'] !== 'before') return;
      if (said['ranFreely'] !== true || said['calciumInLine'] === true) return reopen('flush');
    }
    // Another pack is checked anew.
    if (kind === 'preparation') reopen('second check');
    // Taken out while it stands still it is not the removal that ends the visit.
    if (kind === 'cannula-removed' && data.infusion !== undefined && !isDone('infusion')) return;
    write(act, step, 'done');
  };
  for (const one of waiting) {
    const { act } = one;
    if (act.name === 'record') take(one, act.line);
    else if (act.name === 'record together') for (const line of act.lines) take(one, line);
    else if (act.name === 'finish infusion') write(one, 'infusion', 'done');
    else if (act.name === 'decide') {
      putOff = act.decision === 'put off';
      if (act.decision === 'ask a prescriber') write(one, 'decision', 'running', `a prescriber is asked. ${unsent}`);
      else write(one, 'decision', 'done', `${act.decision}. ${unsent}`);
    }
  }
  const steps = inTurn(
    data.steps
      .map((step) =>
        step.state === 'done' && written.get(step.step)?.state === 'done' ? step : (written.get(step.step) ?? step),
      )
      .filter(({ step, state }) => {
        if (state === 'done') return true;
        if (isDone('leave')) return false;
        return !putOff || step === 'leave' || (step === 'removal' && isDone('cannula'));
      }),
  );
  const { current: _, ...rest } = data;
  const current = steps.find(({ state }) => state !== 'done')?.step;
  return { ...rest, steps, ...(current === undefined ? {} : { current }) };
}

/** The first that is open has its turn, unless it is under way. */
function inTurn(steps: readonly VisitStep[]): VisitStep[] {
  const open = steps.findIndex(({ state }) => state !== 'done');
  return steps.map((step, index) =>
    step.state === 'done' || step.state === 'running'
      ? step
      : { ...step, state: index === open ? 'waiting' : 'to come' },
  );
}
