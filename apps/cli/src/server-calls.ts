/** Calls to a running server as a signed-in person: every entry has an author who proved who they are. */
import { createInterface } from 'node:readline/promises';
import { type Problem, problem, routes } from '@twelvemonth/exchange';
import { answeredNo, cannotOpen, misused } from './ending.ts';

export type Session = {
  readonly status: () => Promise<ReturnType<typeof routes.status.answer.parse>>;
  readonly post: <Answer>(
    route: { readonly path: string; readonly answer: { readonly parse: (value: unknown) => Answer } },
    body: unknown,
  ) => Promise<Answer>;
  readonly end: () => Promise<void>;
};

export const usualServer = 'http://127.0.0.1:4310';
export const passwordVariable = 'TWELVEMONTH_PASSWORD';

/** From the environment, or asked at the keyboard without being shown. */
async function passwordOf(username: string): Promise<string> {
  const given = process.env[passwordVariable];
  if (given !== undefined) return given;
  if (!process.stdin.isTTY) throw misused(`Give the password of ${username} in ${passwordVariable}.`);
  const asking = createInterface({ input: process.stdin, output: process.stderr, terminal: true });
  const answer = asking.question(`Password of ${username}: `);
  // What is typed from here on is not echoed.
  (asking as unknown as { _writeToOutput: (text: string) => void })._writeToOutput = () => undefined;
  try {
    return await answer;
  } finally {
    asking.close();
    process.stderr.write('\n');
  }
}

export async function signedIn(server: string, username: string): Promise<Session> {
  if (!URL.canParse(server)) throw misused(`"${server}" is not the address of a server.`);
  const signIn = await reach(server, routes.signIn.path, undefined, { username, password: await passwordOf(username) });
  if (!signIn.ok) throw answeredNo(await saidBy(signIn));
  const cookie = signIn.headers
    .getSetCookie()
    .map((one) => one.split(';')[0])
    .join('; ');
  return {
    post: async (route, body) => {
      const answered = await reach(server, route.path, cookie, body);
      if (!answered.ok) throw answeredNo(await saidBy(answered));
      return route.answer.parse(await answered.json());
    },
    status: async () => {
      const answered = await reach(server, routes.status.path, cookie, undefined);
      if (!answered.ok) throw answeredNo(await saidBy(answered));
      return routes.status.answer.parse(await answered.json());
    },
    end: async () => void (await reach(server, routes.signOut.path, cookie, {})),
  };
}

/** Posts a body, or reads where there is none. */
async function reach(server: string, path: string, cookie: string | undefined, body: unknown): Promise<Response> {
  try {
    return await fetch(new URL(path, server), {
      method: body === undefined ? 'GET' : 'POST',
      headers: {
        ...(body === undefined ? {} : { 'content-type': 'application/json' }),
        ...(cookie === undefined ? {} : { cookie }),
      },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
  } catch {
    throw cannotOpen(`No server answers at ${server}. Start it, or say where it is with --server.`);
  }
}

/** A refusal in the server's own words, every reason of it. */
async function saidBy(answered: Response): Promise<string> {
  const read = problem.safeParse(await answered.json().catch(() => undefined));
  if (!read.success) return `The server refused (${answered.status}).`;
  const said: Problem = read.data;
  const reasons = said.refusals ?? [];
  return reasons.length === 0
    ? (said.detail ?? said.title)
    : reasons.map(({ says, remedy }) => `${says}${remedy === undefined ? '' : ` (${remedy})`}`).join('\n  ');
}
