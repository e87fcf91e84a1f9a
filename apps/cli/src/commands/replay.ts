/** Every signed decision in the notes decided again (clinical core, replay). A difference that is let pass needs a reason. */
import { readFileSync } from 'node:fs';
import { type Proof, type SignedKind, RULE_SET, contextsThen, replay } from '@twelvemonth/clinical';
import { type StoreReader, ledgersOfPerson, ledgersOfService } from '@twelvemonth/store';
import { columnsText, jsonText } from '../columns.ts';
import { type Command, readOptions } from '../command.ts';
import { cannotOpen, exitCodes, misused } from '../ending.ts';
import { placeHelp, placeOptions, withNotes } from '../notes-place.ts';

export const replayCommand: Command = {
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
      const proofs = await proofsIn(reader);
      const told = proofs
        .filter(({ holds }) => !holds)
        .map(({ entry, kind, patient, on, signed, now, because }) => ({
          decision: entry,
          kind,
          patient,
          on,
          signed,
          now,
          because,
          allowed: allowed.get(entry),
        }));
      const of = (kind: SignedKind): number => proofs.filter((proof) => proof.kind === kind).length;
      const decisions = of('go-decision');
      if (values.json) output.out(jsonText({ decisions, ruleSet: RULE_SET, differences: told }));
      else if (told.length > 0) {
        output.out(
          columnsText(
            ['decision', 'patient', 'on', 'signed', 'now', 'why it may differ'],
            told.map((one) => [one.decision, one.patient, one.on, one.signed, one.now, one.allowed ?? one.because]),
          ),
        );
      }
      for (const id of allowed.keys())
        if (!told.some(({ decision }) => decision === id))
          output.aside(`${id} is allowed to differ and does not: take it off the list`);
      output.aside(
        `${decisions} signed decisions, ${told.length} come out differently, ${told.filter((one) => one.allowed !== undefined).length} of them allowed; bookings looked at again: ${of('place-booked')}, exceptions: ${of('prescriber-exception')}; rules ${RULE_SET}`,
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

async function proofsIn(reader: StoreReader): Promise<readonly Proof[]> {
  const service = await ledgersOfService(reader);
  const contexts = contextsThen();
  const proofs: Proof[] = [];
  for (const of of await reader.subjects('patient'))
    proofs.push(...replay(of, await ledgersOfPerson(reader, of, service), contexts));
  return proofs;
}
