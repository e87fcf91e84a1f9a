/** Whose notes an act reads or writes: the shell locks these ledgers and hands them to `decide`. */
import { type Subject, subject } from '../ledger/subject.ts';
import { preparation } from '../kinds/preparation.ts';
import { batchSubject, packSubject } from '../ledger/batch-subject.ts';
import type { Act } from './act.ts';

/** Ascending and without doubles, the order in which ledgers are locked. */
export const subjectsOf = (act: Act): readonly Subject[] => [...new Set(named(act))].toSorted();

function named(act: Act): readonly Subject[] {
  switch (act.name) {
    case 'register':
      return [
        subject('patient', act.patient),
        subject('unit', act.referral.unit),
        ...(act.notTheSameAs ?? []).map((other) => subject('patient', other)),
      ];
    case 'record':
      return [subject('patient', act.patient), ...besidesOfLine(act.line)];
    case 'record together':
      return [subject('patient', act.patient), ...act.lines.flatMap(besidesOfLine)];
    case 'plan session':
      return [subject('session', act.session), subject('unit', act.body.unit)];
    case 'cancel session':
      return [subject('session', act.session)];
    case 'book':
    case 'give up place':
      return [subject('patient', act.patient), subject('session', act.session)];
    case 'tell times':
      return [subject('session', act.session), ...act.times.map(({ patient }) => subject('patient', patient))];
    case 'move':
      return [subject('patient', act.patient), subject('session', act.from), subject('session', act.to)];
    case 'open session':
      return [
        subject('session', act.session),
        subject('unit', act.unit),
        ...act.body.counts.map(({ batch }) => batchSubject(batch)),
      ];
    case 'close session':
      return [subject('session', act.session), ...act.body.counts.map(({ batch }) => batchSubject(batch))];
    case 'accept handover':
    case 'name nurse':
      return [subject('session', act.session)];
    case 'settle unknown call':
      return [
        subject('unit', act.unit),
        ...(act.body.patient === undefined ? [] : [subject('patient', act.body.patient)]),
      ];
    case 'write unknown call':
    case 'record competence':
    case 'set unit':
    case 'set formulary':
    case 'write direction':
    case 'sign direction':
    case 'end direction':
    case 'order packs':
    case 'close order':
      return [subject('unit', act.unit)];
    case 'write protocol':
    case 'sign protocol':
      return [subject('protocol', act.unit), subject('unit', act.unit)];
    case 'receive packs':
    case 'count packs':
    case 'take out packs':
      return [batchSubject(act.body.batch), subject('unit', act.body.unit)];
    case 'withdraw receipt':
      return [batchSubject(act.batch), subject('unit', act.unit)];
    case 'stop batch':
    case 'release batch':
      return [batchSubject(act.body.batch)];
    case 'note import':
    case 'settle row':
      return [subject('register', act.register)];
    case 'move entry':
      return [subject('patient', act.patient), subject('patient', act.to)];
    case 'may be one':
    case 'say one person':
    case 'confirm one person':
    case 'say two people':
    case 'read apart':
      return [subject('patient', act.patient), subject('patient', act.other)];
    case 'write advice call':
    case 'withdraw':
    case 'order under direction':
    case 'decide':
    case 'second check':
    case 'start infusion':
    case 'give injection':
    case 'pause infusion':
    case 'resume infusion':
    case 'finish infusion':
    case 'take in':
      return [subject('patient', act.patient)];
  }
}

type Line = { readonly kind: string; readonly body?: unknown };

const besidesOfLine = (line: Line): readonly Subject[] => [...sessionOfLine(line), ...packOfLine(line)];

/** A preparation reads the notes of the batch, and writes into those of the pack. */
function packOfLine(line: Line): readonly Subject[] {
  if (line.kind !== 'preparation') return [];
  const read = preparation.body.safeParse(line.body);
  if (!read.success) return [];
  const { batch, scan } = read.data;
  return [batchSubject(batch), ...(scan?.serial === undefined ? [] : [packSubject(scan.productNumber, scan.serial)])];
}

/** An arrival names the session whose list must hold the person. */
function sessionOfLine(line: Line): readonly Subject[] {
  if (line.kind !== 'arrived' || typeof line.body !== 'object' || line.body === null) return [];
  const { session } = line.body as { session?: unknown };
  return typeof session === 'string' && /^[A-Za-z0-9._-]{1,80}$/.test(session) ? [subject('session', session)] : [];
}
