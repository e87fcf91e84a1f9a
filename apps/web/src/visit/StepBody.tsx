import type { VisitStep, VisitView } from '@twelvemonth/exchange';
import { BegunAnew } from './BegunAnew.tsx';
import { ArriveStep } from './steps/ArriveStep.tsx';
import { CannulaStep } from './steps/CannulaStep.tsx';
import { ChecklistStep } from './steps/ChecklistStep.tsx';
import { DecisionStep } from './steps/DecisionStep.tsx';
import { FlushStep } from './steps/FlushStep.tsx';
import { InfusionStep } from './steps/InfusionStep.tsx';
import { InjectionStep } from './steps/InjectionStep.tsx';
import { LeaveStep } from './steps/LeaveStep.tsx';
import { ObservationsStep } from './steps/ObservationsStep.tsx';
import { ObserveStep } from './steps/ObserveStep.tsx';
import { PreparationStep } from './steps/PreparationStep.tsx';
import { RemovalStep } from './steps/RemovalStep.tsx';
import { SecondCheckStep } from './steps/SecondCheckStep.tsx';
import { WhoseStep } from './WhoseStep.tsx';

export type StepProps = { readonly data: VisitView; readonly done: (says: string) => void };

const screens = {
  arrive: ArriveStep,
  observations: ObservationsStep,
  checklist: ChecklistStep,
  decision: DecisionStep,
  cannula: CannulaStep,
  flush: FlushStep,
  preparation: PreparationStep,
  'second check': SecondCheckStep,
  injection: InjectionStep,
  infusion: InfusionStep,
  removal: RemovalStep,
  observe: ObserveStep,
  leave: LeaveStep,
} as const;

/** One screen a step. A step out of turn can be looked at; the server says why it cannot be recorded yet. */
export function StepBody({ data, step, done }: StepProps & { step: VisitStep }) {
  const Screen = screens[step.step];
  const form = (
    <>
      <WhoseStep step={step.step} />
      <Screen data={data} done={done} />
    </>
  );
  return readAndCompared.has(step.step) && data.interruptionMinutes !== undefined && data.infusion === undefined ? (
    <BegunAnew minutes={data.interruptionMinutes}>{form}</BegunAnew>
  ) : (
    form
  );
}

/** Steps in which a pack and a person are read: half a reading from before an interruption is none. */
const readAndCompared: ReadonlySet<string> = new Set(['preparation', 'second check', 'infusion']);
