/** What has been answered while the questions are asked, and the entry it becomes. What is left open was not asked. */
import {
  type DangerSign,
  type PlainDate,
  type ReactionSymptom,
  type Told,
  aftercareLines,
  amountsDrunk,
  dangerSignNames,
  day,
  entryKinds,
  feelings,
  paracetamolTaken,
  plainDate,
  reactionSymptoms,
  symptomSeverities,
  toldBy,
  waysAsked,
} from '@twelvemonth/clinical';
import type { TypedTemperature } from '../fields/TemperatureField.tsx';

export type YesNo = 'yes' | 'no';
export type Felt = {
  readonly beganOn?: string | undefined;
  readonly severity?: (typeof symptomSeverities)[number] | undefined;
  readonly over?: YesNo | undefined;
  readonly endedOn?: string | undefined;
};
export type Answers = {
  readonly how?: (typeof waysAsked)[number] | undefined;
  readonly by?: (typeof toldBy)[number] | undefined;
  readonly feels?: (typeof feelings)[number] | undefined;
  readonly signs: Readonly<Partial<Record<DangerSign, YesNo>>>;
  readonly symptoms: Readonly<Partial<Record<ReactionSymptom, YesNo>>>;
  readonly felt: Readonly<Partial<Record<ReactionSymptom, Felt>>>;
  readonly temperature: TypedTemperature;
  readonly drinks?: (typeof amountsDrunk)[number] | undefined;
  readonly paracetamol?: (typeof paracetamolTaken)[number] | undefined;
  readonly words: string;
};
export const nothingAsked: Answers = { signs: {}, symptoms: {}, felt: {}, temperature: {}, words: '' };

const those = <Name extends string>(
  names: readonly Name[],
  answers: Readonly<Partial<Record<Name, YesNo>>>,
  answer: YesNo,
): Name[] => names.filter((name) => answers[name] === answer);

/** Every line one press writes. A gap stays a gap: then only the answers are sent, and the server says which it needs. */
export function linesOf(answers: Answers, dose: string, today: PlainDate): readonly object[] {
  const { how, by, feels, signs, symptoms, felt, temperature, drinks, paracetamol, words } = answers;
  const said = words.trim();
  const body = {
    outcome: 'asked',
    dose,
    how,
    toldBy: by,
    feels,
    signs: those(dangerSignNames, signs, 'yes'),
    notSigns: those(dangerSignNames, signs, 'no'),
    felt: those(reactionSymptoms, symptoms, 'yes').map((what) => {
      const { beganOn, severity, over, endedOn } = felt[what] ?? {};
      return { what, beganOn, severity, ...(over === 'yes' ? { endedOn } : {}) };
    }),
    notFelt: those(reactionSymptoms, symptoms, 'no'),
    ...temperature,
    drinks,
    paracetamol,
    ...(said === '' ? {} : { words: said }),
  };
  const whole = entryKinds.aftercare.body.safeParse(body);
  const lines =
    whole.success && whole.data.outcome === 'asked'
      ? aftercareLines(whole.data, day(today)).map(({ kind, body: of, on }) => ({
          kind,
          body: of,
          effectiveAt: plainDate(on),
        }))
      : [{ kind: 'aftercare', body, effectiveAt: today }];
  return lines;
}

/** Whatever has been told so far, for the flags that show while asking. */
export function toldSoFar(answers: Answers, today: PlainDate): Told {
  const fever = answers.symptoms['fever or shivering'] === 'yes' ? answers.felt['fever or shivering'] : undefined;
  const aches = answers.symptoms['aching muscles or joints'] === 'yes' && answers.felt['aching muscles or joints'];
  return {
    signs: those(dangerSignNames, answers.signs, 'yes'),
    feels: answers.feels,
    temperatureCelsius: answers.temperature.temperatureCelsius,
    feverDays:
      fever?.beganOn === undefined
        ? undefined
        : day(fever.over === 'yes' ? (fever.endedOn ?? today) : today) - day(fever.beganOn),
    drinks: answers.drinks,
    paracetamol: answers.paracetamol,
    severeAches: aches !== false && aches?.severity === 'severe',
  };
}

export const stillToAsk = (answers: Answers): number =>
  dangerSignNames.filter((sign) => answers.signs[sign] === undefined).length +
  reactionSymptoms.filter((symptom) => answers.symptoms[symptom] === undefined).length +
  [answers.feels, answers.drinks, answers.paracetamol].filter((one) => one === undefined).length;
