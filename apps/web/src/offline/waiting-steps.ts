/** The visit as this device knows it: steps that wait to be sent stand as done here, and say that they are not in the notes yet. */
import type { VisitStep, VisitView } from '@twelvemonth/exchange';
import type { WaitingAct } from './waiting.ts';

const stepOfKind: Readonly<Partial<Record<string, VisitStep['step']>>> = {
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

function stepsOf({ act }: WaitingAct): readonly (VisitStep['step'] | undefined)[] {
  switch (act.name) {
    case 'record':
      return [stepOfKind[act.line.kind]];
    case 'record together':
      return act.lines.map(({ kind }) => stepOfKind[kind]);
    case 'decide':
      return ['decision'];
    case 'finish infusion':
      return ['infusion'];
    default:
      return [];
  }
}

export function withWaiting(data: VisitView, all: readonly WaitingAct[]): VisitView {
  const waiting = all.filter(({ patient }) => patient === data.patient);
  if (waiting.length === 0) return data;
  const by = new Map(
    waiting.flatMap((act) => stepsOf(act).flatMap((step) => (step === undefined ? [] : [[step, act]]))),
  );
  const steps = data.steps.map((step): VisitStep => {
    const act = by.get(step.step);
    return act === undefined || step.state === 'done'
      ? step
      : {
          step: step.step,
          state: 'done',
          at: act.wroteAt,
          by: act.staffName,
          says: 'Written on this device, not in the notes yet: it waits to be sent.',
        };
  });
  const { current: _, ...rest } = data;
  const current = steps.find(({ state }) => state !== 'done')?.step;
  return { ...rest, steps, ...(current === undefined ? {} : { current }) };
}
