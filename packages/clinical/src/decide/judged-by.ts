/** By whose protocol, zone and date an act is judged: the unit named here, that of the session named, or the person's own. */
import { referral } from '../kinds/referral.ts';
import { type Subject, subject } from '../ledger/subject.ts';
import type { Act } from './act.ts';

/** Undefined for a batch, which belongs to the whole service. */
export function judgedBy(act: Act): Subject | undefined {
  switch (act.name) {
    case 'register':
      return subject('unit', act.referral.unit);
    case 'plan session':
    case 'receive packs':
    case 'count packs':
    case 'take out packs':
      return subject('unit', act.body.unit);
    case 'write unknown call':
    case 'settle unknown call':
    case 'record competence':
    case 'open session':
    case 'set unit':
    case 'set formulary':
    case 'write direction':
    case 'sign direction':
    case 'end direction':
    case 'order packs':
    case 'withdraw receipt':
    case 'close order':
    case 'write protocol':
    case 'sign protocol':
      return subject('unit', act.unit);
    case 'note import':
    case 'settle row':
      return subject('unit', act.register);
    case 'cancel session':
    case 'close session':
    case 'accept handover':
    case 'name nurse':
    case 'book':
    case 'tell times':
      return subject('session', act.session);
    case 'move':
      return subject('session', act.to);
    case 'stop batch':
    case 'release batch':
      return undefined;
    case 'take in': {
      const referred = act.lines.find(({ kind }) => kind === 'referral');
      const read = referral.body.safeParse(referred?.body);
      return read.success ? subject('unit', read.data.unit) : subject('patient', act.patient);
    }
    case 'write advice call':
    case 'record':
    case 'record together':
    case 'withdraw':
    case 'order under direction':
    case 'move entry':
    case 'may be one':
    case 'say one person':
    case 'confirm one person':
    case 'say two people':
    case 'read apart':
    case 'give up place':
    case 'decide':
    case 'second check':
    case 'start infusion':
    case 'give injection':
    case 'pause infusion':
    case 'resume infusion':
    case 'finish infusion':
      return subject('patient', act.patient);
  }
}
