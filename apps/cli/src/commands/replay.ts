/**
 * Decides every signed decision again, from what was known when it was signed, by the protocol in force then, with the rules
 * as they are now. A difference is a change of rules or a defect: either must be looked at and given a reason.
 */
import { readFileSync } from 'node:fs';
import {
  type BodyOfKind,
  type Entry,
  type Verdict,
  RULE_SET,
  day,
  goVerdict,
  kindNamed,
  protocolInForceOn,
  recordOf,
  subject,
  sessionOf,
  unitOfPatient,
  visitOn,
} from '@twelvemonth/clinical';
import type { Subject } from '@twelvemonth/clinical';
import type { StoreReader } from '@twelvemonth/store';
import { columnsText, jsonText } from '../columns.ts';
import { type Command, readOptions } from '../command.ts';
import { cannotOpen, exitCodes, misused } from '../ending.ts';
import { readPerson } from '../read-person.ts';
import { placeHelp, placeOptions, withNotes } from '../notes-place.ts';
import { unitContext } from '../units.ts';

export const replay: Command = {
  summary: 'decide signed decisions again; list differences',
  help: `twelvemonth replay [options]

Ends with 1 if a decision comes out differently and is not on the list of those that may.

  --allow FILE       decisions that may differ: JSON, [{ "decision": ID, "reason": TEXT }]
  --json             every difference as JSON
${placeHelp}`,
  run: async (args, output) => {
    const { values, positionals } = readOptions(args, {
      ...placeOptions,
      allow: { type: 'string' },
      json: { type: 'boolean', default: false },
    });
    if (positionals.length > 0) throw misused(`"${positionals.join(' ')}" is not meant here.`);
    const allowed = allowedIn(values.allow);
    return withNotes(values, output, async (reader) => {
      const { decisions, differences } = await differencesIn(reader);
      const told = differences.map((difference) => ({ ...difference, allowed: allowed.get(difference.decision) }));
      if (values.json) output.out(jsonText({ decisions, differences: told }));
      else if (told.length > 0) {
        output.out(
          columnsText(
            ['decision', 'patient', 'on', 'signed', 'now', 'why it may differ'],
            told.map((one) => [one.decision, one.patient, one.on, one.signed, one.now, one.allowed ?? one.because]),
          ),
        );
      }
      for (const id of allowed.keys())
        if (!differences.some(({ decision }) => decision === id))
          output.aside(`${id} is allowed to differ and does not: take it off the list`);
      output.aside(
        `${decisions} signed decisions, ${differences.length} come out differently, ${told.filter((one) => one.allowed !== undefined).length} of them allowed`,
      );
      return told.some((one) => one.allowed === undefined) ? exitCodes.no : exitCodes.done;
    });
  },
};

function allowedIn(path: string | undefined): ReadonlyMap<string, string> {
  if (path === undefined) return new Map();
  let content: unknown;
  try {
    content = JSON.parse(readFileSync(path, 'utf8'));
  } catch (error) {
    throw error instanceof SyntaxError
      ? misused(`${path} is not JSON.`)
      : cannotOpen(`The file ${path} cannot be read.`);
  }
  const allowed = new Map<string, string>();
  for (const one of Array.isArray(content) ? (content as unknown[]) : [content]) {
    const { decision, reason } = (one ?? {}) as { readonly decision?: unknown; readonly reason?: unknown };
    if (typeof decision !== 'string' || typeof reason !== 'string' || decision.trim() === '' || reason.trim() === '')
      throw misused(`${path} is not a list of decisions, each with a reason.`);
    allowed.set(decision, reason);
  }
  return allowed;
}

type Difference = {
  readonly decision: string;
  readonly patient: string;
  readonly on: string;
  readonly signed: Verdict;
  readonly now: Verdict | 'cannot be read';
  readonly because: string;
};
type Basis = BodyOfKind<'go-decision'>['basis'];

async function differencesIn(
  reader: StoreReader,
): Promise<{ readonly decisions: number; readonly differences: readonly Difference[] }> {
  const differences: Difference[] = [];
  let decisions = 0;
  for (const of of await reader.subjects('patient')) {
    const entries = await reader.ledger(of);
    for (const entry of entries) {
      if (entry.kind !== 'go-decision') continue;
      decisions += 1;
      const parsed = kindNamed('go-decision').body.safeParse(entry.body);
      const body = parsed.success ? (parsed.data as BodyOfKind<'go-decision'>) : undefined;
      if (body === undefined) {
        differences.push({
          decision: entry.id,
          patient: of,
          on: entry.effectiveAt.slice(0, 10),
          signed: 'cannot say',
          now: 'cannot be read',
          because: 'its body does not fit its kind',
        });
        continue;
      }
      const again = await decidedAgain(reader, of, entries, entry, body.basis);
      if (again.verdict === body.basis.verdict && again.protocolVersion === body.basis.protocolVersion) continue;
      differences.push({
        decision: entry.id,
        patient: of,
        on: body.basis.on,
        signed: body.basis.verdict,
        now: again.verdict,
        because: because(body.basis, again.protocolVersion),
      });
    }
  }
  return { decisions, differences };
}

function because(basis: Basis, protocolVersion: string): string {
  if (protocolVersion !== basis.protocolVersion)
    return `protocol ${basis.protocolVersion} then, ${protocolVersion} now`;
  return basis.ruleSet === RULE_SET
    ? 'same rules, same protocol: a defect then or now'
    : `rules ${basis.ruleSet} then, ${RULE_SET} now`;
}

/** The verdict of that day from the entries known then, by the unit where the person was. */
async function decidedAgain(
  reader: StoreReader,
  of: Subject,
  entries: readonly Entry[],
  decision: Entry,
  basis: Basis,
): Promise<{ readonly verdict: Verdict; readonly protocolVersion: string }> {
  const { record } = await readPerson(
    reader,
    of,
    entries.filter((entry) => entry.seq <= basis.knownSeq),
    { knownAt: decision.recordedAt },
  );
  const on = day(basis.on);
  const session = visitOn(record, on)?.arrived.body.session;
  const sessionSubject = session === undefined ? undefined : subject('session', session);
  const here =
    sessionSubject === undefined
      ? undefined
      : sessionOf(recordOf(sessionSubject, await reader.ledger(sessionSubject)))?.unit;
  const unit = await unitContext(reader, here ?? unitOfPatient(record), decision.recordedAt);
  const protocol = unit === undefined ? undefined : protocolInForceOn(unit.context.protocols, on);
  if (unit === undefined || protocol === undefined) return { verdict: 'cannot say', protocolVersion: 'none' };
  return { verdict: goVerdict(record, unit.context, on).verdict, protocolVersion: protocol.version };
}
