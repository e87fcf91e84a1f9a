/**
 * A service in a process of its own that can be killed without being asked: FOLDER PORT MOMENT MINUTES [prepare]. Its clock
 * begins at MOMENT and has run MINUTES already. `prepare`: somebody's infusion runs before it says where it answers.
 */
import { fileURLToPath } from 'node:url';
import { infusionRuns, listToday, planToday, wilhelmina } from '../../apps/server/test/support/at-the-chair.ts';
import { ownServer, setUp } from '../../apps/server/test/support/own-server.ts';
import { movableClock } from './movable-clock.ts';

const [folder = '', port = '0', moment = '', minutes = '0', prepare] = process.argv.slice(2);
const clock = movableClock(moment);
clock.moveOn(Number(minutes));
const server = await ownServer({
  clock,
  folder,
  staff: prepare !== undefined,
  screens: fileURLToPath(new URL('../../apps/web/dist', import.meta.url)),
});
if (prepare !== undefined) {
  await setUp(server);
  await planToday(server);
  await listToday(server, 'wilhelmina', 1, wilhelmina);
  await infusionRuns(server, 'wilhelmina');
}
console.log(`answers at ${await server.app.listen({ host: '127.0.0.1', port: Number(port) })}`);
