/**
 * What `npm start`, `npm test` and `npm run check` run. Plain JavaScript without a dependency, because on a fresh clone it is
 * the only thing there: any Node from 20 on starts it, and it fetches the rest, the pinned Node included.
 */
import { allSteps, quickSteps, runSteps } from './launch/checks.mjs';
import { ensureInstalled } from './launch/install.mjs';
import { serve } from './launch/serve.mjs';
import { ensureWebBuilt } from './launch/web.mjs';
import { Refused, say } from './launch/words.mjs';

const oldestNode = 20;

const commands = {
  start: async (args) => {
    await ensureInstalled();
    await ensureWebBuilt();
    return serve(args);
  },
  test: async () => {
    await ensureInstalled();
    return runSteps(allSteps);
  },
  check: async () => {
    await ensureInstalled();
    return runSteps(quickSteps);
  },
};

const [name = 'start', ...args] = process.argv.slice(2);
try {
  if (Number(process.versions.node.split('.')[0]) < oldestNode) {
    throw new Refused(
      `Node ${process.versions.node} is too old. Install Node ${oldestNode} or newer and run this again.`,
    );
  }
  const command = commands[name];
  if (command === undefined)
    throw new Refused(`There is no "${name}". Use one of: ${Object.keys(commands).join(', ')}.`);
  process.exitCode = await command(args);
} catch (error) {
  if (!(error instanceof Refused)) throw error;
  say(error.message);
  if (name !== 'start') console.log('0 passed, 1 failed');
  process.exitCode = 1;
}
