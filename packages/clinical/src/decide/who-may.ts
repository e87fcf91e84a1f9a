/**
 * Who may do which act. Nobody may do what is not named here. Where an act writes entries chosen by the sender, each
 * entry's own kind says who may write it.
 */
import { entryKinds } from '../kinds/index.ts';
import { type Role, careRoles, infusionNurses, registrants } from '../ledger/role.ts';
import type { ActName } from './act.ts';

/** The kinds of entry an act carries say who may do it. */
const byKind = 'those who may write the entry' as const;

const mayDo: Readonly<Record<ActName, readonly Role[] | typeof byKind>> = {
  register: careRoles,
  record: byKind,
  'record together': byKind,
  withdraw: byKind,
  'move entry': registrants,
  'may be one': careRoles,
  'say one person': careRoles,
  'confirm one person': registrants,
  'say two people': careRoles,
  'read apart': registrants,
  'plan session': entryKinds['session-planned'].writes,
  'cancel session': entryKinds['session-cancelled'].writes,
  book: careRoles,
  move: careRoles,
  'give up place': careRoles,
  'write advice call': entryKinds['advice-call'].writes,
  'write unknown call': entryKinds['unknown-call'].writes,
  'settle unknown call': entryKinds['unknown-call-settled'].writes,
  'tell times': careRoles,
  decide: infusionNurses,
  'second check': registrants,
  'start infusion': infusionNurses,
  'give injection': infusionNurses,
  'pause infusion': infusionNurses,
  'resume infusion': infusionNurses,
  'finish infusion': infusionNurses,
  'record competence': entryKinds.competence.writes,
  'open session': entryKinds['session-opened'].writes,
  'close session': entryKinds['session-closed'].writes,
  'accept handover': entryKinds['handover-accepted'].writes,
  'name nurse': entryKinds['named-nurse'].writes,
  'set unit': entryKinds['unit-settings'].writes,
  'set formulary': entryKinds.formulary.writes,
  'write direction': entryKinds['group-direction'].writes,
  'sign direction': entryKinds['group-direction-signed'].writes,
  'end direction': entryKinds['group-direction-ended'].writes,
  'order under direction': infusionNurses,
  'order packs': entryKinds['packs-ordered'].writes,
  'close order': entryKinds['packs-order-closed'].writes,
  'receive packs': entryKinds['batch-received'].writes,
  'withdraw receipt': entryKinds['batch-received'].writes,
  'count packs': entryKinds['batch-counted'].writes,
  'take out packs': entryKinds['batch-taken-out'].writes,
  'stop batch': entryKinds['batch-stopped'].writes,
  'release batch': entryKinds['batch-released'].writes,
  'write protocol': entryKinds['protocol-written'].writes,
  'sign protocol': entryKinds['protocol-signed'].writes,
  'take in': careRoles,
  'note import': entryKinds['import-run'].writes,
  'settle row': entryKinds['row-settled'].writes,
};

/** Every role that may do the act at all; for acts that carry entries, anyone in care, and the entry's kind decides. */
export const rolesFor = (act: ActName): readonly Role[] => {
  const roles = mayDo[act];
  return roles === byKind ? careRoles : roles;
};

export const mayDoAct = (role: Role, act: ActName): boolean => rolesFor(act).includes(role);

/** Accepting trouble on a list is a judgement: registered staff only. */
export const mayAcceptTrouble = (role: Role): boolean => registrants.includes(role);
