/**
 * The words of a person's own page, British English. Values in braces; a bar stands between the items of a list. No drug and no
 * diagnosis: others see a screen.
 */
export const ownPageWordsEnGB = {
  title: 'Your visit',
  bornTitle: 'Is this you?',
  bornAsk: 'Type your date of birth to open your page.',
  bornDay: 'Day',
  bornMonth: 'Month',
  bornYear: 'Year',
  bornOpen: 'Open my page',
  bornWrong: 'That is not the date we have. Look at it and try again.',
  bornWait: 'That was tried too often. Please wait {seconds} seconds.',
  closedTitle: 'This page is closed',
  closedSays: 'It may be too old, or a new one was sent to you. Please use the phone number on your letter.',

  notNow: 'This page is not for help in a hurry.',
  notNowItems:
    'Chest pain, or you cannot get your breath? Ring {emergency} now.|Face, lips or tongue swell? Ring {emergency} now.|No one reads this page at night or when we are closed.',

  dates: 'Your dates',
  visit: 'Your visit',
  visitAt: '{date} at {time}, {unit}',
  noVisit: 'You have no date yet. We will ring or write.',
  bloods: 'Blood test',
  bloodsAt: 'between {from} and {until}, not before',
  calendar: 'Put it in my calendar',
  pack: 'How to get ready',
  ringUs: 'Ring us',

  questions: 'Before your visit',
  questionsSay: 'Please tell us how you are. Leave out what you do not know. We ask all of this again on the day.',
  toldOn: 'You told us on {date}. You can tell us again if something has changed.',
  yes: 'Yes',
  no: 'No',
  more: 'Tell us more if you like',
  'unwell-now': 'Do you feel unwell now? Fever, a cold, being sick, loose stools?',
  'ill-since-bloods': 'Since your last blood test: have you been ill, in hospital, or had a scan with dye?',
  'new-medicine': 'Do you take a new medicine?',
  'other-bone-medicine': 'Do you take or get some other drug for your bones?',
  teeth: 'Does a tooth or your jaw hurt? Is a tooth loose, or has to come out? Is a gum not healed?',
  thigh: 'Do you have new pain in your thigh, hip or groin?',
  eye: 'Do you have a red or sore eye, or does light hurt it?',
  'can-drink': 'Can you drink plenty of water the day before and on the day?',
  otherDay: 'I need another day',
  otherDayHelp: 'Write which days suit you. Your place stays yours until we have talked to you.',
  send: 'Send this to the unit',
  nothing: 'You have not told us anything yet. Choose an answer, or ask for another day.',

  thanksTitle: 'Thank you',
  thanks: 'We have it now. A nurse looks at it on a working day.',
  thanksWorry: 'We may ring you about it. Come to your visit unless we tell you not to.',
  thanksWorse: 'If you get worse, do not wait for us. Ring your doctor, or {night} if they are closed.',
  thanksMove: 'We will ring you about another day. Until then your place is still yours.',
  back: 'Back to my page',

  paperTitle: 'Before your visit: how are you?',
  paperSay: 'Please tick, and bring this sheet or send it back before your visit. If something changes, ring us.',
  paperBack: 'Send it to {unit}, {address}, or ring {telephone}.',
  paperBackNoAddress: 'Bring it to {unit}, or ring {telephone}.',
  paperDay: 'I need another day. These days suit me:',

  slipTitle: 'Your own page',
  slipSay: 'Type this address on your phone or computer. It asks for your date of birth.',
  slipUntil: 'It works until {date}. Keep it to yourself.',
  night: '111',
  emergency: '999',
  demo: 'Demonstration: nobody here is real.',
} as const satisfies Readonly<Record<string, string>>;

export type OwnPageWords = Readonly<Record<keyof typeof ownPageWordsEnGB, string>>;
