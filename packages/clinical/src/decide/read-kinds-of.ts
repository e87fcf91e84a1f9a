/**
 * Kinds of entry an act's outcome rests on. If someone else wrote one of these since the sender looked, the sender sees both
 * before anything is written; entries of other kinds do no harm.
 */
import { type KindName, kindNames } from '../kinds/index.ts';
import type { Act } from './act.ts';

const ends: readonly KindName[] = ['died', 'closed', 'reopened', 'withdrawal'];
const lists: readonly KindName[] = [
  'session-planned',
  'session-cancelled',
  'session-place-taken',
  'session-place-released',
  'place-booked',
  'place-given-up',
];
const visit: readonly KindName[] = [
  'arrived',
  'observations',
  'checklist',
  'go-decision',
  'cannula',
  'flush',
  'preparation',
  'second-check',
  'infusion-started',
  'infusion-paused',
  'infusion-resumed',
  'infusion-finished',
  'dose-held',
  'dose',
  'cannula-removed',
  'left',
];
/** What is prepared and given rests on the order and on the pharmacist's word about it. */
const order: readonly KindName[] = ['prescription', 'pharmacy-check', 'pharmacy-answer'];
/** Being in touch with someone changes nothing that a dose is decided by. */
const withoutWeight: ReadonlySet<KindName> = new Set([
  'call',
  'advice-call',
  'advice-answered',
  'letter',
  'letter-drafted',
  'letter-sent',
  'letter-answered',
  'message-begun',
  'message-ended',
  'own-page',
  'page-sent',
  'reminders-plan',
  'told-ahead',
  'contact',
  'contact-person',
  'told-of-batch',
  'patient-pack',
  'recall-talk',
  'red-flag-passed-on',
  'reaction-reported',
  'support-booking',
  'sent-all-the-same',
]);
const clinical: readonly KindName[] = kindNames.filter((kind) => !withoutWeight.has(kind));

export function readKindsOf(act: Act): readonly KindName[] {
  switch (act.name) {
    case 'record':
      return linesRead([act.line]);
    case 'record together':
    case 'take in':
      return linesRead(act.lines);
    case 'book':
    case 'move':
    case 'decide':
    case 'order under direction':
      return clinical;
    case 'give up place':
    case 'tell times':
      return [...lists, 'arrived'];
    case 'second check':
    case 'start infusion':
    case 'give injection':
    case 'pause infusion':
    case 'resume infusion':
    case 'finish infusion':
      return [...visit, ...ends, ...order];
    case 'plan session':
    case 'cancel session':
      return lists;
    // Another naming meanwhile does no harm: the newest counts, and everybody sees it.
    case 'name nurse':
      return [...lists, 'session-opened', 'session-closed'];
    case 'may be one':
    case 'say one person':
    case 'confirm one person':
    case 'say two people':
    case 'read apart':
      return ['same-person', 'identity', 'contact', 'place-booked', 'place-given-up', 'arrived', 'withdrawal'];
    case 'write advice call':
    case 'write unknown call':
      // A call is a call, whatever else was written meanwhile.
      return [];
    case 'settle unknown call':
      return ['unknown-call-settled'];
    case 'register':
    case 'move entry':
    case 'withdraw':
    case 'record competence':
    case 'open session':
    case 'close session':
    case 'accept handover':
    case 'set unit':
    case 'set formulary':
    case 'write direction':
    case 'sign direction':
    case 'end direction':
    case 'order packs':
    case 'close order':
    case 'receive packs':
    case 'withdraw receipt':
    case 'count packs':
    case 'take out packs':
    case 'stop batch':
    case 'release batch':
    case 'write protocol':
    case 'sign protocol':
    case 'note import':
    case 'settle row':
      return kindNames;
  }
}

const visitKinds: ReadonlySet<KindName> = new Set(visit);

function linesRead(lines: readonly { readonly kind: KindName }[]): readonly KindName[] {
  const kinds = lines.map(({ kind }) => kind);
  // A review of the course, and closing, rest on all that is known: a fracture or a dose told meanwhile is read before.
  if (kinds.includes('course-review') || kinds.includes('closed')) return clinical;
  return [
    ...new Set([
      ...kinds,
      ...ends,
      ...(kinds.some((kind) => visitKinds.has(kind)) ? visit : []),
      ...(kinds.some((kind) => kind === 'preparation' || order.includes(kind)) ? order : []),
    ]),
  ];
}
