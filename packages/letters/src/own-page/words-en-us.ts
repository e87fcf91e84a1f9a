/** The words of a person's own page, American English: what differs from British. */
import { type OwnPageWords, ownPageWordsEnGB } from './words-en-gb.ts';

const called = (text: string): string => text.replaceAll('Ring ', 'Call ').replaceAll('ring ', 'call ');

export const ownPageWordsEnUS: OwnPageWords = {
  ...ownPageWordsEnGB,
  notNowItems: called(ownPageWordsEnGB.notNowItems),
  noVisit: called(ownPageWordsEnGB.noVisit),
  ringUs: 'Call us',
  'unwell-now': 'Do you feel sick now? Fever, a cold, throwing up, loose stools?',
  'ill-since-bloods': 'Since your last blood test: have you been sick, in a hospital, or had a scan with dye?',
  'new-medicine': 'Do you take a new drug?',
  thanksWorry: called(ownPageWordsEnGB.thanksWorry),
  thanksWorse: 'If you get worse, do not wait for us. Call your doctor, or {night} if they are closed.',
  thanksMove: called(ownPageWordsEnGB.thanksMove),
  afterWell: 'If you get worse, do not wait for us. Call your doctor, or {night} if they are closed.',
  paperSay: called(ownPageWordsEnGB.paperSay),
  paperBack: called(ownPageWordsEnGB.paperBack),
  paperBackNoAddress: called(ownPageWordsEnGB.paperBackNoAddress),
  night: 'the line your doctor has for nights',
  emergency: '911',
  degrees: 'degrees F, like 99.4',
  paracetamolName: 'acetaminophen',
};
