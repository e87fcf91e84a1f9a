/**
 * What an act does: drafts for one or several ledgers, or every reason why not, in order. Pure: the same act in the same
 * surroundings gives the same answer, so the shell may ask again when a ledger has moved on. Everything is checked before
 * anything is written; after the last check nothing refuses.
 */
import type { Act } from './act.ts';
import { decideBook, decideGiveUp, decideMove } from './book.ts';
import { decideAdviceCall, decideSettleCall, decideUnknownCall } from './calls.ts';
import { decideTellTimes } from './tell-times.ts';
import { decideGiveInjection } from './give-injection.ts';
import { checkHeldHere, withHold } from './held-dose.ts';
import {
  decideEndDirection,
  decideOrderUnderDirection,
  decideSignDirection,
  decideWriteDirection,
} from './group-directions.ts';
import { decideGo } from './go.ts';
import { decideNoteImport, decideSettleRow } from './import-notes.ts';
import { decideFinish } from './finish-infusion.ts';
import { decidePause, decideResume } from './pause-infusion.ts';
import { decideSignProtocol, decideWriteProtocol } from './protocol.ts';
import { decideRecord, decideRecordTogether } from './record-lines.ts';
import { decideMoveEntry } from './move-entry.ts';
import { decideNameNurse } from './name-nurse.ts';
import { checkReadHere } from './read-here.ts';
import { decided, notYours } from './refuse.ts';
import { decideRegister } from './register.ts';
import { decideConfirmOne, decideMayBeOne, decideReadApart, decideSayOne, decideSayTwo } from './same-person.ts';
import { decideStart } from './start-infusion.ts';
import { decideSecondCheck } from './second-check.ts';
import { decideAcceptHandover, decideCloseSession, decideOpenSession, decideRecordCompetence } from './session-day.ts';
import { decideCancelSession, decidePlanSession } from './sessions.ts';
import {
  decideCloseOrder,
  decideCountPacks,
  decideOrderPacks,
  decideReceivePacks,
  decideReleaseBatch,
  decideSetFormulary,
  decideStopBatch,
  decideTakeOutPacks,
  decideWithdrawReceipt,
} from './stock.ts';
import { decideSetUnit } from './set-unit.ts';
import type { Decided, Surroundings } from './surroundings.ts';
import { decideTakeIn } from './take-in.ts';
import { mayDoAct, rolesFor } from './who-may.ts';
import { decideWithdraw } from './withdraw.ts';

/** Acts whose entries say themselves who may write them. */
const judgedByKind: ReadonlySet<Act['name']> = new Set(['record', 'record together', 'withdraw']);

export function decide(act: Act, now: Surroundings): Decided {
  const { role } = now.by;
  if (!judgedByKind.has(act.name) && !mayDoAct(role, act.name))
    return {
      refusals: [notYours(role, act.name === 'second check' ? 'make the second check' : act.name, rolesFor(act.name))],
    };
  const elsewhere = checkReadHere(act, now);
  const held = checkHeldHere(act, now);
  if (elsewhere.length + held.length > 0) return decided([...elsewhere, ...held], () => []);
  return withHold(act, decideAct(act, now), now);
}

function decideAct(act: Act, now: Surroundings): Decided {
  switch (act.name) {
    case 'register':
      return decideRegister(act, now);
    case 'record':
      return decideRecord(act, now);
    case 'record together':
      return decideRecordTogether(act, now);
    case 'withdraw':
      return decideWithdraw(act, now);
    case 'move entry':
      return decideMoveEntry(act, now);
    case 'may be one':
      return decideMayBeOne(act, now);
    case 'say one person':
      return decideSayOne(act, now);
    case 'confirm one person':
      return decideConfirmOne(act, now);
    case 'say two people':
      return decideSayTwo(act, now);
    case 'read apart':
      return decideReadApart(act, now);
    case 'plan session':
      return decidePlanSession(act, now);
    case 'cancel session':
      return decideCancelSession(act, now);
    case 'book':
      return decideBook(act, now);
    case 'move':
      return decideMove(act, now);
    case 'tell times':
      return decideTellTimes(act, now);
    case 'give up place':
      return decideGiveUp(act, now);
    case 'write advice call':
      return decideAdviceCall(act, now);
    case 'write unknown call':
      return decideUnknownCall(act, now);
    case 'settle unknown call':
      return decideSettleCall(act, now);
    case 'decide':
      return decideGo(act, now);
    case 'second check':
      return decideSecondCheck(act, now);
    case 'start infusion':
      return decideStart(act, now);
    case 'give injection':
      return decideGiveInjection(act, now);
    case 'pause infusion':
      return decidePause(act, now);
    case 'resume infusion':
      return decideResume(act, now);
    case 'finish infusion':
      return decideFinish(act, now);
    case 'record competence':
      return decideRecordCompetence(act, now);
    case 'open session':
      return decideOpenSession(act, now);
    case 'close session':
      return decideCloseSession(act, now);
    case 'accept handover':
      return decideAcceptHandover(act, now);
    case 'name nurse':
      return decideNameNurse(act, now);
    case 'set unit':
      return decideSetUnit(act, now);
    case 'set formulary':
      return decideSetFormulary(act, now);
    case 'write direction':
      return decideWriteDirection(act, now);
    case 'sign direction':
      return decideSignDirection(act, now);
    case 'end direction':
      return decideEndDirection(act, now);
    case 'order under direction':
      return decideOrderUnderDirection(act, now);
    case 'order packs':
      return decideOrderPacks(act, now);
    case 'close order':
      return decideCloseOrder(act, now);
    case 'receive packs':
      return decideReceivePacks(act, now);
    case 'withdraw receipt':
      return decideWithdrawReceipt(act, now);
    case 'count packs':
      return decideCountPacks(act, now);
    case 'take out packs':
      return decideTakeOutPacks(act, now);
    case 'stop batch':
      return decideStopBatch(act, now);
    case 'release batch':
      return decideReleaseBatch(act, now);
    case 'write protocol':
      return decideWriteProtocol(act, now);
    case 'sign protocol':
      return decideSignProtocol(act, now);
    case 'take in':
      return decideTakeIn(act, now);
    case 'note import':
      return decideNoteImport(act, now);
    case 'settle row':
      return decideSettleRow(act, now);
  }
}
