/** A talk before the next dose while it is written, and the entries it becomes. What is left open is not written. */
import { type bloodsAgreed, type toldBy, type wishes } from '@twelvemonth/clinical';
import { present } from '../fields/present.ts';

export const routes = ['telephone', 'they rang us', 'message', 'letter', 'family doctor'] as const;
export const teethAnswers = [
  { value: 'nothing pending', says: 'nothing' },
  { value: 'work pending', says: 'work planned' },
  { value: 'socket not healed', says: 'a gap that has not healed' },
  { value: 'jaw pain or loose tooth', says: 'jaw pain or a loose tooth' },
  { value: 'sore or loose denture', says: 'a sore or loose denture' },
  { value: 'cannot get a dentist', says: 'cannot get a dentist' },
] as const;

export type RecallTalk = {
  readonly route: (typeof routes)[number] | undefined;
  readonly by: (typeof toldBy)[number] | undefined;
  readonly wants: Exclude<(typeof wishes)[number], 'no'> | undefined;
  readonly teeth: (typeof teethAnswers)[number]['value'] | undefined;
  readonly vitaminD: 'yes' | 'no' | undefined;
  readonly address: 'right' | 'changed' | undefined;
  readonly bloods: (typeof bloodsAgreed)[number] | undefined;
  readonly note: string;
};
export const nothingAsked: RecallTalk = {
  route: undefined,
  by: undefined,
  wants: undefined,
  teeth: undefined,
  vitaminD: undefined,
  address: undefined,
  bloods: undefined,
  note: '',
};

type Line = { readonly kind: string; readonly body: object; readonly effectiveAt: string };

export function linesOf(talk: RecallTalk, today: string): readonly Line[] {
  const { route, by, wants, teeth, vitaminD, address, bloods } = talk;
  const note = talk.note.trim() === '' ? undefined : talk.note.trim();
  const line = (kind: string, body: object): Line => ({
    kind,
    body: present(body),
    effectiveAt: today,
  });
  return [
    line('call', { route, about: 'recall', reached: true }),
    line('recall-talk', { toldBy: by, wants, address, bloods, note }),
    ...(teeth === undefined ? [] : [line('dental', { answer: teeth })]),
    ...(vitaminD === undefined ? [] : [line('vitamin-d-maintenance', { taken: vitaminD === 'yes' })]),
  ];
}
