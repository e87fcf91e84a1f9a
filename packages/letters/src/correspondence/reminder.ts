/** The few words of a message: whose place, when, where the own page is, whom to ring. Neither medicine nor reason: others see a telephone. */
import type { Day } from '@twelvemonth/clinical';
import { speakerOf } from '../speaker.ts';
import type { LetterLanguage } from './facts.ts';
import { letterWords } from './write-letter.ts';

export type ReminderFacts = {
  readonly language: LetterLanguage;
  readonly unit: { readonly name: string; readonly telephone: string };
  readonly on: Day;
  readonly arriveAt: string;
};

export function reminderOf({ language, unit, on, arriveAt }: ReminderFacts): {
  readonly title: string;
  readonly text: string;
} {
  const { say, date, time } = speakerOf(letterWords[language], language);
  return {
    title: say('reminderTitle', { date: date(on) }),
    text: say('reminder', { unit: unit.name, date: date(on), time: time(arriveAt), telephone: unit.telephone }),
  };
}

export type PageMessageFacts = Omit<ReminderFacts, 'on' | 'arriveAt'> & {
  readonly address: string;
  readonly until: Day;
};

/** The address of somebody's own page, for a message or on paper. Never with the birth date, which opens it. */
export function pageMessageOf({ language, unit, address, until }: PageMessageFacts): ReturnType<typeof reminderOf> {
  const { say, date } = speakerOf(letterWords[language], language);
  return {
    title: say('pageTitle'),
    text: say('pageText', { unit: unit.name, address, date: date(until), telephone: unit.telephone }),
  };
}
