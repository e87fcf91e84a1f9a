/** Why an answer did not come. Expected refusals travel in `problem.refusals`; the rest is for the person who is asked for help. */
import type { Problem, ledgerMovedOn } from '@twelvemonth/exchange';
import type { z } from 'zod';

type Missed = z.infer<typeof ledgerMovedOn>['missed'];
export type Refusal = NonNullable<Problem['refusals']>[number];

/** The server answered, and the answer is no. */
export class ServerProblem extends Error {
  readonly problem: Problem;
  /** What others wrote meanwhile, where the notes moved on. */
  readonly missed: Missed;
  constructor(problem: Problem, missed: Missed = []) {
    super(problem.title);
    this.problem = problem;
    this.missed = missed;
  }
}

/** The server could not be reached; whether it took the act is not known, and sending it again is harmless. */
export class NotReached extends Error {}

export const isSignedOut = (error: unknown): boolean => error instanceof ServerProblem && error.problem.status === 401;

function missedIn(body: unknown): Missed {
  const missed: unknown = typeof body === 'object' && body !== null && 'missed' in body ? body.missed : undefined;
  return Array.isArray(missed) ? (missed as Missed) : [];
}

/** Reads an RFC 9457 answer; an answer of any other shape becomes one. */
export async function problemFrom(response: Response): Promise<ServerProblem> {
  const body: unknown = await response.json().catch(() => undefined);
  if (typeof body === 'object' && body !== null && 'title' in body && typeof body.title === 'string') {
    return new ServerProblem({ status: response.status, type: 'about:blank', ...body } as Problem, missedIn(body));
  }
  return new ServerProblem({
    type: 'about:blank',
    title: `The server answered ${response.status} without saying why`,
    status: response.status,
  });
}
