/** Unwell until someone records "well since, eating and drinking" (docs/readiness.md R8). */
import { shortDate } from '../calendar/day.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Evidence } from './evidence.ts';
import { type Judge, type Requirement, always, judgement, readyPath } from './requirement.ts';
import { illnessesBy, isOver } from './unwell.ts';

const reads = ['illnesses', 'checklists', 'wellSince'] as const;
type Read = Pick<Evidence, (typeof reads)[number]>;

const sayNeverIll = () => ({ says: 'No illness recorded.' });

function judge(evidence: Read, protocol: Protocol): Judge {
  const { wellSince } = evidence;
  const illnesses = illnessesBy(evidence, protocol);
  if (illnesses.length === 0 && wellSince === undefined)
    return always(judgement('ready', 'well', sayNeverIll), readyPath);
  const inputs = () => [
    ...illnesses.map(({ on, entry, sort, what }) => ({ label: sort, text: what, on, entry })),
    ...(wellSince === undefined ? [] : [{ label: 'well since', text: shortDate(wellSince.on), on: wellSince.on }]),
  ];
  const open = illnesses.findLast((one) => !isOver(one, wellSince));
  if (open === undefined) {
    return always(
      judgement('ready', 'well', () => ({
        says: illnesses.length === 0 ? 'No illness recorded.' : 'Recorded as well again since.',
        inputs: inputs(),
      })),
      readyPath,
    );
  }
  return always(
    judgement('not ready', 'unwell', () => ({
      says: `${open.what}, ${shortDate(open.on)}: nobody has recorded that it is over.`,
      inputs: inputs(),
      cautions: ['Earlier bloods no longer count; new ones are taken after the days of recovery.'],
    })),
    {
      is: 'blocked',
      by: {
        what: `"well since": ask whether it is over (${open.what}, ${shortDate(open.on)})`,
        who: 'nurse',
        step: 'record well since',
        settled: ({ today }) => ({ wellSince: { on: today, seq: Infinity } }),
      },
    },
  );
}

export const illness: Requirement<(typeof reads)[number]> = {
  id: 'illness',
  title: 'Illness',
  clearedBy: 'whoever hears that the person is well, eating and drinking. No exception',
  exceptionPossible: false,
  reads,
  judge,
};
