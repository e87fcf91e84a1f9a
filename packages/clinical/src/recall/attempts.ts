/** How somebody was tried to be reached about the next dose: every route with its tries and what came of them. */
import { type Day, shortDate } from '../calendar/day.ts';
import { counted } from '../kinds-texts/words.ts';
import { type SubjectRecord, factsOf } from '../record/patient-record.ts';

export type RouteTried = {
  readonly route: string;
  readonly tries: number;
  readonly reached: boolean;
  readonly last: Day;
};
export type Tried = {
  readonly routes: readonly RouteTried[];
  /** Spoken with at least once. */
  readonly reached: boolean;
  /** "telephone: 2 tries in vain, last on 4 Oct 2026; letter: 1 try in vain, last on 6 Oct 2026" */
  readonly says: string;
};

/** What counts is a call about the recall, and a letter that went out to the person. Who rings us has been reached. */
export function triedSince(record: SubjectRecord, from: Day, today: Day): Tried {
  const letters = new Map(factsOf(record, 'letter').map((letter) => [letter.first, letter.body]));
  const tries = [
    ...factsOf(record, 'call')
      .filter(({ body }) => body.about === 'recall')
      .map(({ on, body }) => ({ on, route: body.route as string, reached: body.reached })),
    ...factsOf(record, 'letter-sent').flatMap(({ on, body }) => {
      const letter = letters.get(body.letter);
      return letter?.to === 'patient' ? [{ on, route: 'letter', reached: false }] : [];
    }),
  ].filter(({ on }) => on >= from && on <= today);
  const routes = [...new Set(tries.map(({ route }) => route))].map((route): RouteTried => {
    const of = tries.filter((one) => one.route === route);
    return {
      route,
      tries: of.length,
      reached: of.some(({ reached }) => reached),
      last: Math.max(...of.map(({ on }) => on)) as Day,
    };
  });
  const reached = routes.some((one) => one.reached);
  const says = routes
    .map(
      (one) =>
        `${one.route}: ${counted(one.tries, 'try', 'tries')}${one.reached ? ', reached' : ' in vain'}, last on ${shortDate(one.last)}`,
    )
    .join('; ');
  return { routes, reached, says: says === '' ? 'not tried yet' : says };
}

/** Two routes at least before somebody is said not to be reachable (practice page 1a row 29; common practice, no source). */
const LEAST_ROUTES = 2;
export const isTriedEnough = ({ routes, reached }: Tried): boolean => !reached && routes.length >= LEAST_ROUTES;
