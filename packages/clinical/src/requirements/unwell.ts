/**
 * Illness, contrast, lack of fluid, a medicine hard on the kidneys: written as an entry, or told on a checklist where the
 * protocol says that the answer is such an event. It is over only when a "well since" comes after it (docs/readiness.md R1).
 */
import type { Day } from '../calendar/day.ts';
import type { BodyOfKind } from '../kinds/index.ts';
import type { Uuid } from '../ledger/entry.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Evidence } from './evidence.ts';

export type Illness = {
  readonly on: Day;
  readonly seq: number;
  readonly sort: BodyOfKind<'illness'>['sort'];
  readonly what: string;
  readonly entry: Uuid;
};

const none: readonly Illness[] = [];
const inOrder = (a: Illness, b: Illness): number => a.on - b.on || a.seq - b.seq;

/** Every illness, oldest first. What of a checklist is one is the protocol's to say. */
export function illnessesBy(
  { illnesses, checklists }: Pick<Evidence, 'illnesses' | 'checklists'>,
  { sheet }: Protocol,
): readonly Illness[] {
  if (illnesses.length === 0 && checklists.length === 0) return none;
  const written = illnesses.map(({ on, seq, id, body }) => ({ on, seq, sort: body.sort, what: body.what, entry: id }));
  if (checklists.length === 0) return written;
  const told = checklists.flatMap(({ on, seq, id, body }) =>
    sheet.dayQuestions.flatMap(({ id: question, event, holdsOn, says }): Illness[] =>
      event !== undefined && body.answers[question]?.answer === holdsOn
        ? [{ on, seq, sort: event, what: says, entry: id }]
        : [],
    ),
  );
  return told.length === 0 ? written : [...written, ...told].sort(inOrder);
}

/** Of the same day the one written later is the newer word: "well since", then an answer that tells of an illness, is not over. */
export const isOver = (illness: Illness, wellSince: Evidence['wellSince']): boolean =>
  wellSince !== undefined &&
  (wellSince.on > illness.on || (wellSince.on === illness.on && wellSince.seq > illness.seq));
