/**
 * Every signed decision in a person's notes, decided again: from what was known when it was signed, by the protocol in force
 * then, with the rules as they are now. A difference is a change of rules or a defect; either must be looked at.
 */
import { type Day, type PlainDate, day, plainDate } from '../calendar/day.ts';
import { bookingTrouble } from '../decide/booking-trouble.ts';
import { type BodyOfKind, type KindName, kindNamed } from '../kinds/index.ts';
import type { Entry, Uuid } from '../ledger/entry.ts';
import type { Subject } from '../ledger/subject.ts';
import { protocolInForceOn } from '../protocol/in-force.ts';
import type { ProtocolTimeline } from '../protocol/protocol.ts';
import { goVerdict } from '../readiness/go-verdict.ts';
import { RULE_SET, rulesSince } from '../readiness/rule-set.ts';
import { type LedgerOf, recordTogether } from '../record/together.ts';
import { type ContextsThen, notesBefore, unitThen } from './known-then.ts';

const signedKinds = ['go-decision', 'place-booked', 'prescriber-exception'] as const;
export type SignedKind = (typeof signedKinds)[number];

export type Proof = {
  readonly kind: SignedKind;
  readonly entry: Uuid;
  readonly patient: Subject;
  readonly on: PlainDate;
  /** What was signed and what comes out now, in the same words. */
  readonly signed: string;
  readonly now: string;
  readonly holds: boolean;
  /** Why it may differ; empty where it holds. */
  readonly because: string;
};

export function replay(of: Subject, ledgerOf: LedgerOf, contexts: ContextsThen): readonly Proof[] {
  const own = ledgerOf(of) ?? [];
  return own.flatMap((entry) => {
    switch (entry.kind) {
      case 'go-decision':
        return [proof(entry, of, 'go-decision', (body) => goAgain(of, own, entry, body, ledgerOf, contexts))];
      case 'place-booked':
        return [proof(entry, of, 'place-booked', (body) => bookingAgain(of, own, entry, body, ledgerOf, contexts))];
      case 'prescriber-exception':
        return [proof(entry, of, 'prescriber-exception', (body) => exceptionAgain(entry, body))];
      default:
        return [];
    }
  });
}

type Outcome = Pick<Proof, 'signed' | 'now' | 'because'> & { readonly on: PlainDate };

function proof<Kind extends SignedKind & KindName>(
  entry: Entry,
  patient: Subject,
  kind: Kind,
  again: (body: BodyOfKind<Kind>) => Outcome,
): Proof {
  const parsed = kindNamed(kind).body.safeParse(entry.body);
  const outcome: Outcome = parsed.success
    ? again(parsed.data as BodyOfKind<Kind>)
    : {
        on: entry.effectiveAt.slice(0, 10) as PlainDate,
        signed: 'signed',
        now: 'cannot be read',
        because: 'its body does not fit its kind',
      };
  const holds = outcome.signed === outcome.now;
  return { kind, entry: entry.id, patient, ...outcome, holds, because: holds ? '' : outcome.because };
}

const NONE = 'none';

function goAgain(
  of: Subject,
  own: readonly Entry[],
  entry: Entry,
  { basis }: BodyOfKind<'go-decision'>,
  ledgerOf: LedgerOf,
  contexts: ContextsThen,
): Outcome {
  const record = recordTogether(
    of,
    own.filter(({ seq }) => seq <= basis.knownSeq),
    ledgerOf,
    { knownAt: entry.recordedAt },
  );
  const on = day(basis.on);
  const context = contexts(unitThen(record, on, ledgerOf), entry.recordedAt, ledgerOf);
  const protocol = context === undefined ? undefined : protocolInForceOn(context.protocols, on);
  const verdict =
    context === undefined || protocol === undefined ? 'cannot say' : goVerdict(record, context, on).verdict;
  const version = protocol?.version ?? NONE;
  return {
    on: basis.on,
    signed: `${basis.verdict} under ${basis.protocolVersion}`,
    now: `${verdict} under ${version}`,
    because: becauseOf(basis, version, protocol?.added.length ?? 0),
  };
}

function becauseOf(basis: BodyOfKind<'go-decision'>['basis'], version: string, added: number): string {
  if (version !== basis.protocolVersion) return `protocol ${basis.protocolVersion} then, ${version} now`;
  if (basis.ruleSet !== RULE_SET) {
    const changes = rulesSince(basis.ruleSet).map((set) => set.changes);
    return `rules ${basis.ruleSet} then, ${RULE_SET} now: ${changes.length === 0 ? 'not known here' : changes.join('; ')}`;
  }
  return added > 0
    ? 'an upgrade has filled in what the protocol lacked'
    : 'same rules, same protocol: a defect then or now';
}

/** A place was booked inside the window, or each trouble was taken on by name. */
function bookingAgain(
  of: Subject,
  own: readonly Entry[],
  entry: Entry,
  body: BodyOfKind<'place-booked'>,
  ledgerOf: LedgerOf,
  contexts: ContextsThen,
): Outcome {
  const record = notesBefore(of, own, entry, ledgerOf);
  const [booked, on] = [dayOf(entry), day(body.on)];
  const accepted = new Set<string>(body.accepted?.causes);
  const signed = 'nothing stands against it that was not taken on';
  if (on < booked) return { on: body.on, signed, now: signed, because: '' };
  const context = contexts(body.unit, entry.recordedAt, ledgerOf);
  const open = bookingTrouble(record, inForce(context?.protocols) ? context : undefined, booked, on).causes.filter(
    ({ cause, says }) => !accepted.has(cause) && !accepted.has(says),
  );
  return {
    on: body.on,
    signed,
    now: open.length === 0 ? signed : `not taken on: ${open.map(({ cause }) => cause).join(', ')}`,
    because: 'rules have changed since, or a defect: a booking does not keep the rules it was made under',
  };
}

const inForce = (protocols: ProtocolTimeline | undefined): boolean => protocols !== undefined && protocols.length > 0;
const dayOf = ({ effectiveAt }: Entry): Day => day(effectiveAt.slice(0, 10));

/** A prescriber's exception is a prescriber's, and lasts at least the day it was made. */
function exceptionAgain(entry: Entry, body: BodyOfKind<'prescriber-exception'>): Outcome {
  const made = dayOf(entry);
  const wrong = [
    ...(entry.author.role === 'prescriber' ? [] : [`made by a ${entry.author.role}`]),
    ...(day(body.expiresOn) >= made ? [] : ['over before it was made']),
  ];
  const signed = `a prescriber’s, until ${body.expiresOn}`;
  return {
    on: plainDate(made),
    signed,
    now: wrong.length === 0 ? signed : wrong.join(', '),
    because: 'no such exception can be made now: a defect then or now',
  };
}
