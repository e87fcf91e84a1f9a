/** Bringing in a register, and the rows of it that wait. */
import type { ActName, Author } from '@twelvemonth/clinical';
import { rolesFor } from '@twelvemonth/clinical';
import type { FastifyInstance } from 'fastify';
import type { AtHand } from '../at-hand.ts';
import { accept, tryOut } from '../imports/bring-in.ts';
import { settleRow, waitingRowsOf } from '../imports/settle-row.ts';
import { Refused } from '../problem.ts';
import { serveRoute } from '../serve-route.ts';
import type { Member } from '../sign-in/accounts.ts';

export function serveImports(app: FastifyInstance, atHand: AtHand): void {
  serveRoute(app, atHand, 'dryRun', async ({ body }) => tryOut(atHand, body));
  serveRoute(app, atHand, 'accept', async ({ body, who }) => {
    const by = authorFor(who.member, 'take in');
    return by instanceof Refused ? by : accept(atHand, body, by);
  });
  serveRoute(app, atHand, 'waitingRows', async () => ({ rows: await waitingRowsOf(atHand) }));
  serveRoute(app, atHand, 'settleRow', async ({ body, who }) => {
    const by = authorFor(who.member, 'settle row');
    return by instanceof Refused ? by : settleRow(atHand, body, by);
  });
}

export function authorFor({ staff, roles }: Member, act: ActName): Author | Refused {
  const role = roles.find((one) => rolesFor(act).includes(one));
  return role === undefined ? new Refused(403, 'not-yours-to-do', 'Your role does not do this.') : { staff, role };
}
