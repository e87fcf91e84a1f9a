/** What is typed on arrival, at the measurements and the questions, and cannot be: a chair that the session has not, pressures the wrong way round, nothing. */
import { protocolFor } from '../course/prescribed.ts';
import { counted } from '../kinds-texts/words.ts';
import { protocolInForceOn } from '../protocol/in-force.ts';
import type { Fact, SubjectRecord } from '../record/patient-record.ts';
import { sessionDayOf } from '../visit/session-day.ts';
import { fieldWrong } from './check-fields.ts';
import { sessionIn } from './ledgers.ts';
import type { Refusal } from './refusal.ts';
import type { Surroundings } from './surroundings.ts';

/** Hazard 24: by the chair people are told apart. Before the opening nobody has said how many there are today. */
export function checkChair(
  { chair, session }: Fact<'arrived'>['body'],
  path: string,
  now: Surroundings,
): readonly Refusal[] {
  const has = sessionDayOf(sessionIn(now, session)).opened?.body.chairs;
  return chair === undefined || has === undefined || chair <= has
    ? []
    : [fieldWrong(`${path}.chair`, `the session was opened with ${counted(has, 'chair')}`, 'the chair they sit in')];
}

/** An entry of observations without one would count as the step done. */
export function checkObserved(body: Fact<'observations'>['body'], path: string): readonly Refusal[] {
  const { when: _, ...seen } = body;
  return Object.values(seen).every((value) => value === undefined)
    ? [fieldWrong(path, 'nothing was measured or seen', 'what was measured; leave out only what was not')]
    : checkPressures(body, path);
}

/** "An answer left blank": each is named, and the step waits. Which questions are asked goes by what is ordered. */
export function checkEveryAnswer(
  record: SubjectRecord,
  { body, on }: Fact<'checklist'>,
  path: string,
  now: Surroundings,
): readonly Refusal[] {
  const protocol = now.context === undefined ? undefined : protocolInForceOn(now.context.protocols, on);
  if (protocol === undefined) return [];
  return protocolFor(protocol, record, on)
    .sheet.dayQuestions.filter(({ id }) => body.answers[id] === undefined)
    .map(({ id, asks }) =>
      fieldWrong(`${path}.answers.${id}`, `not answered: ${asks}`, 'ask it, and write the answer'),
    );
}

/** The pressure while the heart fills is below the one while it beats; the two are easily typed in each other's field. */
const checkPressures = (
  { systolicMmHg, diastolicMmHg }: Fact<'observations'>['body'],
  path: string,
): readonly Refusal[] =>
  systolicMmHg === undefined || diastolicMmHg === undefined || diastolicMmHg < systolicMmHg
    ? []
    : [
        fieldWrong(
          `${path}.diastolicMmHg`,
          `${diastolicMmHg} is not below the upper pressure, ${systolicMmHg}`,
          'read both off the monitor again: were they typed in each other’s field?',
        ),
      ];
