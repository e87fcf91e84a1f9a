/** What the letters to family doctors, dentists and other services say, each with a form to send back. */
import type { LetterBlock } from '@twelvemonth/clinical';
import { type LetterSpeaker, type Writer, hasToBeOnTime, list, paragraph, paragraphs } from './body.ts';
import type { FamilyDoctorRequest, LetterFacts } from './facts.ts';
import type { LetterWords } from './words-en-gb.ts';

const personIn = ({ person }: LetterFacts, { say }: LetterSpeaker): string => say('about', person);

const replyForm = (
  heading: string,
  questions: readonly string[],
  facts: LetterFacts,
  speaker: LetterSpeaker,
): LetterBlock => ({
  kind: 'reply',
  heading,
  about: personIn(facts, speaker),
  questions: [...questions],
  sendBackTo: speaker.say('sendBackTo', {
    address: [facts.unit.name, facts.unit.postalAddress].filter((line) => line !== undefined).join(', '),
    telephone: facts.unit.telephone,
  }),
});

const doseIn = (
  { medicine, batch }: { readonly medicine: string; readonly batch: string | undefined },
  { say }: LetterSpeaker,
): string => say('transferBatch', { medicine, batch: batch ?? say('batchNotKnown') });

export const noAnswerToDoctor: Writer<'no answer, to the family doctor'> = (
  { due, lastDose, tried, answerBy },
  facts,
  speaker,
) => {
  const { say, items, date } = speaker;
  return {
    title: say('noAnswerDoctorTitle'),
    blocks: [
      paragraph(say('noAnswerDoctorSays')),
      {
        kind: 'facts',
        heading: say('noAnswerDoctorFacts'),
        rows: [
          ...(lastDose === undefined ? [] : [[say('lastDose'), `${date(lastDose.on)}: ${lastDose.medicine}`] as const]),
          ...(due === undefined ? [] : [[say('nextDue'), date(due)] as const]),
          [say('tried'), tried],
        ],
      },
      ...paragraphs(say('noAnswerDoctorAsk'), say('answerBy', { date: date(answerBy) })),
      replyForm(say('noAnswerDoctorReply'), items('noAnswerDoctorQuestions'), facts, speaker),
    ],
  };
};

export const transfer: Writer<'transfer'> = (matter, facts, speaker) => {
  const { say, items, date } = speaker;
  const { treatment, doses, due, given, planned, allergies, reactions, results, answerBy } = matter;
  return {
    title: say('transferTitle'),
    blocks: [
      ...paragraphs(say('transferSays'), say('transferOurs', { date: date(answerBy) })),
      {
        kind: 'facts',
        heading: say('transferTreatment'),
        rows: [
          [say('transferMedicine'), treatment],
          ...(due === undefined ? [] : [[say('nextDue'), date(due)] as const]),
          ...(planned === undefined
            ? []
            : [
                [
                  say('transferPlanned'),
                  say('transferOf', { given: String(given), planned: String(planned) }),
                ] as const,
              ]),
          [say('transferAllergies'), allergies],
          [say('transferReactions'), reactions.length === 0 ? say('noneWritten') : reactions.join('; ')],
        ],
      },
      ...(doses.length === 0
        ? []
        : [
            {
              kind: 'facts',
              heading: say('transferDoses'),
              rows: doses.map((dose) => [date(dose.on), doseIn(dose, speaker)] as const),
            } as const,
          ]),
      ...(results.length === 0
        ? []
        : [{ kind: 'facts', heading: say('transferResults'), rows: [...results] } as const]),
      replyForm(say('transferReply'), items('transferQuestions'), facts, speaker),
    ],
  };
};

const asked: Readonly<Record<FamilyDoctorRequest, readonly [ask: keyof LetterWords, replied: keyof LetterWords]>> = {
  bloods: ['wantedBloods', 'repliedBloods'],
  medicines: ['wantedMedicines', 'repliedMedicines'],
  'vitamin D course': ['wantedVitaminD', 'repliedVitaminD'],
  weight: ['wantedWeight', 'repliedWeight'],
};

export const requestToDoctor: Writer<'request to the family doctor'> = (
  { wanted, bloods, due, doseAhead, answerBy },
  facts,
  speaker,
) => {
  const { say, date, within } = speaker;
  const ask = (request: FamilyDoctorRequest): string =>
    request !== 'bloods'
      ? say(asked[request][0])
      : bloods === undefined
        ? say('wantedBloodsOpen')
        : say('wantedBloods', { when: within(bloods) });
  return {
    title: say('doctorRequestTitle'),
    blocks: [
      paragraph(say(doseAhead ? 'doctorRequestSays' : 'doctorRequestNoDose')),
      ...(due === undefined ? [] : [paragraph(`${say('nextDue')}: ${date(due)}.`)]),
      list(say('doctorRequestAsk'), wanted.map(ask)),
      paragraph(say('answerBy', { date: date(answerBy) })),
      replyForm(
        say('doctorRequestReply'),
        [...wanted.map((request) => say(asked[request][1])), say('repliedNot'), say('repliedBy')],
        facts,
        speaker,
      ),
    ],
  };
};

/** At the doses of an oncology service the jaw is harmed more often (safety page; product texts, from memory). */
const rareAtThisDose: ReadonlySet<string> = new Set([
  'zoledronic acid 5 mg',
  'denosumab 60 mg',
  'ibandronate 3 mg',
  'romosozumab 210 mg',
]);

export const requestToDentist: Writer<'request to the dentist'> = ({ due, dosesGiven, answerBy }, facts, speaker) => {
  const { say, items, date } = speaker;
  const { medicine } = facts.treatment;
  const given = dosesGiven === 0 ? 'dentistFirst' : dosesGiven === 1 ? 'dentistOne' : 'dentistLater';
  return {
    title: say('dentistTitle'),
    blocks: [
      paragraph(say(given, { count: String(dosesGiven) })),
      ...(due === undefined ? [] : [paragraph(say('dentistDue', { date: date(due) }))]),
      paragraph(rareAtThisDose.has(medicine) ? `${say('dentistRisk')} ${say('dentistRare')}` : say('dentistRisk')),
      ...(hasToBeOnTime(medicine) ? [paragraph(say('onTimeDentist'))] : []),
      list(say('dentistAsk'), items('dentistAskItems')),
      ...paragraphs(say('dentistDoNot', facts.unit), say('answerBy', { date: date(answerBy) })),
      replyForm(say('dentistReply'), items('dentistQuestions'), facts, speaker),
    ],
  };
};
