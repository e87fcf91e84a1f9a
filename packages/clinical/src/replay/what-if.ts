/**
 * What if: the decisions of a stretch of past days, had another rule sheet been in force. Every go and every put-off is decided
 * again, from what was known then, by the sheet that was in force and by the other; nothing is written.
 *
 * What it cannot know: what people would have done earlier had they known of the other sheet. So it counts what would have
 * stood in the way on the day, and from when the dose would then have been possible. A delay is counted from the day of the
 * decision to the first day of the window told then, with the steps that window assumes.
 */
import { type Day, type PlainDate, day, plainDate } from '../calendar/day.ts';
import { type BodyOfKind, kindNamed } from '../kinds/index.ts';
import type { Entry, Uuid } from '../ledger/entry.ts';
import type { Subject } from '../ledger/subject.ts';
import type { Protocol } from '../protocol/protocol.ts';
import { readiness } from '../readiness/ask.ts';
import type { DecisionContext } from '../readiness/context.ts';
import { type GoVerdict, goVerdict } from '../readiness/go-verdict.ts';
import { type LedgerOf, recordTogether } from '../record/together.ts';
import { type ContextsThen, unitThen } from './known-then.ts';

/** A decision that would have come out otherwise. */
export type OtherOutcome = {
  readonly entry: Uuid;
  readonly patient: Subject;
  readonly on: PlainDate;
  /** A go that would have been put off; or a put-off whose notes would have been ready. */
  readonly kind: 'put off' | 'ready';
  /** "not ready: kidney function" */
  readonly because: string;
  /** Blood would have had to be drawn again before the dose. */
  readonly bloodsAgain: boolean;
  /** Days to the first day it could have been given; undefined: no date could have been told. Nought for `ready`. */
  readonly delayDays: number | undefined;
};

export type WhatIf = {
  /** Goes and put-offs that were signed in those days. */
  readonly decisions: number;
  readonly others: readonly OtherOutcome[];
};

/** `from` and `until` included; a decision is one of the unit's if the person was there that day. */
export function whatIf(
  of: Subject,
  ledgerOf: LedgerOf,
  contexts: ContextsThen,
  asked: { readonly unit: string; readonly draft: Protocol; readonly from: Day; readonly until: Day },
): WhatIf {
  const own = ledgerOf(of) ?? [];
  let decisions = 0;
  const others: OtherOutcome[] = [];
  for (const entry of own) {
    if (entry.kind !== 'go-decision') continue;
    const parsed = kindNamed('go-decision').body.safeParse(entry.body);
    if (!parsed.success) continue;
    const body = parsed.data as BodyOfKind<'go-decision'>;
    const on = day(body.basis.on);
    if (on < asked.from || on > asked.until || body.decision === 'ask a prescriber') continue;
    const known = own.filter(({ seq }) => seq <= body.basis.knownSeq);
    const record = recordTogether(of, known, ledgerOf, { knownAt: entry.recordedAt });
    if (unitThen(record, on, ledgerOf) !== asked.unit) continue;
    const context = contexts(asked.unit, entry.recordedAt, ledgerOf);
    if (context === undefined) continue;
    decisions += 1;
    const outcome = otherwise(entry, of, on, body.decision, {
      then: goVerdict(record, context, on),
      record,
      context: { calendar: context.calendar, protocols: [{ from: 0, protocol: asked.draft }] },
    });
    if (outcome !== undefined) others.push(outcome);
  }
  return { decisions, others };
}

function otherwise(
  { id }: Entry,
  patient: Subject,
  on: Day,
  decision: 'go' | 'put off',
  {
    then,
    record,
    context,
  }: {
    readonly then: GoVerdict;
    readonly record: ReturnType<typeof recordTogether>;
    readonly context: DecisionContext;
  },
): OtherOutcome | undefined {
  const other = goVerdict(record, context, on);
  const was = isReady(then);
  const would = isReady(other);
  if (was === would || (decision === 'go') !== was) return undefined;
  const told = { entry: id, patient, on: plainDate(on) };
  if (would) return { ...told, kind: 'ready', because: then.headline, bloodsAgain: false, delayDays: 0 };
  const { window, nextSteps } = readiness(record, context, on);
  return {
    ...told,
    kind: 'put off',
    because: other.headline,
    bloodsAgain: nextSteps.some(({ kind }) => kind === 'draw' || kind === 'repeat result'),
    delayDays: window === undefined ? undefined : window.first - on,
  };
}

const isReady = ({ verdict }: GoVerdict): boolean => verdict === 'ready' || verdict === 'does not apply';

/** Sums over people. Days are whole; a put-off without a date is counted apart and never as nought. */
export type WhatIfSum = {
  readonly decisions: number;
  readonly putOff: number;
  readonly ready: number;
  readonly bloodsAgain: number;
  readonly withoutDate: number;
  readonly delayDays: number;
  readonly longestDelayDays: number;
};

export const nothingSummed: WhatIfSum = {
  decisions: 0,
  putOff: 0,
  ready: 0,
  bloodsAgain: 0,
  withoutDate: 0,
  delayDays: 0,
  longestDelayDays: 0,
};

export const summedWith = (sum: WhatIfSum, { decisions, others }: WhatIf): WhatIfSum =>
  others.reduce(
    (so, { kind, bloodsAgain, delayDays }) => ({
      ...so,
      putOff: so.putOff + Number(kind === 'put off'),
      ready: so.ready + Number(kind === 'ready'),
      bloodsAgain: so.bloodsAgain + Number(bloodsAgain),
      withoutDate: so.withoutDate + Number(delayDays === undefined),
      delayDays: so.delayDays + (delayDays ?? 0),
      longestDelayDays: Math.max(so.longestDelayDays, delayDays ?? 0),
    }),
    { ...sum, decisions: sum.decisions + decisions },
  );
