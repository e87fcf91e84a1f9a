/** The second checks of a session on the screen of its day: a signature given in passing is found (hazard 27). */
import type { VisitView } from '@twelvemonth/exchange';
import { afterAll, beforeAll, expect, it } from 'vitest';
import {
  lineNow,
  listToday,
  planToday,
  readyToPrepare,
  wilhelmina,
} from '../../apps/server/test/support/at-the-chair.ts';
import { people, setUp } from '../../apps/server/test/support/own-server.ts';
import { type Service, checked, service, tablet } from '../support/service.ts';

const product = 'zoledronic acid 5 mg in 100 mL';
let at: Service;
beforeAll(async () => {
  at = await service();
  await setUp(at.server);
  await planToday(at.server);
  await listToday(at.server, 'read', 1, wilhelmina);
  const olive = { given: 'Olive', family: 'Tranter', born: '1939-02-11', number: '999 204 7810' };
  await listToday(at.server, 'in-passing', 2, olive);
});
afterAll(() => at.close());

async function checkAfter(patient: string, chair: number, minutes: number): Promise<void> {
  await readyToPrepare(at.server, patient, chair);
  const body = { product, batch: 'PA-2391', expiresOn: '2028-04-30', minutes: 30, clearAndColourless: true };
  const identifiers = ['full name', 'birth date'];
  await at.server.done('nurse', lineNow(at.server, patient, 'preparation', { ...body, identifiers }));
  at.clock.moveOn(minutes);
  const { preparation } = await at.server.read<VisitView>(`/api/people/${patient}/visit`);
  await at.server.done('checker', {
    name: 'second check',
    patient,
    preparation: preparation?.entry,
    reading: { product, batchLastFour: '2391', expiryMonth: '2028-04', minutes: 30, identifiers },
  });
}

it('the soonest stands first, with who prepared and who signed', async () => {
  await checkAfter('read', 1, 4);
  await checkAfter('in-passing', 2, 0);
  const page = await at.signedIn('nurse', '/sessions/thornbeck-2026-11-25/day', tablet);
  const checks = page.getByRole('region', { name: 'Second checks' }).getByRole('listitem');
  const by = `prepared by ${people.nurse.name}, checked by ${people.checker.name} at`;
  await expect
    .poll(async () => checks.allTextContents())
    .toEqual([
      expect.stringMatching(new RegExp(`^\\d+ s after: Olive Tranter, ${by}`)) as string,
      expect.stringMatching(new RegExp(`^4 min( \\d+ s)? after: Wilhelmina Arkwright-Poe, ${by}`)) as string,
    ]);
  await checked(page, 'second-checks');
});
