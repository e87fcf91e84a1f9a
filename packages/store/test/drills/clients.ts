/**
 * Thirty clients of one store, in a process that is going to be killed. Everything they send and everything they are told
 * goes into a history file first and at once; the file is judged by `history-checker.ts`, which shares no code with this.
 * Arguments: path of the store, path of the history, seed, round.
 */
import { openSync, writeSync } from 'node:fs';
import { flushCompileCache } from 'node:module';
import { openSqliteStore, type ActRequest } from '../../src/index.ts';
import { below, seeded } from '../support/seeded.ts';
import { endHalfLine, readHistory } from './history-file.ts';
import { booking, draft, wardRows, weighing, writing } from '../support/ward.ts';

const [path = '', historyPath = '', seed = '0', round = '0'] = process.argv.slice(2);
const clients = 30;

type Sent = { readonly act: string; readonly client: number; readonly what: readonly (string | number)[] };

const request = ({ act, what: [kind, ...names] }: Sent): ActRequest => {
  if (kind === 'weigh') return weighing(act, String(names[0]));
  if (kind === 'book') return booking(act, String(names[0]), String(names[1]), Number(names[2]));
  return writing(act, [
    draft(`patient/${names[0]}`, 'note', { act }),
    draft(`patient/${names[1]}`, 'note', { act }),
    draft(`patient/${names[0]}`, 'call', { act }),
  ]);
};

const lines = readHistory<Record<string, unknown>>(historyPath);
const answered = new Set(lines.filter((line) => line['answer'] !== undefined).map((line) => line['act']));
const unanswered = lines.filter(
  (line) => line['what'] !== undefined && !answered.has(line['act']),
) as unknown as Sent[];
endHalfLine(historyPath);
const history = openSync(historyPath, 'a');
const note = (line: object): void => void writeSync(history, `${JSON.stringify(line)}\n`);

// Killed, it could not leave behind for the next what it compiled.
flushCompileCache();
const store = await openSqliteStore({ path, projection: wardRows });
process.stdout.write('ready\n');

async function send(sent: Sent): Promise<void> {
  note(sent);
  const outcome = await store.act(request(sent));
  note({
    act: sent.act,
    answer: outcome.outcome,
    ...('entries' in outcome
      ? { entries: outcome.entries.map(({ id, subject, seq, hash }) => ({ id, subject, seq, hash })) }
      : {}),
  });
}

async function client(number: number): Promise<void> {
  const random = seeded(Number(seed) * 100_003 + Number(round) * 1_009 + number);
  // What the last process was killed over is sent again, as a browser would.
  for (const sent of unanswered.filter((each) => each.client === number)) await send(sent);
  for (let index = 0; ; index += 1) {
    const act = `r${round}-c${number}-${index}`;
    const patient = (): string => `p${below(random, 40)}`;
    const dice = below(random, 10);
    if (dice < 5) await send({ act, client: number, what: ['weigh', patient()] });
    else if (dice < 8)
      await send({ act, client: number, what: ['book', `s${below(random, 5)}`, patient(), 1 + below(random, 400)] });
    else await send({ act, client: number, what: ['both', patient(), `q${below(random, 40)}`] });
  }
}

await Promise.all(Array.from({ length: clients }, (_, number) => client(number)));
