/** What the letters to the person say. */
import type { LetterBlock, PutOffReason, ReviewChoice } from '@twelvemonth/clinical';
import { type LetterSpeaker, type Writer, hasToBeOnTime, list, paragraph, paragraphs } from './body.ts';
import type { TreatmentTold } from './facts.ts';
import type { LetterWords } from './words-en-gb.ts';

/** The only medicine with sheets of its own. */
const yearlyDrip = 'zoledronic acid 5 mg';

const promise = ({ medicine }: TreatmentTold, say: LetterSpeaker['say']): readonly LetterBlock[] =>
  hasToBeOnTime(medicine) ? [paragraph(say('onTime'))] : [];

export const invitation: Writer<'invitation'> = (
  { on, arriveAt, bloods },
  { unit, treatment },
  { say, items, date, time, within },
) => ({
  title: say('invitationTitle'),
  blocks: [
    paragraph(say('invitationPlace', { date: date(on), time: time(arriveAt), unit: unit.name })),
    ...(bloods === undefined ? [] : [paragraph(say('invitationBloods', { when: within(bloods) }))]),
    ...(treatment.medicine === yearlyDrip ? [paragraph(say('invitationSheets'))] : []),
    ...promise(treatment, say),
    list(say('invitationTell'), items('invitationTellItems')),
    paragraph(say('invitationCannot', unit)),
  ],
});

export const bloodsNeeded: Writer<'bloods needed'> = ({ between, tests }, _, { say, within }) => {
  const when = within(between);
  return {
    title: say('bloodsTitle'),
    blocks: [
      ...paragraphs(say('bloodsWhy'), say('bloodsWhen', { when }), say('bloodsWithout'), say('bloodsTake')),
      {
        kind: 'facts',
        heading: say('bloodsTests'),
        rows: [
          [say('bloodsTestsLabel'), tests.join(', ')],
          [say('bloodsWhenLabel'), when],
        ],
      },
    ],
  };
};

const becauseOf: Readonly<Record<PutOffReason, keyof LetterWords>> = {
  bloods: 'putOffBecauseBloods',
  'kidney function': 'putOffBecauseKidneys',
  calcium: 'putOffBecauseCalcium',
  'vitamin D': 'putOffBecauseVitaminD',
  unwell: 'putOffBecauseUnwell',
  'teeth and jaw': 'putOffBecauseTeeth',
  'thigh, hip or groin pain': 'putOffBecauseThigh',
  eye: 'putOffBecauseEye',
  'no prescription': 'putOffBecausePrescription',
  'no consent': 'putOffBecauseConsent',
  'too early': 'putOffBecauseEarly',
  'no cannula': 'putOffBecauseCannula',
  'changed their mind': 'putOffBecauseMind',
  'no staff or chair': 'putOffBecauseUs',
  other: 'putOffBecauseOther',
};

/** What a nurse wrote in a line, with a capital and a full stop. */
const asSentence = (text: string): string =>
  `${text.charAt(0).toUpperCase()}${text.slice(1)}${/[.!?]$/.test(text) ? '' : '.'}`;

export const putOff: Writer<'put off'> = (
  { on, reason, nextStep, worryOn },
  { unit, treatment, today },
  { say, date },
) => ({
  title: say('putOffTitle'),
  blocks: [
    ...paragraphs(say('putOffSays', { date: date(on) }), say('putOffCalm')),
    list(say('putOffWhy'), [say(becauseOf[reason])]),
    list(say('putOffNext'), [nextStep === undefined ? say('weWillRing') : asSentence(nextStep)]),
    ...promise(treatment, say),
    ...(worryOn === undefined
      ? []
      : [
          paragraph(
            worryOn > today
              ? say('worry', { date: date(worryOn), telephone: unit.telephone })
              : say('worryNow', { telephone: unit.telephone }),
          ),
        ]),
  ],
});

export const noAnswer: Writer<'no answer'> = ({ due, answerBy }, { unit, treatment }, { say, date }) => ({
  title: say('noAnswerTitle'),
  blocks: paragraphs(
    say('noAnswerSays'),
    ...(due === undefined ? [] : [say('noAnswerDue', { date: date(due) })]),
    ...(hasToBeOnTime(treatment.medicine) ? [say('onTime')] : []),
    say('noAnswerRing', { date: date(answerBy), telephone: unit.telephone }),
    say('noAnswerNo'),
    say('noAnswerElse'),
  ),
});

export const reviewOutcome: Writer<'review outcome'> = ({ on, decided }, { unit }, speaker) => {
  const { say, items, date } = speaker;
  return {
    title: say('reviewTitle'),
    blocks: [
      paragraph(say('reviewSays', { date: date(on) })),
      ...decidedIn(decided, unit.telephone, speaker),
      list(say('reviewTell'), items('reviewTellItems')),
      paragraph(say('reviewKeep')),
    ],
  };
};

function decidedIn(decided: ReviewChoice, telephone: string, { say, date }: LetterSpeaker): readonly LetterBlock[] {
  switch (decided.outcome) {
    case 'carry on':
      return paragraphs(say('reviewCarryOn', { count: String(decided.toDoses) }), say('weWillRing'));
    case 'planned break':
      return paragraphs(say('reviewBreak', { date: date(decided.reviewOn) }), say('reviewBreakMeans'));
    case 'other treatment': {
      const by = date(decided.dueOn);
      return paragraphs(say('reviewOther', { to: decided.to, date: by }), say('reviewOtherWorry', { telephone }));
    }
    case 'new course':
      return paragraphs(say('reviewNew', { count: String(decided.plannedDoses) }), say('weWillRing'));
    case 'stop':
      return paragraphs(say('reviewStop'));
  }
}

export const closing: Writer<'closing'> = (_, { unit }, { say, items }) => ({
  title: say('closingTitle'),
  blocks: [
    ...paragraphs(say('closingSays', { unit: unit.name }), say('closingKeep')),
    list(say('closingTell'), items('closingTellItems')),
    paragraph(say('closingBack')),
  ],
});
