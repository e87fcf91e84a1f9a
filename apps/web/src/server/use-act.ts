/**
 * One attempt at an act. Its id is made once and kept until the server has answered that it is recorded: a double tap, a lost
 * answer and a new sign-in all send the same id, and the server records it once.
 */
import type { ActAnswer, ActBody } from '@twelvemonth/exchange';
import { useRef, useState } from 'react';
import { useActingRole } from '../frame/acting-role.ts';
import { queries, signedOut } from './queries.ts';
import { post } from './request.ts';
import { type Refusal, NotReached, ServerProblem, isSignedOut } from './server-problem.ts';

export type Signature = { readonly username: string; readonly password: string };
export type Sending = {
  readonly seen?: Readonly<Record<string, number>>;
  /** Another person signs this one act at this screen. */
  readonly signedBy?: Signature;
};

export type Attempt = {
  readonly send: (act: ActBody['act'], sending?: Sending) => Promise<ActAnswer | undefined>;
  readonly busy: boolean;
  readonly refusals: readonly Refusal[];
  /** A sentence for what went wrong beside the refusals, with the number to quote. */
  readonly trouble: { readonly says: string; readonly quote?: string } | undefined;
  readonly missed: readonly ServerProblem['missed'][number][];
  readonly answer: ActAnswer | undefined;
};

const nothing = { refusals: [], trouble: undefined, missed: [], answer: undefined } as const;
type Outcome = Pick<Attempt, 'refusals' | 'trouble' | 'missed' | 'answer'>;

function outcomeOf(error: unknown, signedByOther: boolean): Outcome {
  if (error instanceof NotReached) {
    return {
      ...nothing,
      trouble: { says: 'The server cannot be reached. Nothing is lost: press again when it is back.' },
    };
  }
  if (isSignedOut(error) && !signedByOther) {
    signedOut();
    return {
      ...nothing,
      trouble: { says: 'You were signed out. Sign in and press again; what you entered is still here.' },
    };
  }
  if (error instanceof ServerProblem) {
    const { problem, missed } = error;
    const refusals = problem.refusals ?? [];
    const says = problem.detail === undefined ? problem.title : `${problem.title}. ${problem.detail}`;
    const trouble =
      refusals.length > 0
        ? undefined
        : { says, ...(problem.instance === undefined ? {} : { quote: problem.instance }) };
    return { ...nothing, refusals, missed, trouble };
  }
  throw error;
}

export function useAct(onDone?: (answer: ActAnswer) => void): Attempt {
  const id = useRef<string | undefined>(undefined);
  const inFlight = useRef(false);
  const [busy, setBusy] = useState(false);
  const [outcome, setOutcome] = useState<Outcome>(nothing);
  const { role } = useActingRole();
  const send: Attempt['send'] = async (act, { seen, signedBy } = {}) => {
    if (inFlight.current) return undefined;
    inFlight.current = true;
    setBusy(true);
    id.current ??= crypto.randomUUID();
    try {
      const answer = await post('act', {
        id: id.current,
        act,
        ...(role === undefined || signedBy !== undefined ? {} : { role }),
        ...(seen === undefined ? {} : { seen }),
        ...(signedBy === undefined ? {} : { signedBy }),
      });
      id.current = undefined;
      setOutcome({ ...nothing, answer });
      await queries.invalidateQueries();
      onDone?.(answer);
      return answer;
    } catch (error) {
      setOutcome(outcomeOf(error, signedBy !== undefined));
      // What others wrote is fetched, so that pressing again is said with it seen.
      if (error instanceof ServerProblem && error.missed.length > 0) await queries.invalidateQueries();
      return undefined;
    } finally {
      inFlight.current = false;
      setBusy(false);
    }
  };
  return { send, busy, ...outcome };
}
