/**
 * The words of the patient pack, British English. One place for all of them: another language is another object of the same
 * keys. `{name}` is filled in. Content: practice page 8 and 1b (common practice, no source where nothing is named), fact sheet 7
 * (warning signs), 5c (Black 2007 NEJM 356:1809: 32, 7 and 3 of 100), product text 4.2, 4.4 and 4.8. Never says to leave out a
 * medicine: only a prescriber does, for one person.
 */
export const wordsEnGB = {
  version: 'pack-2',
  readyTitle: 'Getting ready for your drip',
  dayTitle: 'The day of your drip',
  afterTitle: 'After your drip',
  nextTitle: 'Your next drip',
  easyTitle: 'Your drip on one page',

  yourDate: 'Your drip is on {date}. Please come at {time}.',
  noDate: 'We will ring or write with your date.',
  where: 'Come to {unit}.',
  howLong: 'Plan for about {time}.',
  howLongTimes: 'one hour|one and a half hours|two hours|two and a half hours|three hours',
  cannotCome: 'If you cannot come, or feel ill, ring {telephone}. We will find another day.',

  before: 'Before you come',
  bloods: 'Have your blood test {when}. It shows if your kidneys and your calcium are right.',
  bloodsUnknown: 'We will tell you if you need a blood test.',
  vitaminDCourse: 'Finish your vitamin D course by {date}.',
  vitaminDToStart: 'You need more vitamin D first. We will tell you which, and when to start.',
  vitaminDAsk: 'Ask us when to finish your vitamin D course.',
  vitaminDDaily: 'If you were told to take vitamin D each day, keep on with it.',
  teeth: 'See a dentist if you have not been for a year. Tell us if a tooth hurts, is loose, or has to come out.',
  askAbout: 'Ask us about these before the day: {medicines}. Do not stop them on your own.',

  tellUs: 'Tell us now if',
  tellUsItems:
    'you have been ill, or have a new medicine|you have new pain in your thigh or groin|you have trouble with your kidneys|you have had a tooth out and it has not healed|you take or have had other drugs for your bones|you are or could be pregnant, or you breast-feed',

  dayBefore: 'The day before, and on the day',
  drink:
    'Drink two more glasses of water than you do most days, the day before and on the day. If you were told to limit what you drink, keep to that and ask us.',
  eat: 'Eat as you do on other days.',
  tablets: 'Take your tablets as you do on other days, unless your doctor or nurse has told you not to.',

  bring: 'Bring with you',
  bringItems: 'a list of all your tablets|your glasses and hearing aid|a top with loose sleeves',
  bringFirst: 'someone to take you home, as this is your first time',

  clock: 'What will happen',
  clockArrive: 'You come in. We check your name and your date of birth.',
  clockAsk: 'We take your pulse and blood pressure. We weigh you. We ask how you are.',
  clockNeedle: 'A nurse puts a small tube in your arm. Two nurses check the drip.',
  clockDrip: 'The drip runs for at least {minutes} minutes. You can sit and read.',
  clockWatch: 'We take the tube out. You stay for {minutes} minutes so we can see that you are well.',
  clockHome: 'You go home with your sheet.',
  clockRough: 'The times are rough. Some days we need more.',
  putOff: 'If a test or your health is not right, we put the drip off. We tell you why, and what comes next.',
  atOnce: 'Tell the nurse at once if',
  atOnceItems: 'your arm hurts or swells|you feel hot, sick or faint|you cannot breathe well|your skin itches',

  feel: 'What you may feel',
  feelSays:
    'You may feel as if you had the flu: aches, fever, a sore head. It starts within a day. It is most often gone in three days.',
  feelFirst:
    'It is common after a first drip: 32 of 100 people feel it. After a second drip it is 7, and after a third it is 3. It does not mean that you cannot have the next one.',
  feelLater: 'It is much less common now than after a first drip.',
  feelRest: 'Rest. Plan quiet days. Drink well for a day, unless you were told to limit what you drink.',

  painTitle: 'Paracetamol',
  painDoseOne: 'You may take 1 tablet of paracetamol 500 mg, up to {times} times a day.',
  painDoseTwo: 'You may take 1 or 2 tablets of paracetamol 500 mg, up to {times} times a day.',
  painMost: 'Leave {hours} hours or more between. Never take more than {most} tablets in 24 hours.',
  painWeight: 'This is for your weight of {weight} kg on {date}, and for a healthy liver.',
  painOther: 'Check that nothing else you take has paracetamol in it. Ask first if you take warfarin.',
  painAsk: 'Ask your nurse how much paracetamol you may take before you take it.',
  painAskLiver: 'Your liver or what you drink may change how much you may take.',
  painAskWeight: 'The amount goes by your weight, and we do not have a good one.',
  painAskLow: 'You do not weigh much, so the usual amount may be too much for you.',
  painLong: 'Do not use it to hide a fever that lasts. A fever of more than three days is not from the drip.',

  ring: 'Ring us on {telephone} if',
  ringItems:
    'you have a fever for more than three days, or above 39 degrees|you cannot drink, or you pass very little water|you have tingling round the mouth or in the fingers, or cramps, at any time in the next months|you have a red or sore eye, or light hurts it: ring the same day|your arm is red or swells|you have new pain in your thigh, hip or groin, at any time|you have a loose tooth, a sore jaw, or a sore in your mouth that does not heal|your ear hurts or runs',
  closedLine: 'If we are closed, ring 111.',
  emergency: 'Ring 999 at once if',
  emergencyItems:
    'your chest hurts|you cannot get your breath|your face, lips or tongue swell|you pass out or have a fit|your heart races or skips and you feel faint|your face drops, an arm is weak, or you cannot speak well',

  keepGoing: 'Keep going',
  keepGoingItems:
    'Go on with calcium and vitamin D as you were told. The drip does not do their job.|Look after your teeth. Tell your dentist about the drip.|Keep moving. Make falls less likely at home.',

  givenDose: 'Drip number',
  givenOn: 'You had it on',
  givenBatch: 'Batch',
  nextDue: 'Your next drip is due from',
  calledNow: 'It is time to plan it. We will ring or write to you.',
  worryNow: 'If you have not heard from us yet, ring {telephone}.',
  whoCalls: 'We will ring or write to you from {date}. You need do nothing before that.',
  worry: 'If you have not heard from us by {date}, ring {telephone}.',
  nextBloods: 'You need a new blood test for it. Have it {when}, not before.',
  review: 'You have had all the drips we had planned. Now we look with you at what is best next.',
  moving: 'Tell us if you move, go away, or do not want it any more. You may stop. Please tell us why.',
  moved: 'Do not take a new drug for your bones without asking us.',

  easyDrink: 'Drink more water, the day before and on the day. If you must limit drinks, ask us.',
  easyFeel: 'You may feel bad for up to three days. Rest.',
  easyRing: 'Feel very bad, or not sure? Ring {telephone}.',
  easyEmergency: 'Chest pain, or you cannot breathe well? Ring 999.',

  bornOn: 'born',
  numberIs: 'number',
  demo: 'Demonstration: nobody here is real.',
  foot: '{unit}. {wording}, {date}. Rules of the unit: {protocol}. This sheet does not take the place of what your nurse or doctor tells you.',
} as const satisfies Readonly<Record<string, string>>;

export type PackWords = Readonly<Record<keyof typeof wordsEnGB, string>>;
