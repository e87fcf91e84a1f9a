/** Why an answer did not come. Expected refusals travel in `problem.refusals`; the rest is for the person who is asked for help. */
import type { ActAnswer, Problem, ledgerMovedOn } from '@twelvemonth/exchange';
import type { z } from 'zod';

type Missed = z.infer<typeof ledgerMovedOn>['missed'];
type Wrote = readonly Pick<ActAnswer['entries'][number], 'subject' | 'seq'>[];
export type Refusal = NonNullable<Problem['refusals']>[number];

/** The server answered, and the answer is no. */
export class ServerProblem extends Error {
  readonly problem: Problem;
  /** What others wrote meanwhile, where the notes moved on. */
  readonly missed: Missed;
  /** What this very act wrote before, where its answer was lost. */
  readonly wrote: Wrote;
  constructor(problem: Problem, { missed = [], wrote = [] }: { missed?: Missed; wrote?: Wrote } = {}) {
    super(problem.title);
    this.problem = problem;
    this.missed = missed;
    this.wrote = wrote;
  }
}

/** The server could not be reached; whether it took the act is not known, and sending it again is harmless. */
export class NotReached extends Error {
  /** It was waited for in vain: asking again at once would only wait again. */
  readonly waited: boolean;
  constructor(says: string, waited = false) {
    super(says);
    this.waited = waited;
  }
}

export const isSignedOut = (error: unknown): boolean => error instanceof ServerProblem && error.problem.status === 401;

/** The server answers, and takes nothing down just now: what is sent to it waits as it would without a network. */
export const isReadOnly = (error: unknown): boolean =>
  error instanceof ServerProblem && error.problem.type.endsWith('/read-only');

/** This id was recorded before with another content: the first try got through, and its answer was lost. */
export const isOtherContent = (error: unknown): error is ServerProblem =>
  error instanceof ServerProblem && error.problem.type.endsWith('/same-id-other-content');

/** A list of its own beside the standard members of a problem. */
function listIn(body: object, name: 'missed' | 'wrote'): unknown[] {
  const list: unknown = name in body ? (body as Record<string, unknown>)[name] : undefined;
  return Array.isArray(list) ? list : [];
}

/** Reads an RFC 9457 answer; an answer of any other shape becomes one. */
export function problemFrom(status: number, text: string): ServerProblem {
  const body = jsonOf(text);
  if (typeof body === 'object' && body !== null && 'title' in body && typeof body.title === 'string') {
    return new ServerProblem({ status, type: 'about:blank', ...body } as Problem, {
      missed: listIn(body, 'missed') as Missed,
      wrote: listIn(body, 'wrote') as Wrote,
    });
  }
  return new ServerProblem({
    type: 'about:blank',
    title: `The server answered ${status} without saying why`,
    status,
  });
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
