/** Runs the server on the pinned Node until it ends. A channel to it lets it notice when we are killed without a word. */
import { join } from 'node:path';
import { run } from './children.mjs';
import { pinnedNode, root } from './place.mjs';

export function serve(args) {
  return run(pinnedNode(), [join(root, 'apps', 'server', 'src', 'main.ts'), ...args], {
    cwd: root, // a relative --data means the same folder wherever npm was called from
    stdio: ['inherit', 'inherit', 'inherit', 'ipc'],
  });
}
