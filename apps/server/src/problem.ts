/**
 * What the server answers when it does not do what was asked: RFC 9457 problem details, with every reason by name. A problem
 * is a value that a handler returns; only `sendProblem` puts it on the wire. Nothing of a patient stands in one beyond what
 * the refusal itself says, and nothing of the server's inside ever.
 */
import type { Problem } from '@twelvemonth/exchange';
import type { FastifyReply } from 'fastify';

type Reason = NonNullable<Problem['refusals']>[number];

const titles = {
  400: 'This could not be read',
  401: 'Sign in first',
  403: 'Not yours to do',
  404: 'Not here',
  406: 'Not in that form',
  409: 'Something else came first',
  413: 'Too large',
  415: 'Not in that form',
  421: 'Not this server',
  422: 'Refused',
  428: 'Say what you saw',
  429: 'Too many tries',
  500: 'Something is wrong with the service',
  503: 'The notes can be read but not written now',
} as const;
export type ProblemStatus = keyof typeof titles;

export class Refused {
  readonly status: ProblemStatus;
  /** A word for machines: the refusal's name, or the problem's own. */
  readonly name: string;
  readonly says: string;
  readonly reasons: readonly Reason[];
  /** Members of our own beside the standard ones. */
  readonly more: Readonly<Record<string, unknown>>;
  readonly headers: Readonly<Record<string, string>>;

  constructor(
    status: ProblemStatus,
    name: string,
    says: string,
    {
      reasons = [],
      more = {},
      headers = {},
    }: { reasons?: readonly Reason[]; more?: Record<string, unknown>; headers?: Record<string, string> } = {},
  ) {
    this.status = status;
    this.name = name;
    this.says = says;
    this.reasons = reasons;
    this.more = more;
    this.headers = headers;
  }
}

export const notHere = (what: string): Refused => new Refused(404, 'not-here', `There is no such ${what}.`);

export function sendProblem(reply: FastifyReply, refused: Refused, instance?: string): FastifyReply {
  const problem: Problem = {
    type: `/problems/${refused.name}`,
    title: titles[refused.status],
    status: refused.status,
    detail: refused.says,
    ...(instance === undefined ? {} : { instance }),
    ...(refused.reasons.length === 0 ? {} : { refusals: [...refused.reasons] }),
  };
  // A string, so that no response schema can trim it.
  return reply
    .code(refused.status)
    .headers({ ...refused.headers, 'cache-control': 'no-store' })
    .header('content-type', 'application/problem+json; charset=utf-8')
    .serializer(String)
    .send(JSON.stringify({ ...problem, ...refused.more }));
}
