/** The words of the patient pack, American English: what differs from British. */
import { type PackWords, wordsEnGB } from './words-en-gb.ts';

export const wordsEnUS: PackWords = {
  ...wordsEnGB,
  version: 'pack-us-2',
  noDate: 'We will call or write with your date.',
  cannotCome: 'If you cannot come, or feel sick, call {telephone}. We will find another day.',
  tellUsItems: wordsEnGB.tellUsItems.replace('you have been ill', 'you have been sick'),
  tablets: 'Take your pills as you do on other days, unless your doctor or nurse has told you not to.',
  bringItems: wordsEnGB.bringItems.replace('all your tablets', 'all your pills'),
  painTitle: 'Acetaminophen',
  painDoseOne: 'You may take 1 tablet of acetaminophen 500 mg, up to {times} times a day.',
  painDoseTwo: 'You may take 1 or 2 tablets of acetaminophen 500 mg, up to {times} times a day.',
  painOther: 'Check that nothing else you take has acetaminophen in it. Ask first if you take warfarin.',
  painAsk: 'Ask your nurse how much acetaminophen you may take before you take it.',
  ring: 'Call us at {telephone} if',
  ringItems: wordsEnGB.ringItems
    .replace('above 39 degrees', 'above 102 F')
    .replace('ring the same day', 'call the same day'),
  closedLine: 'If we are closed, call the line your doctor has for nights.',
  emergency: 'Call 911 at once if',
  calledNow: 'It is time to plan it. We will call or write to you.',
  worryNow: 'If you have not heard from us yet, call {telephone}.',
  whoCalls: 'We will call or write to you from {date}. You need do nothing before that.',
  worry: 'If you have not heard from us by {date}, call {telephone}.',
  easyRing: 'Feel very bad, or not sure? Call {telephone}.',
  easyEmergency: 'Chest pain, or you cannot breathe well? Call 911.',
};
