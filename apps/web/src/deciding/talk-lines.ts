/** A talk while it is being written, the lines it becomes, and what follows from them. */
import { talkTopics } from '@twelvemonth/clinical';
import { present } from '../fields/present.ts';
import { shortDay } from '../words/dates.ts';

export type Topic = (typeof talkTopics)[number];
export const decisions = [
  { value: 'this treatment', says: 'The yearly drip' },
  { value: 'another treatment', says: 'Another treatment' },
  { value: 'no treatment', says: 'No treatment' },
  { value: 'not now', says: 'Not now' },
  { value: 'more time', says: 'More time to think' },
] as const;
export type Decision = (typeof decisions)[number]['value'];

export const teachBacks = [
  { value: 'said it back' },
  { value: 'said it back at the second go' },
  { value: 'could not yet' },
  { value: 'not asked' },
] as const;
export type TeachBack = (typeof teachBacks)[number]['value'];
export const consents = [
  { value: 'in writing', says: 'Yes, in writing' },
  { value: 'spoken', says: 'Yes, spoken' },
  { value: 'later', says: 'Not asked today' },
] as const;
export type ConsentGiven = (typeof consents)[number]['value'];

export type TalkEntered = {
  readonly topics: readonly Topic[];
  readonly matters: string;
  readonly teachBack: TeachBack | undefined;
  readonly present: string;
  readonly leaflet: string;
  readonly cardGiven: 'yes' | 'no' | undefined;
  readonly decision: Decision | undefined;
  readonly words: string;
  readonly askAgainOn: string | undefined;
  readonly consent: ConsentGiven | undefined;
};
export const nothingSaid: TalkEntered = {
  topics: [],
  matters: '',
  teachBack: undefined,
  present: '',
  leaflet: '',
  cardGiven: undefined,
  decision: undefined,
  words: '',
  askAgainOn: undefined,
  consent: undefined,
};

const said = (text: string): string | undefined => (text.trim() === '' ? undefined : text.trim());
export const waits = (decision: Decision | undefined): boolean => decision === 'not now' || decision === 'more time';

/**
 * The talk, and what the decision means for where the person stands: "not now" is a no to this dose with its day, "no
 * treatment" a no to this medicine; consent only where it was asked. Nothing that is left open is filled in.
 */
export function linesOf(
  talk: TalkEntered,
  today: string,
): readonly { kind: string; body: object; effectiveAt: string }[] {
  const { decision, consent } = talk;
  const askAgainOn = waits(decision) || decision === 'no treatment' ? talk.askAgainOn : undefined;
  const body = {
    topics: talk.topics,
    matters: said(talk.matters),
    teachBack: talk.teachBack,
    present: said(talk.present),
    leaflet: said(talk.leaflet),
    cardGiven: talk.cardGiven === undefined ? undefined : talk.cardGiven === 'yes',
    decision,
    words: said(talk.words),
    askAgainOn,
  };
  const line = (kind: string, of: object) => ({ kind, body: present(of), effectiveAt: today });
  const no = (to: string) => line('refusal', { to, words: said(talk.words), askAgainOn });
  return [
    line('talk', body),
    ...(decision === 'not now' ? [no('this dose')] : []),
    ...(decision === 'no treatment' ? [no('this medicine')] : []),
    ...(decision === 'this treatment' && (consent === 'in writing' || consent === 'spoken')
      ? [line('consent', { decision: 'given', how: consent })]
      : []),
  ];
}

/** Said before it is recorded. */
export function followsFrom({ decision, askAgainOn, consent, teachBack, cardGiven }: TalkEntered): readonly string[] {
  const day = askAgainOn === undefined ? 'the day you give' : shortDay(askAgainOn);
  const next: Readonly<Record<Decision, string>> = {
    'this treatment':
      consent === 'in writing' || consent === 'spoken'
        ? 'Consent is recorded, and asked again on the day.'
        : 'Consent is still to be asked.',
    'another treatment': 'A prescriber decides about the other treatment. Tell them.',
    'no treatment': 'It is recorded as a no to this medicine. Nobody is recalled for it.',
    'not now': `It is recorded as a no to this dose. We may ask again on ${day}.`,
    'more time': `Nothing changes yet. On ${day} it stands on the list of work.`,
  };
  return [
    ...(decision === undefined ? [] : [next[decision]]),
    ...(teachBack === 'could not yet' ? ['Tell it again another way, or with someone they trust, before a dose.'] : []),
    ...(decision === 'this treatment' && cardGiven === 'no' ? ['The reminder card is still to be given.'] : []),
  ];
}
