/** A process that writes some acts one after the other and says how many were acknowledged. Arguments: path, acts. */
import { openSqliteStore } from '../../src/index.ts';
import { wardRows, weighing } from '../support/ward.ts';

const [path = '', acts = '0'] = process.argv.slice(2);
let acknowledged = 0;
try {
  const store = await openSqliteStore({ path, projection: wardRows });
  for (let index = 0; index < Number(acts); index += 1) {
    const outcome = await store.act(weighing(`${process.pid}-${index}`, 'p1'));
    if (outcome.outcome === 'recorded') acknowledged += 1;
    else {
      process.stdout.write(`recorded ${acknowledged}\n${outcome.outcome}: ${'says' in outcome ? outcome.says : ''}\n`);
      process.exit(1);
    }
  }
  process.stdout.write(`recorded ${acknowledged}\n`);
  await store.close();
} catch (cause) {
  process.stdout.write(`refused to open: ${cause instanceof Error ? cause.message : String(cause)}\n`);
}
