/**
 * Whatever is sent to whichever address, by whomever: a refusal in words, never a fall (OWASP ASVS 5.0 V2.2: input is validated on
 * the server). The same nonsense in every run.
 */
import { routes } from '@twelvemonth/exchange';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type OwnServer, type Somebody, ownServer, people, referralOf, setUp, workUp } from './support/own-server.ts';

let server: OwnServer;
beforeAll(async () => {
  server = await ownServer();
  await setUp(server);
  await server.done('clerk', referralOf('wilhelmina'));
  await workUp(server, 'wilhelmina');
});
afterAll(() => server.close());

/** What is there, what was there, what never will be, and what other programs stumble over. */
const words =
  `wilhelmina thornbeck thornbeck-1 thornbeck-2026-11-25 2026-11-25 2026-02-30 review nurse null -1 1e9 __proto__
  constructor ../../notes`.split(/\s+/);
const word = fc.constantFrom(...words, '', ' ', "' or 1=1 --", 'á\u0000\uD83D', 'a'.repeat(300));
const fields =
  `patient unit session on from until limit standing what year batch entry about act name line lines kind body id
  version sheet after text rows months size`.split(/\s+/);
const field = fc.constantFrom(...fields);
const anything = fc.letrec((again) => ({
  value: fc.oneof(
    { maxDepth: 3 },
    word,
    fc.constantFrom(null, true, 0, -1, 1.5, 1e308),
    fc.array(again('value'), { maxLength: 3 }),
    fc.dictionary(field, again('value'), { maxKeys: 4 }),
  ),
})).value;
const query = fc
  .array(fc.tuple(field, word), { maxLength: 3 })
  .map((pairs) => pairs.map(([name, value]) => `${name}=${encodeURIComponent(value.toWellFormed())}`).join('&'));
const somebody = fc.constantFrom<Somebody | undefined>(...(Object.keys(people) as Somebody[]), undefined);

it.each(Object.entries(routes).filter(([name]) => name !== 'events'))('%s', async (_, { method, path }) => {
  const places = fc.array(word, { minLength: 2, maxLength: 2 });
  await fc.assert(
    fc.asyncProperty(places, query, anything, somebody, async (named, asked, body, as) => {
      const at = [...named];
      const address = path.replaceAll(/:\w+/g, () => encodeURIComponent((at.pop() ?? '').toWellFormed() || 'x'));
      const answer = await server.ask(`${address}?${asked}`, { method, as, ...(method === 'POST' ? { body } : {}) });
      expect(answer.statusCode, `${address}?${asked} ${answer.body.slice(0, 200)}`).toBeLessThan(500);
    }),
    { numRuns: 20, seed: 20261130 },
  );
});
