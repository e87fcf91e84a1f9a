/** The built screens as files; every address that is not a file and not the interface is the one page. */
import serveFiles from '@fastify/static';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { FastifyInstance } from 'fastify';
import { notHere, sendProblem } from './problem.ts';

const notBuilt = `<!doctype html><html lang="en"><meta charset="utf-8"><title>Twelvemonth</title>
<p>The screens have not been built. Run <code>npm run build</code>, then load this page again. The interface under <code>/api</code> works.</p>`;

export async function serveScreens(app: FastifyInstance, folder: string): Promise<void> {
  const built = existsSync(join(folder, 'index.html'));
  if (built) {
    await app.register(serveFiles, {
      root: folder,
      index: ['index.html'],
      cacheControl: false,
      setHeaders: (reply, path) => {
        // Files under assets/ carry a fingerprint in their name; all others are asked for anew each time.
        const forEver = path.startsWith(join(folder, 'assets'));
        void reply.header('cache-control', forEver ? 'public, max-age=31536000, immutable' : 'no-cache');
      },
    });
  }
  app.setNotFoundHandler(async (request, reply) => {
    const wantsPage =
      request.method === 'GET' &&
      !request.url.startsWith('/api') &&
      (request.headers.accept ?? '').includes('text/html');
    if (!wantsPage) return sendProblem(reply, notHere('address'));
    if (!built) return reply.code(503).type('text/html').send(notBuilt);
    return reply.header('cache-control', 'no-cache').sendFile('index.html');
  });
}
