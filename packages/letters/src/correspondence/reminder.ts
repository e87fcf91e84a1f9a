/** The few words of a reminder: whose place, when, whom to ring. Neither medicine nor reason: others see a telephone. */
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
