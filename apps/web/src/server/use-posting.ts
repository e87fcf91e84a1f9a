/** A write that is not an act (an import, a staff change): one at a time, with what came of it. */
import { useCallback, useRef, useState } from 'react';
import type { AnswerOf, Asked, BodyOf, RouteName } from './paths.ts';
import { fetchAgain } from './queries.ts';
import { post } from './request.ts';

export function usePosting<Name extends RouteName>(name: Name) {
  const [state, setState] = useState<{ busy: boolean; error: Error | undefined; answer: AnswerOf<Name> | undefined }>({
    busy: false,
    error: undefined,
    answer: undefined,
  });
  const inFlight = useRef(false);
  const send = useCallback(
    async (
      body: BodyOf<Name>,
      asked: Asked = {},
      { refresh = true }: { refresh?: boolean } = {},
    ): Promise<AnswerOf<Name> | undefined> => {
      if (inFlight.current) return undefined;
      inFlight.current = true;
      setState((before) => ({ ...before, busy: true, error: undefined }));
      try {
        const answer = await post(name, body, asked);
        if (refresh) await fetchAgain();
        setState({ busy: false, error: undefined, answer });
        return answer;
      } catch (error) {
        setState((before) => ({
          ...before,
          busy: false,
          error: error instanceof Error ? error : new Error(String(error)),
        }));
        return undefined;
      } finally {
        inFlight.current = false;
      }
    },
    [name],
  );
  return { ...state, send };
}
