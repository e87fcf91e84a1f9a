/**
 * Requests that change something come from our own pages or from a program, never from another site's page: the browser says
 * where a request comes from (Sec-Fetch-Site, Origin), and a cookie alone is not enough. On a server that only this machine
 * reaches, the name it is called by is checked too, so that no site can borrow it by pointing a name of its own here.
 */
import type { FastifyInstance } from 'fastify';
import { Refused, sendProblem } from './problem.ts';

const changesNothing = new Set(['GET', 'HEAD', 'OPTIONS']);
const ownNames = /^(?:localhost|127(?:\.\d{1,3}){3}|\[::1\])(?::\d+)?$/;

export function refuseOtherSites(app: FastifyInstance, { onlyThisMachine }: { onlyThisMachine: boolean }): void {
  app.addHook('onRequest', async (request, reply) => {
    const host = request.headers.host ?? '';
    if (onlyThisMachine && !ownNames.test(host)) {
      return sendProblem(
        reply,
        new Refused(421, 'other-host', 'This server answers on this machine only, as localhost.'),
      );
    }
    if (changesNothing.has(request.method)) return undefined;
    const site = request.headers['sec-fetch-site'];
    const origin = request.headers.origin;
    const ours = site !== undefined ? site === 'same-origin' : origin === undefined || hostOf(origin) === request.host;
    return ours
      ? undefined
      : sendProblem(reply, new Refused(403, 'other-site', 'The request came from a page that is not ours.'));
  });
}

function hostOf(origin: string): string | undefined {
  return URL.parse(origin)?.host;
}
