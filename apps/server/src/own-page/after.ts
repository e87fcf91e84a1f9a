/** How somebody was after a dose, as they answered on their own page: read, judged by the red-flag rules, taken in once. */
import {
  type AftercareLine,
  type Asked,
  type Fact,
  type RedFlag,
  type ScriptQuestion,
  aftercareLines,
  aftercareScript,
  celsiusOfFahrenheit,
  dangerSignNames,
  isPlainDate,
  kindNamed,
  plainDate,
  reactionSymptoms,
  redFlagsIn,
  toldIn,
} from '@twelvemonth/clinical';
import { type AfterForm, fieldOf } from '@twelvemonth/letters';
import { z } from 'zod';
import { doAct } from '../acts/do-act.ts';
import type { AtHand } from '../at-hand.ts';
import { Refused } from '../problem.ts';
import type { Person } from '../register/people.ts';
import { careAfter } from '../views/aftercare.ts';
import { idOf, sheetPattern, themselves } from './told.ts';

/** The dose a person may be asked about; undefined: there is none. */
export const doseAskedAbout = (person: Person): Fact<'dose'> | undefined => careAfter(person)?.dose;

const formSchema = z
  .record(z.string().max(80), z.string().max(500))
  .refine((form) => sheetPattern.test(form['sheet'] ?? ''));

export type After = {
  /** Told at once, whatever else is missing. */
  readonly flags: readonly RedFlag[];
  /** Undefined: something is missing. */
  readonly asked: Asked | undefined;
  readonly missing: readonly string[];
  readonly said: AfterForm;
};

/** Undefined: it is no form of ours. */
export function afterIn(form: unknown, person: Person, dose: Fact<'dose'>): After | undefined {
  const read = formSchema.safeParse(form);
  if (!read.success) return undefined;
  const said = read.data as AfterForm;
  const language = person.unit?.unit.letters?.language ?? 'en-GB';
  const { body, missing } = bodyIn(said, dose, language);
  const whole = kindNamed('aftercare').body.safeParse(body);
  const asked = missing.length === 0 && whole.success ? (whole.data as Asked) : undefined;
  return {
    flags: redFlagsIn(toldIn(body, person.today), person.unit?.protocol?.number),
    asked,
    missing:
      asked === undefined && missing.length === 0 ? ['the dates, and a temperature as on the thermometer'] : missing,
    said,
  };
}

/** What was answered, and which questions still want an answer. What is left open among the signs was not asked. */
function bodyIn(said: AfterForm, dose: Fact<'dose'>, language: string): { body: Asked; missing: readonly string[] } {
  const missing = aftercareScript.filter((question) => isMissing(question, said)).map(({ asks }) => asks);
  const symptoms = reactionSymptoms.map((what) => ({ what, name: `felt ${what}` }));
  const temperature = temperatureIn(said['temperature'], language);
  const body = {
    outcome: 'asked',
    dose: dose.first,
    how: 'their own answers',
    toldBy: said['who'],
    feels: said['feels'],
    felt: symptoms.flatMap(({ what, name }) => {
      const [beganOn, severity, over] = [said[`${name} began`], said[`${name} how bad`], said[`${name} over`]];
      if (said[name] !== 'yes' || beganOn === undefined || !isPlainDate(beganOn)) return [];
      return [{ what, beganOn, severity, ...(over === undefined || !isPlainDate(over) ? {} : { endedOn: over }) }];
    }),
    notFelt: symptoms.filter(({ name }) => said[name] === 'no').map(({ what }) => what),
    signs: dangerSignNames.filter((sign) => said[`sign ${sign}`] === 'yes'),
    notSigns: dangerSignNames.filter((sign) => said[`sign ${sign}`] === 'no'),
    ...temperature,
    drinks: said['drinks'],
    paracetamol: said['paracetamol'],
    ...((said['words'] ?? '').trim() === '' ? {} : { words: said['words'] }),
  } as Asked;
  const who = said['who'] === undefined ? ['Who fills this in?'] : [];
  return { body, missing: [...who, ...missing] };
}

function isMissing(question: ScriptQuestion, said: AfterForm): boolean {
  const name = fieldOf(question);
  if (question.id === 'symptom')
    return said[name] === 'yes' && ['began', 'how bad', 'over'].some((part) => (said[`${name} ${part}`] ?? '') === '');
  if (question.id === 'temperature') {
    const typed = (said[name] ?? '').trim();
    return typed !== '' && !/^\d{2,3}([.,]\d)?$/.test(typed);
  }
  return 'options' in question && said[name] === undefined;
}

/** As thermometers are read, to a tenth; in Fahrenheit where the page asks for it, with the same in Celsius beside it. */
function temperatureIn(
  typed: string | undefined,
  language: string,
): Pick<Asked, 'temperatureCelsius' | 'temperatureFahrenheit'> {
  const read = Number((typed ?? '').trim().replace(',', '.'));
  if (read === 0 || Number.isNaN(read)) return {};
  return language === 'en-US'
    ? { temperatureCelsius: celsiusOfFahrenheit(read), temperatureFahrenheit: read }
    : { temperatureCelsius: read };
}

export async function takeInAfter(
  atHand: AtHand,
  { patient, today }: Person,
  asked: Asked,
  sheet: string,
): Promise<Refused | undefined> {
  const lines = aftercareLines(asked, today).map(({ kind, body, on }: AftercareLine) => ({
    kind,
    body,
    effectiveAt: plainDate(on),
  }));
  const answer = await doAct(atHand, {
    id: idOf(sheet, asked),
    act: { name: 'record together', patient, lines },
    by: themselves,
  });
  return answer instanceof Refused ? answer : undefined;
}
