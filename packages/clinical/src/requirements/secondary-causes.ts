/** Before a first dose other causes of weak bone are looked for, and that is recorded (docs/readiness.md R14). */
import { shortDate } from '../calendar/day.ts';
import type { Evidence } from './evidence.ts';
import { type Judge, type Requirement, always, judgement, readyPath } from './requirement.ts';

const reads = ['secondaryCauses', 'anyZoledronicDose'] as const;
type Read = Pick<Evidence, (typeof reads)[number]>;

function judge({ secondaryCauses, anyZoledronicDose }: Read): Judge {
  const inputs =
    secondaryCauses === undefined
      ? []
      : [
          {
            label: 'secondary causes',
            text: secondaryCauses.answer,
            on: secondaryCauses.on,
            ...(secondaryCauses.entry === undefined ? {} : { entry: secondaryCauses.entry }),
          },
        ];
  if (anyZoledronicDose)
    return always(
      judgement('ready', 'not a first dose', () => ({
        says: 'Secondary causes are looked for before a first dose; an earlier one is recorded.',
        inputs,
      })),
      readyPath,
    );
  if (secondaryCauses === undefined)
    return always(
      judgement('cannot say', 'secondary causes not looked for', () => ({
        says: 'Nobody has recorded that other causes of weak bone were looked for before this first dose.',
      })),
      { is: 'steps', needs: { ask: { what: 'secondary causes', why: 'secondary causes were never looked for' } } },
    );
  if (secondaryCauses.answer !== 'found, to be dealt with first')
    return always(
      judgement('ready', 'secondary causes looked for', () => ({
        says: `Looked for by ${shortDate(secondaryCauses.on)}: ${secondaryCauses.answer}.`,
        inputs,
      })),
      readyPath,
    );
  return always(
    judgement('cannot say', 'a secondary cause to be dealt with first', () => ({
      says: `Found by ${shortDate(secondaryCauses.on)}, to be dealt with before a first dose.`,
      inputs,
    })),
    {
      is: 'blocked',
      by: {
        what: 'a prescriber: the secondary cause that was found is dealt with first',
        who: 'prescriber',
        step: 'settle',
        settled: (known) => ({
          secondaryCauses: { answer: 'found, dealt with', on: known.today, entry: undefined },
        }),
      },
    },
  );
}

export const secondaryCauses: Requirement<(typeof reads)[number]> = {
  id: 'secondary-causes',
  title: 'Secondary causes',
  clearedBy: 'whoever looked for them; a prescriber where one was found. No exception',
  exceptionPossible: false,
  reads,
  judge,
};
