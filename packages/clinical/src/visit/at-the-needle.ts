/**
 * What to know before a needle goes in: skin cleaner, latex and plaster, medicines that thin the blood, an earlier faint. Hazards
 * 72 to 74; common practice, no source. It holds nothing: it is told to whoever places the cannula or injects.
 */
import { type Day, day as dayOf, shortDate } from '../calendar/day.ts';
import { plural } from '../kinds-texts/words.ts';
import { type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { nameKey } from '../requirements/medicine-name.ts';

/** Things that touch the skin, and the words by which an allergy to them is found. It can only find. */
const onTheSkin = [
  { what: 'chlorhexidine', words: /chlorhexidin|chlorohexidin/i, instead: 'another skin cleaner' },
  { what: 'latex', words: /latex|rubber/i, instead: 'no latex: gloves, tourniquet' },
  { what: 'plaster', words: /plaster|adhesive|\btape\b/i, instead: 'another dressing' },
] as const;

export function atTheNeedle(record: SubjectRecord, today: Day): readonly string[] {
  return [...skin(record), ...thinners(record, today), ...faints(record, today)];
}

function skin(record: SubjectRecord): readonly string[] {
  const named = factsOf(record, 'allergy').flatMap(({ body }) => (body.answer === 'other' ? [body.substance] : []));
  const found = onTheSkin.filter(({ words }) => named.some((one) => words.test(one)));
  const notFound = onTheSkin.filter((one) => !found.includes(one)).map(({ what }) => what);
  return [
    ...found.map(({ what, instead }) => `Allergic to ${what}: ${instead}.`),
    ...(notFound.length === 0 ? [] : [`No allergy to ${plural(notFound)} is recorded. Ask.`]),
  ];
}

/** The newest entry of a name decides, as everywhere. */
function thinners(record: SubjectRecord, today: Day): readonly string[] {
  const newest = new Map(
    factsOf(record, 'medicine')
      .filter(({ on, body }) => on <= today && body.sort === 'anticoagulant')
      .map(({ body }) => [nameKey(body.name), body] as const),
  );
  const taken = [...newest.values()].filter(({ stoppedOn }) => stoppedOn === undefined || dayOf(stoppedOn) > today);
  return taken.length === 0
    ? []
    : [
        `Takes ${plural(
          taken.map(({ name }) => name),
          'and',
        )}: press on the site until it is dry, and look again. A fall now is a bleed until shown otherwise.`,
      ];
}

const FAINT = /faint|passed out|syncop|vasovagal|collaps/i;

function faints(record: SubjectRecord, today: Day): readonly string[] {
  const last = factsOf(record, 'reaction').findLast(({ on, body }) => on < today && FAINT.test(body.what));
  return [
    last === undefined
      ? 'Ever fainted at a needle? Then lying down.'
      : `${shortDate(last.on)}: ${last.body.what}. Lying down this time.`,
  ];
}
