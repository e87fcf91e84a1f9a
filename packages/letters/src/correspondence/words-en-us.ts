/** The words of the letters, American English: what differs from British. */
import { type LetterWords, letterWordsEnGB } from './words-en-gb.ts';

const called = (text: string): string => text.replace('ring {telephone}', 'call {telephone}');

export const letterWordsEnUS: LetterWords = {
  ...letterWordsEnGB,
  version: 'letters-us-2',
  sincerely: 'Sincerely',
  question: 'If you have a question, call {telephone}.',
  worry: called(letterWordsEnGB.worry),
  invitationTellItems: letterWordsEnGB.invitationTellItems.replace('you have been ill', 'you have been sick'),
  invitationCannot: called(letterWordsEnGB.invitationCannot),
  bloodsTests: 'For the person who draws the blood',
  weWillRing: 'We will call or write to you.',
  worryNow: called(letterWordsEnGB.worryNow),
  noAnswerTitle: 'Please call us',
  noAnswerRing: 'Please call {telephone} by {date}.',
  reviewBreakMeans: 'You need no {treatment} until then. We will call or write to you.',
  reviewOtherWorry: called(letterWordsEnGB.reviewOtherWorry),
  closingBack: 'If you want to come back, call us or ask your doctor.',
  wantedBloods: 'draw blood: creatinine and calcium with albumin, {when};',
  wantedBloodsOpen: 'draw blood: creatinine and calcium with albumin;',
  repliedBloods: 'Creatinine, calcium, albumin, and the day of the sample',
  dentistDoNot: called(letterWordsEnGB.dentistDoNot),
  reminder: called(letterWordsEnGB.reminder),
  pageText: called(letterWordsEnGB.pageText),
  sendBackTo: 'Please send this form back to {address}, or call {telephone}.',
};
