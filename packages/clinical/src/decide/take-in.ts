/** One row of a register, taken in as a whole or not at all: a new person, or more facts of a known one. */
import { kindNamed } from '../kinds/index.ts';
import type { Draft } from '../ledger/entry.ts';
import { subject } from '../ledger/subject.ts';
import { heldBy } from '../standing/standing.ts';
import { newestWritten } from '../record/newest-written.ts';
import type { ActNamed } from './act.ts';
import { checkCareGoesOn } from './check-care.ts';
import { fieldWrong } from './check-fields.ts';
import { underHomeRule } from './check-home-dose.ts';
import { checkLine, checkNewLine } from './check-line.ts';
import { draftOf } from './draft.ts';
import { after } from './extended.ts';
import { historyKinds } from './hand-written.ts';
import { recordIn } from './ledgers.ts';
import { type Refusal } from './refusal.ts';
import { decided, refusal } from './refuse.ts';
import { noteLookAlikes } from './same-person.ts';
import type { Decided, Surroundings } from './surroundings.ts';

export function decideTakeIn(act: ActNamed<'take in'>, start: Surroundings): Decided {
  const of = subject('patient', act.patient);
  const before = recordIn(start, of);
  const refusals: Refusal[] = [];
  if (act.isNew && before.lastSeq > 0)
    refusals.push(
      refusal('already-registered', 'This person has notes here already.', {
        remedy: 'take the row in as more facts of theirs',
      }),
    );
  if (!act.isNew && before.lastSeq === 0)
    refusals.push(
      refusal('unknown-patient', 'There are no notes of this person here.', {
        remedy: 'take the row in as a new person',
      }),
    );
  const drafts: Draft[] = [];
  let now = start;
  for (const [index, line] of act.lines.entries()) {
    const path = `lines.${index}`;
    if (!historyKinds.has(line.kind)) {
      refusals.push(
        fieldWrong(
          `${path}.kind`,
          `"${kindNamed(line.kind).label}" is not brought in from a register`,
          'have it decided and written here',
        ),
      );
      continue;
    }
    const record = recordIn(now, of);
    const { fact, refusals: wrong } = checkLine(record, line, path, now, true);
    refusals.push(...wrong);
    if (fact === undefined || wrong.length > 0) continue;
    const trouble = act.isNew ? checkCareGoesOn(record, fact.kind, fact.on, now) : checkNewLine(record, fact, now);
    refusals.push(...trouble);
    if (trouble.length > 0) continue;
    const draft = draftOf(of, fact.kind, underHomeRule(fact, now), line.effectiveAt, now.zone);
    drafts.push(draft);
    now = after([draft], now);
  }
  if (refusals.length === 0) refusals.push(...checkWhole(act, now));
  const saysWho = act.lines.some(({ kind }) => kind === 'identity');
  return decided(refusals, () => (saysWho ? [...drafts, ...noteLookAlikes(act.patient, start)] : drafts));
}

/** A person who comes in has a name and a standing. */
function checkWhole(act: ActNamed<'take in'>, now: Surroundings): readonly Refusal[] {
  const record = recordIn(now, subject('patient', act.patient));
  const refusals: Refusal[] = [];
  if (newestWritten(record, 'identity') === undefined)
    refusals.push(fieldWrong('lines', 'nobody can tell who this is', 'a line with name, birth date and number'));
  if (heldBy(record, now.today).held === 'not accounted for') {
    refusals.push(
      refusal('not-possible-from-here', 'Nothing says why this person is ours: no referral and no dose.', {
        field: 'lines',
        remedy: 'add who referred them and when, or a dose',
      }),
    );
  }
  return refusals;
}
